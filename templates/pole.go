package templates

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// tick is a line of layout across a timber, x mm from its start end.
type tick struct {
	x     float64
	word  string
	class draw.Class
	hole  bool
}

// pole is a story pole: a strip as long as a timber with every line of its
// layout.
type pole struct {
	t     *geom.Timber
	also  []string // further timbers that are cut alike
	ticks []tick
	text  [][]string // the words of each tick, in lines
}

// poles returns the story poles of the timbers of the frame, those that are cut
// alike once. Timbers of stopped joints are left out. Words at the ticks are
// wrapped so that two strips lie on a page; a roll has more room.
func poles(f *geom.Frame, stopped map[string]bool) []pole {
	width := 37.0
	if _, ok := draw.RollNamed(f.Paper.Templates); ok {
		width = 60
	}
	var out []pole
	for _, g := range scene.AllSticks(f) {
		p := pole{t: g.First()}
		bad := false
		for i, t := range g.Timbers {
			if i > 0 {
				p.also = append(p.also, t.ID)
			}
			for _, j := range f.JointsOf(t) {
				bad = bad || stopped[j.ID]
			}
		}
		if bad {
			continue
		}
		p.ticks = ticks(f, p.t)
		for _, k := range p.ticks {
			p.text = append(p.text, wrap(unbroken(f.Units.FormatJoint(k.x))+" "+k.word, width, lettering, false))
		}
		out = append(out, p)
	}
	return out
}

// ticks returns the lines of layout of a timber in their order, those that fall
// together as one.
func ticks(f *geom.Frame, t *geom.Timber) []tick {
	all := []tick{{0, "start end", draw.Part, false}, {t.Length, "finished end", draw.Part, false}}
	for _, j := range f.JointsOf(t) {
		all = append(all, jointTicks(j, t)...)
	}
	for _, b := range t.Bores {
		if math.Abs(b.To.X-b.From.X) < 1e-6 {
			all = append(all, tick{b.From.X, fmt.Sprintf("hole Ø\u00a0%s, from face\u00a0%d", f.Units.PlainJoint(b.Diameter), b.Entry), draw.Centre, true})
		}
	}
	sort.SliceStable(all, func(i, k int) bool { return all[i].x < all[k].x })
	var out []tick
	for _, k := range all {
		if k.x < -same || k.x > t.Length+same {
			continue
		}
		if n := len(out); n > 0 && k.x-out[n-1].x < 0.05 && k.hole == out[n-1].hole {
			if !strings.Contains(out[n-1].word, k.word) {
				out[n-1].word += "; " + k.word
			}
			continue
		}
		out = append(out, k)
	}
	return out
}

// jointTicks returns the lines that a joint scribes on a timber.
func jointTicks(j *geom.Joint, t *geom.Timber) []tick {
	var out []tick
	add := func(x float64, word string, class draw.Class) {
		if j.Mark != "" {
			word += " (" + j.Mark + ")"
		}
		out = append(out, tick{x, word, class, false})
	}
	named := false
	for _, p := range j.Places {
		if p.On == t {
			add(p.X, role(j, p.Label), draw.Part)
			named = named || strings.HasPrefix(p.Label, "mortise")
		}
	}
	if t != j.Into {
		return out
	}
	for _, l := range j.Lines {
		add(l.X, role(j, l.Name), draw.Part)
	}
	for _, c := range t.Cuts {
		if c.Joint == j.ID && c.Name == "mortise" && !named {
			// the open side of a cut is closed beyond the blank
			lo, hi := solid.Common(t.Blank, c.Solid).Bounds()
			add(lo.X, "mortise, near end", draw.Dimension)
			add(hi.X, "mortise, far end", draw.Dimension)
		}
	}
	return out
}

// Sizes of a strip, mm: below the line that lies on the arris, the ticks above
// it, the way from a tick to its words.
const (
	poleFoot  = 8.0
	tickHigh  = 10.0
	tickLead  = 6.0
	labelWide = 5.45 // of a line of words
)

// high is how much of the paper a strip takes across.
func (p pole) high() float64 {
	most := 0.0
	for _, lines := range p.text {
		for _, s := range lines {
			most = max(most, font.Measure(s, lettering, false))
		}
	}
	return poleFoot + tickHigh + tickLead + most + 4
}

// strip is a part of a pole on paper: from x a to b, its line at height y, x a
// at left.
type strip struct {
	pole
	n, of   int
	a, b    float64
	left, y float64
}

