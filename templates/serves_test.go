package templates

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// flow returns the words of a template's sheets as running text. Words broken
// after a hyphen are joined again.
func flow(sheets []*draw.Sheet, id string) string {
	text := ""
	for _, s := range sheets {
		if s.ID == id || strings.HasPrefix(s.ID, id+"-list-") || strings.HasPrefix(s.ID, id+"-tile-") {
			text += textOf(s)
		}
		for _, it := range s.Items { // the list may stand on a sheet of lists
			if x, ok := it.(*draw.Text); ok && strings.HasPrefix(s.ID, "served-") && x.Owner == id {
				text += "|" + x.S
			}
		}
	}
	return strings.ReplaceAll(strings.ReplaceAll(text, "-|", "-"), "|", " ")
}

// TestLineJHasItsPlace: every hole template prints how far line J lies from the
// start end, for each joint that it serves. The figure is taken from the joint,
// and written by the rules of the units.
func TestLineJHasItsPlace(t *testing.T) {
	atEnd := 0
	for _, d := range all(t) {
		for _, g := range d.groups {
			if g.kind != "near" && g.kind != "far" {
				continue
			}
			_, word := g.title()
			text, line := flow(d.sheets, g.joint.ID+"-"+word), "J"
			if g.part.own {
				line += strconv.Itoa(g.part.n)
			}
			for i, q := range g.serves {
				x := math.NaN()
				for _, l := range q.joint.Lines {
					if l.Main {
						x = l.X + g.part.from
					}
				}
				// A line of a joint is told to 1/32 in or 0.5 mm on every sheet.
				place := measure.FeetInches(x, 32)
				if d.f.Units == measure.Metric {
					place = measure.Millimetres(x, 0.5) + " mm"
				}
				want := "Line " + line + ": " + place + " from the start end"
				if math.Abs(x) < 0.01 {
					atEnd++
					place, want = "the finished end", "Line J: the finished end"
				}
				if i == 0 && !strings.Contains(text, want) {
					t.Errorf("%s: %s-%s does not say %q", d.name, g.joint.ID, word, want)
				}
				item := q.joint.Into.ID + " (" + q.joint.Mark + ") " + line + " " + place
				if len(g.serves) > 1 && !strings.Contains(text, item) {
					t.Errorf("%s: %s-%s does not list %q in %q", d.name, g.joint.ID, g.kind, item, text)
				}
			}
		}
	}
	t.Logf("%d lines J at a finished end", atEnd)
}

// TestFaceWordsHoldForAll: where the timbers of one template have other words
// for a face, the common text has its number only, and the list has each word.
func TestFaceWordsHoldForAll(t *testing.T) {
	differ := 0
	for _, d := range all(t) {
		for _, g := range d.groups {
			if len(g.serves) < 2 {
				continue
			}
			_, word := g.title()
			text := flow(d.sheets, g.joint.ID+"-"+word)
			head, list, ok := strings.Cut(text, "Serves ")
			if !ok {
				t.Errorf("%s: %s-%s has no list", d.name, g.joint.ID, word)
				continue
			}
			for _, n := range []int{g.v.face, g.v.side()} {
				first, same := g.v.t.FaceNames[n-1], true
				for _, q := range g.serves {
					w := q.v.t.FaceNames[n-1]
					same = same && w == first
					if !strings.Contains(list, strings.TrimSpace("face "+string(rune('0'+n))+" "+w)) {
						t.Errorf("%s: the list of %s-%s lacks face %d %s", d.name, g.joint.ID, word, n, w)
					}
				}
				if same || first == "" {
					continue
				}
				differ++
				num := string(rune('0' + n))
				if strings.Contains(head, "face "+num+" "+first) || strings.Contains(head, "on the "+first+" face") {
					t.Errorf("%s: %s-%s says %q of face %d for all", d.name, g.joint.ID, word, first, n)
				}
			}
		}
	}
	if differ == 0 {
		t.Error("no template serves timbers with other face words")
	}
}

// TestNoFaceIsPartedFromItsNumber: a line that begins with a figure and a stop
// reads as a list, and one that ends in face has lost its number.
func TestNoFaceIsPartedFromItsNumber(t *testing.T) {
	for _, d := range all(t) {
		for _, s := range d.sheets {
			for _, l := range strings.Split(textOf(s), "|") {
				if strings.HasSuffix(l, "face") && l != strings.ToUpper(l) || strings.HasSuffix(l, " arris") {
					if next := strings.Split(textOf(s), "|"+l+"|"); len(next) > 1 && next[1] != "" && next[1][0] >= '0' && next[1][0] <= '9' {
						t.Errorf("%s %s: %q is parted from its number", d.name, s.ID, l)
					}
				}
			}
		}
	}
}

// patchOf returns what a text on a sheet takes.
func patchOf(x *draw.Text) patch {
	b := letter(x.S, x.Height, x.Bold)
	b.stand(x.Anchor, x.Rot)
	return b.at(x.At)
}

