package timber

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// eachStick runs a check on every group of like timbers of every sample.
func eachStick(t *testing.T, check func(t *testing.T, f *geom.Frame, g scene.Sticks)) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		for _, g := range scene.AllSticks(f) {
			t.Run(name+"/"+g.First().ID, func(t *testing.T) { check(t, f, g) })
		}
	}
}

// Every cut and every bore of every timber has its number on a face and its row
// in the table; a bore shows its circle on the entry face at the drawing's
// scale, and the exit's circle with the word.
func TestEveryCutAppears(t *testing.T) {
	eachStick(t, func(t *testing.T, f *geom.Frame, g scene.Sticks) { everyCut(t, g.First(), Sheets(f, g, nil)) })
}

func everyCut(t *testing.T, s *geom.Timber, sheets []*draw.Sheet) {
	t.Helper()
	seen := map[string]int{}
	words := 0
	for _, sh := range sheets {
		k := 0.0
		for _, it := range sh.Items {
			if x, ok := it.(*draw.Text); ok && strings.HasPrefix(x.S, "scale  1:") {
				faces, _, _ := strings.Cut(strings.TrimPrefix(x.S, "scale  1:"), ",")
				n, err := strconv.ParseFloat(faces, 64)
				if err != nil {
					t.Fatal(err)
				}
				k = 1 / n
			}
			if x, ok := it.(*draw.Text); ok && x.S == "exit" {
				words++
			}
		}
		for _, it := range sh.Items {
			seen[it.Head().Mark]++
			if c, ok := it.(*draw.Circle); ok && strings.Contains(c.Mark, ":") {
				_, id, _ := strings.Cut(c.Mark, ":")
				for _, b := range s.Bores {
					if b.Peg == id && math.Abs(c.R-b.Diameter/2*k) > 1e-9 {
						t.Errorf("%s: radius %.3f at scale %.3f of Ø %.2f", c.Mark, c.R, k, b.Diameter)
					}
				}
			}
		}
	}
	for n := 1; n <= len(s.Cuts)+len(s.Bores); n++ {
		if seen[fmt.Sprintf("cut:%d", n)] == 0 {
			t.Errorf("cut %d has no label", n)
		}
		if seen[fmt.Sprintf("row:%d", n)] == 0 {
			t.Errorf("cut %d has no row", n)
		}
	}
	exits := 0
	for _, b := range s.Bores {
		if seen["entry:"+b.Peg] == 0 {
			t.Errorf("bore of %s is not shown", b.Peg)
		}
		if b.Exit > 0 {
			exits++
			if seen["exit:"+b.Peg] == 0 {
				t.Errorf("exit of %s is not shown", b.Peg)
			}
		}
	}
	if words < exits {
		t.Errorf("%d of %d exits bear the word", words, exits)
	}
}

// What a joint takes from its receiver's entered face is laid out on that face.
func TestReceiversAreCutFromTheEnteredFace(t *testing.T) {
	eachStick(t, func(t *testing.T, f *geom.Frame, g scene.Sticks) {
		for _, x := range features(f, g.First()) {
			if x.into && x.bore == nil && (x.what == "mortise" || x.what == "housing") && x.face != x.joint.Entered && !x.through {
				t.Errorf("%s of %s on face %d, entered %d", x.what, x.joint.ID, x.face, x.joint.Entered)
			}
		}
	})
}