// strips cuts a pole into lengths of at most size mm, overlapping.
func (p pole) strips(size float64) []strip {
	xs := starts(-4, p.t.Length+4, size, nil, nil)
	step := size - overlap
	out := make([]strip, len(xs))
	for i := range xs {
		a := -4 + float64(i)*step
		out[i] = strip{pole: p, n: i, of: len(xs), a: a, b: min(a+size, p.t.Length+4)}
	}
	return out
}

// draw puts the strip on the sheet: the line of the arris, ticks with their
// words, and the seams.
func (k strip) draw(s *draw.Sheet, number int) {
	at := func(x, y float64) vec.P { return vec.P{X: k.left + x - k.a, Y: k.y + y} }
	key := fmt.Sprintf("pole:%d:%d", number, k.n)
	from, to := max(k.a, 0), min(k.b, k.t.Length)
	s.Line(draw.Register, at(from, 0), at(to, 0)).Mark = key + ":arris"
	s.Line(draw.Trace, at(k.a, k.high()-poleFoot-1), at(k.b, k.high()-poleFoot-1))
	shown, wants := k.shown()
	places, _ := dim.Spread(wants, 0, at(k.a, 0).X, at(k.b, 0).X)
	for i, n := range shown {
		x := at(k.ticks[n].x, 0)
		foot := vec.P{X: places[i], Y: k.y + tickHigh + tickLead}
		s.Line(k.ticks[n].class, x, at(k.ticks[n].x, tickHigh)).Mark = fmt.Sprintf("%s:tick:%d", key, n)
		s.Line(draw.Dimension, at(k.ticks[n].x, tickHigh), foot)
		if k.ticks[n].hole {
			s.Circle(draw.Dimension, at(k.ticks[n].x, tickHigh/2), 1.2)
		}
		first := lettering/2 - labelWide*float64(len(k.text[n])-1)/2
		for i, line := range k.text[n] {
			t := s.Text(foot.Add(vec.P{X: first + labelWide*float64(i), Y: 1.2}), lettering, line)
			t.Rot = math.Pi / 2
		}
	}
	name := k.t.ID
	if k.of > 1 {
		name += fmt.Sprintf(", strip %d of %d", k.n+1, k.of)
	}
	s.Text(at(k.a+20, -5.5), lettering, name+": this line on arris 1/2, start end to the left").Bold = true
	if k.n > 0 {
		k.seam(s, at(k.a+overlap/2, 0), key, k.n, vec.P{X: 1})
	}
	if k.n < k.of-1 {
		k.seam(s, at(k.b-overlap/2, 0), key, k.n+1, vec.P{X: -1})
	}
}

// shown returns which ticks the strip shows, and the places that their words
// ask for.
func (k strip) shown() (ticks []int, at []dim.Want) {
	for i, t := range k.ticks {
		if t.x >= k.a && t.x <= k.b {
			ticks = append(ticks, i)
			at = append(at, dim.Want{At: k.left + t.x - k.a, Size: labelWide*float64(len(k.text[i])) + 0.6})
		}
	}
	return ticks, at
}

// seam marks where two strips are laid on each other.
func (k strip) seam(s *draw.Sheet, at vec.P, key string, n int, side vec.P) {
	s.Line(draw.Trace, at.Sub(vec.P{Y: 6}), at.Add(vec.P{Y: tickHigh}))
	for i, y := range []float64{-4, 8} {
		c := at.Add(vec.P{Y: y})
		s.Poly(draw.Dimension, true, c.Add(vec.P{X: 2}), c.Add(vec.P{Y: 2}), c.Sub(vec.P{X: 2}), c.Sub(vec.P{Y: 2})).Mark = fmt.Sprintf("%s:match:%d:%d", key, n, i)
	}
	t := s.Text(at.Add(side.Mul(3)).Add(vec.P{Y: -5.5}), lettering, fmt.Sprint(n))
	if side.X < 0 {
		t.Anchor = draw.End
	}
}

// words say whose pole it is, and how it is used.
func (p pole) words(u measure.Units) words {
	var w words
	title := "STORY POLE " + p.t.ID
	if p.t.Mark != "" {
		title += " (no. " + p.t.Mark + ")"
	}
	w.add(5, true, title)
	say := "Over all " + unbroken(u.FormatJoint(p.t.Length)) + ": hold a tape to the pole before it is used. Words stand at their lines; what is not on the reference arris says where it lies."
	if n := len(p.also); n > 3 {
		say = fmt.Sprintf("Also %s and %d more, as on the timber's sheet. ", strings.Join(p.also[:3], ", "), n-3) + say
	} else if n > 0 {
		say = "Also " + strings.Join(p.also, ", ") + ". " + say
	}
	w.add(lettering, false, say)
	return w
}
