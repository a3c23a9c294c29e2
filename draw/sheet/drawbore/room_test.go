package drawbore

import (
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/draw/legible"
	"pegwright/draw/scene"
	"pegwright/geom"
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
				words = font.Turned(x).Max.Y
			}
			if strings.HasPrefix(x.S, "Detail ") {
				head = font.Turned(x).Min.Y
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
			b = font.Turned(x)
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
	const flush = "drive, then saw flush on both faces before the next timber stands there"
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
			text := legible.Line(Sheets(f, g, nil)[:1])
			if !strings.Contains(text, flush) || strings.Contains(text, "proud") || strings.Contains(text, "Trim it") {
				t.Errorf("%s: %s", g.First().ID, text)
			}
		}
	}
}
