package raise

import (
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// What moves is drawn with a line wider than what stands, and with grain: black
// and white printing tells them apart.
func checkWhatMovesIsDark(t *testing.T, r *raisedSample) {
	for _, a := range r.acts {
		s := r.sheet(a)
		moves := map[string]bool{}
		for _, id := range a.step.Move {
			moves[id] = true
		}
		edges, grain := map[string]int{}, map[string]int{}
		for _, it := range s.Items {
			h := it.Head()
			if r.f.Timber(h.Owner) == nil || h.Layer == "key view" {
				continue
			}
			switch w := h.PenAt(s.Step).Width; {
			case h.Class == draw.Hatch:
				grain[h.Owner]++
			case moves[h.Owner] != (w > draw.PenFor(draw.Part, s.Step).Width):
				t.Fatalf("step %d: %s has a line of %.2f mm", a.n, h.Owner, w)
			default:
				edges[h.Owner]++
			}
		}
		for _, id := range a.step.Move {
			if edges[id] == 0 || grain[id] == 0 {
				t.Errorf("step %d: %s has %d edges and %d lines of grain", a.n, id, edges[id], grain[id])
			}
		}
		for id := range grain {
			if !moves[id] {
				t.Errorf("step %d: %s stands and has grain", a.n, id)
			}
		}
	}
}

// wayOf returns the direction of each broad arrow on a sheet, tail to tip.
func wayOf(s *draw.Sheet) []vec.P {
	var out []vec.P
	for _, it := range s.Items {
		if p, ok := it.(*draw.Path); ok && p.Mark == "way" {
			tail := p.Pts[0].Lerp(p.Pts[len(p.Pts)-1], 0.5)
			tip := p.Pts[0]
			for _, q := range p.Pts {
				if q.Dist(tail) > tip.Dist(tail) {
					tip = q
				}
			}
			out = append(out, tip.Sub(tail).Unit())
		}
	}
	return out
}

// In an isometric view (ISO 5456-3) the level axes lie at 30° to the horizontal
// and the plumb one stands upright. Seen from the south-east, what goes west goes
// to the left and up; what is lowered goes down.
func checkArrowsPointTheWayOfTheMove(t *testing.T, r *raisedSample) {
	for _, a := range r.acts {
		s := a.step
		if s.Group != "" || len(s.Legs) != 1 {
			continue
		}
		got := wayOf(r.sheet(a))
		if len(got) != 1 {
			t.Errorf("step %d has %d arrows", a.n, len(got))
			continue
		}
		sin, cos := 0.5, math.Sqrt(3)/2
		var want vec.P
		switch d := s.Direction(); {
		case d.Z < -0.999:
			want = vec.P{Y: -1}
		case d.X < -0.999 && strings.Contains(captionOf(r, a), "southeast"):
			want = vec.P{X: -cos, Y: sin}
		case d.X < -0.999 && strings.Contains(captionOf(r, a), "northeast"):
			want = vec.P{X: cos, Y: sin}
		default:
			continue
		}
		if got[0].Dist(want) > 1e-6 {
			t.Errorf("step %d goes %v, its arrow points %v, want %v", a.n, s.Direction(), got[0], want)
		}
	}
}

// captionOf is the caption of a step's picture.
func captionOf(r *raisedSample, a *act) string {
	for _, it := range r.sheet(a).Items {
		if x, ok := it.(*draw.Text); ok && x.Mark == "caption" {
			return x.S
		}
	}
	return ""
}

// Every mark beside a picture belongs to a joint that the step closes, and all
// of them are there where the lanes have room.
func checkMarksStandBesideThePicture(t *testing.T, r *raisedSample) {
	for _, a := range r.acts {
		n := 0
		for _, it := range r.sheet(a).Items {
			x, ok := it.(*draw.Text)
			if !ok || x.Owner == "" {
				continue
			}
			j := r.f.Joint(x.Owner)
			if j == nil || j.Mark != x.S {
				t.Errorf("step %d: mark %q of %s", a.n, x.S, x.Owner)
			}
			n++
		}
		if n != len(a.step.Joints) {
			t.Errorf("step %d: %d marks, %d joints", a.n, n, len(a.step.Joints))
		}
	}
}

// A step's picture does not show the whole frame: nothing that stands lies
// farther off than the bent beside it, 5 m here, except sills.
func TestPicturesShowWhatIsNear(t *testing.T) {
	r := &raising{f: trial.Sample(t, "boat-shelter"), bodies: map[string]raisePart{}}
	r.gather()
	for _, a := range r.acts {
		if a.step.Group != "" {
			continue
		}
		lo, hi := boxOf(r.f, a.step.Move)
		for _, p := range r.standing(a) {
			a0, b0 := p.Body.Bounds()
			if off := max(a0.X-hi.X, lo.X-b0.X); off > 5400 && !strings.Contains(r.f.Timber(p.Owner).Role, "sill") {
				t.Errorf("step %d shows %s, %.0f mm off", a.n, p.Owner, off)
			}
		}
	}
}
