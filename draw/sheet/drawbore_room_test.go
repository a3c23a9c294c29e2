package sheet

import (
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/legible"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// detailIsClear: both circles of the detail stand whole over the words that
// explain them, under the heading, and these words over the title block.
func detailIsClear(t *testing.T, s *draw.Sheet) {
	t.Helper()
	low, high := math.Inf(1), math.Inf(-1)
	words, head := math.Inf(-1), math.Inf(1)
	for _, it := range s.Items {
		switch x := it.(type) {
		case *draw.Circle:
			if strings.HasPrefix(x.Mark, "hole:") {
				low, high = min(low, x.C.Y-x.R), max(high, x.C.Y+x.R)
			}
		case *draw.Text:
			if strings.HasPrefix(x.S, "Full circle") {
				words = dim.BoxOf(x).Max.Y
			}
			if strings.HasPrefix(x.S, "Detail ") {
				head = dim.BoxOf(x).Min.Y
			}
		}
	}
	if math.IsInf(low, 1) {
		return
	}
	if low < words || high > head || math.IsInf(words, -1) {
		t.Errorf("%s: circles from %.1f to %.1f, words under %.1f, heading over %.1f", s.ID, low, high, words, head)
	}
}

// pegIsClear: nothing of the peg before it is driven, its dimensions and their
// figures lies on the hatched wood. The hatching is found by its class.
func pegIsClear(t *testing.T, f *geom.Frame, s *draw.Sheet) {
	t.Helper()
	j := f.Joint(strings.TrimPrefix(s.ID, "drawbore-"))
	if j == nil {
		return
	}
	wood, peg := math.Inf(1), math.Inf(-1)
	owner := throughPeg(j).ID
	for _, it := range s.Items {
		b := draw.ItemBounds(it)
		if x, ok := it.(*draw.Text); ok {
			b = dim.BoxOf(x)
		}
		h := it.Head()
		if h.Class == draw.Hatch {
			wood = min(wood, b.Min.X)
		}
		if h.Owner == owner {
			peg = max(peg, b.Max.X)
		}
	}
	if math.IsInf(wood, 1) || math.IsInf(peg, -1) || peg > wood {
		t.Errorf("%s: the peg reaches to %.1f, the wood begins at %.1f", s.ID, peg, wood)
	}
}

// A peg that is sawn flush is nowhere said to stand out of the timber.
func TestFlushPegs(t *testing.T) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		for _, j := range f.Joints {
			for i := range j.Pegs {
				j.Pegs[i].Flush = true
			}
		}
		for _, g := range scene.Groups(f) {
			if throughPeg(g.First()) == nil {
				continue
			}
			for _, sheets := range [][]*draw.Sheet{Joint(f, g, nil)[:1], Drawbore(f, g, nil)[:1]} {
				text := strings.Join(strings.Fields(legible.Words(sheets)), " ")
				if !strings.Contains(text, "drive, then saw flush on both faces before the next timber stands there") || strings.Contains(text, "proud") || strings.Contains(text, "Trim it") {
					t.Errorf("%s: %s", sheets[0].ID, text)
				}
			}
		}
	}
}

// Every heavy line of the halves lies on the reference arris: a little inside
// of it there is wood, a little outside of either reference face there is none.
// The line is read back from the paper with the camera's own axes, at a grid of
// places.
func TestHeavyLinesLieOnTheArris(t *testing.T) {
	seen := 0
	eachJoint(t, func(t *testing.T, f *geom.Frame, g scene.Group) {
		for _, v := range viewsOf(g) {
			for _, it := range v.items {
				p, ok := it.(*draw.Path)
				if !ok || p.Class != draw.Register {
					continue
				}
				seen++
				o, d := v.cam.Project(v.timber.Place.O), v.cam.Project(v.timber.Place.X)
				for _, k := range []float64{0.02, 0.2, 0.4, 0.6, 0.8, 0.98} {
					q := p.Pts[0].Lerp(p.Pts[1], k).Sub(o)
					x := q.Dot(d) / d.Dot(d)
					if q.Sub(d.Mul(x)).Len() > 0.05 || !holds(v.timber, x, 0.2, 0.2) || holds(v.timber, x, -0.2, 0.2) || holds(v.timber, x, 0.2, -0.2) {
						t.Errorf("%s, %s: no arris at %.1f mm", v.timber.ID, v.title, x)
					}
				}
			}
		}
	})
	if seen < 40 {
		t.Errorf("only %d heavy lines: the test says little", seen)
	}
}

// holds reports whether there is wood of a timber at a point of its own axes.
func holds(t *geom.Timber, x, y, z float64) bool {
	for _, c := range t.Net.Cells() {
		if c.Contains(vec.V{X: x, Y: y, Z: z}, 1e-6) {
			return true
		}
	}
	return false
}