// TestTenonLettering: nothing is lettered over the shoulder line, the figure of
// the way to the shoulder stands at its own dimension line, and the hole's way
// from the reference edge is in words.
func TestTenonLettering(t *testing.T) {
	seen := 0
	for _, d := range all(t) {
		for _, s := range d.sheets {
			var at [2]vec.P
			for _, it := range s.Items {
				if p, ok := it.(*draw.Path); ok && strings.HasPrefix(p.Mark, "line:shoulder:") {
					at = [2]vec.P{p.Pts[0], p.Pts[1]}
				}
			}
			if at[0] == at[1] {
				continue
			}
			for _, it := range s.Items {
				x, ok := it.(*draw.Text)
				if !ok || x.Layer == "title" {
					continue
				}
				if q := patchOf(x); q.crossed(at[0], at[1]) {
					t.Errorf("%s %s: %q lies on the shoulder line", d.name, s.ID, x.S)
				}
				if strings.HasPrefix(x.S, "shoulder ") && x.Anchor == draw.Middle {
					seen++
					if !besideLine(s, x) {
						t.Errorf("%s %s: %q stands at no dimension line", d.name, s.ID, x.S)
					}
				}
			}
		}
		for _, g := range d.groups {
			if g.kind == "tenon" {
				edgeInWords(t, d, g)
			}
		}
	}
	if seen == 0 {
		t.Error("no shoulder figure was found")
	}
}

// besideLine reports whether a thin line that runs as the text does lies within
// 8 mm of the text's middle.
func besideLine(s *draw.Sheet, x *draw.Text) bool {
	u := vec.P{X: math.Cos(x.Rot), Y: math.Sin(x.Rot)}
	for _, it := range s.Items {
		p, ok := it.(*draw.Path)
		if !ok || p.Class != draw.Dimension || len(p.Pts) != 2 || p.Mark != "" {
			continue
		}
		d := p.Pts[1].Sub(p.Pts[0])
		if d.Len() < 10 || math.Abs(d.Unit().Cross(u)) > 0.01 {
			continue
		}
		mid := x.At.Add(u.Left().Mul(x.Height / 2)).Sub(p.Pts[0])
		along := mid.Dot(d.Unit())
		if along > 0 && along < d.Len() && math.Abs(d.Unit().Cross(mid)) < 8 {
			return true
		}
	}
	return false
}

// edgeInWords: the words give the way from the reference edge to each tenon
// hole, as the tenon's bore has it in the timber's own axes.
func edgeInWords(t *testing.T, d drawn, g plan) {
	t.Helper()
	_, word := g.title()
	text := flow(d.sheets, g.joint.ID+"-"+word)
	for _, p := range g.joint.Pegs {
		b := boreOf(t, g.joint.Of, g.joint.ID, p.ID)
		y := b.From.Y
		if g.v.face == 1 || g.v.face == 3 {
			y = b.From.Z
		}
		if want := d.f.Units.FormatJoint(math.Abs(y)) + " from the reference edge"; !strings.Contains(text, want) {
			t.Errorf("%s: %s-%s does not say %q", d.name, g.joint.ID, word, want)
		}
	}
}

// TestFinishedEnd: a line J at the start end of its timber is called that.
func TestFinishedEnd(t *testing.T) {
	f := sample(t)
	for _, j := range f.Joints {
		if len(j.Pegs) == 0 || j.Pegs[0].Exit == 0 {
			continue
		}
		shift := mainLine(j).X
		for i := range j.Lines {
			if j.Lines[i].Main {
				j.Lines[i].X = 0
			}
		}
		p := jointPlans(j, roomOf(f))[0]
		p.serves = []plan{p}
		text := ""
		for _, w := range p.words(f.Units) {
			text += w.text + "|"
		}
		if !strings.Contains(text, "Line J: the finished end") {
			t.Errorf("%s, moved by %v: %s", j.ID, shift, text)
		}
		named := false
		for _, g := range p.guides {
			named = named || g.name == "LINE J: the finished end"
		}
		if !named {
			t.Errorf("%s: the line is not named", j.ID)
		}
		return
	}
	t.Fatal("no pegged joint")
}

// TestFlushPegs: a peg that another timber covers is sawn flush, and the hole
// templates say so; others do not.
func TestFlushPegs(t *testing.T) {
	const saw = "Saw the peg flush on both faces before the next timber stands there."
	f := sample(t)
	j := pegged(t, f)
	for _, flush := range []bool{false, true} {
		for i := range j.Pegs {
			j.Pegs[i].Flush = flush
		}
		for _, p := range jointPlans(j, roomOf(f))[:2] {
			p.serves = []plan{p}
			said := false
			for _, w := range p.words(measure.Imperial) {
				said = said || w.text == saw
			}
			if said != flush {
				t.Errorf("%s, flush %v: said %v", p.kind, flush, said)
			}
		}
	}
}

// pegged returns the first joint of a frame with a peg that crosses it.
func pegged(t *testing.T, f *geom.Frame) *geom.Joint {
	t.Helper()
	for _, j := range f.Joints {
		if len(j.Pegs) > 0 && j.Pegs[0].Exit != 0 {
			return j
		}
	}
	t.Fatal("no pegged joint")
	return nil
}

// TestEveryDimensionIsLettered: each dimension of a template has its figure on
// one of its sheets.
func TestEveryDimensionIsLettered(t *testing.T) {
	for _, d := range all(t) {
		for _, g := range d.groups {
			_, word := g.title()
			text := "|"
			for _, s := range d.sheets {
				if strings.HasPrefix(s.ID, g.joint.ID+"-"+word) {
					text += textOf(s) + "|"
				}
			}
			if text == "|" && g.kind == "end" {
				continue // too large for the paper; measured on a roll
			}
			for _, m := range g.dims {
				if want := m.word + d.f.Units.PlainJoint(m.b.Dist(m.a)); !strings.Contains(text, "|"+want+"|") {
					t.Errorf("%s: %s-%s lacks %q", d.name, g.joint.ID, word, want)
				}
			}
		}
	}
}