// Sheets of a long stick show, together, everything that is cut, none wider than
// its room, pieces in order and apart; checked at many scales and widths.
func TestLayCoversWhatIsCut(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	for _, s := range f.Timbers {
		v := &stickView{f: f, t: s, feats: features(f, s)}
		places := v.stations()
		for _, n := range []float64{2, 3, 4, 6} {
			for _, w := range []float64{120, 220, 400} {
				strips := lay(s, busy(s), 1/n, w, tornMargin, places, 40)
				for _, x := range places {
					shown := false
					for _, st := range strips {
						_, ok := st.paper(x, 1/n)
						shown = shown || ok
					}
					if !shown {
						t.Errorf("%s 1:%v on %v: %.1f is not shown", s.ID, n, w, x)
					}
				}
				for _, st := range strips {
					if st.width(1/n) > w+1e-6 {
						t.Errorf("%s 1:%v on %v: %.1f wide", s.ID, n, w, st.width(1/n))
					}
					for i, p := range st.pieces {
						if p.To <= p.From || i > 0 && p.From < st.pieces[i-1].To {
							t.Errorf("%s: pieces %v", s.ID, st.pieces)
						}
					}
				}
			}
		}
	}
}

// A stopped joint stops every sheet of both its timbers.
func TestStoppedTimberSheets(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	j := f.Joints[0]
	for _, g := range scene.AllSticks(f) {
		named := g.First() == j.Into || g.First() == j.Of
		for _, s := range Sheets(f, g, map[string]int{j.ID: 7}) {
			if strings.Contains(s.Dump(), "DO NOT CUT – see finding 7") != named {
				t.Errorf("%s: stopped %v", s.ID, !named)
			}
		}
	}
}

// The sloped side of a brace's pocket and of its housing lies in one plane, the
// brace's inner edge, so that both begin on the same line of the whole face. In
// the default sample the line is at 28 in - 5 in / sin 45° - 1/2 in: the leg, the
// brace's width along the tie, the housing (closed form).
func TestPocketIsScribedOnTheFace(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	want := 25.4 * (28 - 5*math.Sqrt2 - 0.5)
	found := 0
	for _, x := range features(f, f.Timber("tie-1")) {
		if x.id() != "brace-1-south-into-tie-1" || x.bore != nil {
			continue
		}
		found++
		if math.Abs(x.from-want) > 0.01 {
			t.Errorf("the %s begins at %.2f, want %.2f", x.what, x.from, want)
		}
	}
	if found != 2 {
		t.Errorf("%d cuts, want a mortise and a housing", found)
	}
}

// In the table of cuts the number of the face stands at least the width of a
// figure and a half off the length beside it, lest face 2 at 2'-11" be read as
// 22'-11".
func TestFaceStandsOffTheLength(t *testing.T) {
	n := 0
	eachStick(t, func(t *testing.T, f *geom.Frame, g scene.Sticks) {
		for _, s := range Sheets(f, g, nil) {
			var last *draw.Text
			for _, it := range s.Items {
				x, ok := it.(*draw.Text)
				if !ok || !strings.HasPrefix(x.Mark, "row:") {
					last = nil
					continue
				}
				if last != nil && last.Anchor == draw.Middle && x.Anchor == draw.End && last.At.Y == x.At.Y {
					n++
					gap := x.At.X - font.Measure(x.S, x.Height, false) - last.At.X - font.Measure(last.S, last.Height, false)/2
					if least := 1.5 * font.Measure("2", x.Height, false); gap < least {
						t.Errorf("%s: face %s stands %.1f mm off %s, want %.1f", s.ID, last.S, gap, x.S, least)
					}
				}
				last = x
			}
		}
	})
	if n == 0 {
		t.Error("no face beside a length")
	}
}

// The words along a match line are whole: they end with a length.
func TestMatchLinesAreWhole(t *testing.T) {
	n := 0
	eachStick(t, func(t *testing.T, f *geom.Frame, g scene.Sticks) {
		for _, s := range Sheets(f, g, nil) {
			for _, it := range s.Items {
				x, ok := it.(*draw.Text)
				if !ok || !strings.Contains(x.S, "match") {
					continue
				}
				n++
				if _, at, _ := strings.Cut(x.S, "match line at "); strings.HasSuffix(at, "...") || at == "" {
					t.Errorf("%s: %q", s.ID, x.S)
				}
			}
		}
	})
	if n == 0 {
		t.Error("no match line")
	}
}
