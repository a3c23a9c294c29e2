package assembly_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// replay puts a frame together step by step and looks at places along every
// move for timbers that run into each other, by separating axes on the cells of
// the net timbers. It knows nothing of sweeps, and reads the steps alone. What a
// bent stands on is left out while it is reared, which is a straight likeness.
func replay(t *testing.T, f *geom.Frame, places int) {
	t.Helper()
	cells := map[string][]solid.Convex{}
	for _, tm := range f.Timbers {
		for _, c := range tm.Net.Cells() {
			cells[tm.ID] = append(cells[tm.ID], c.Moved(tm.Place))
		}
	}
	together := map[string][]string{}
	tried := 0
	for i, s := range f.Steps {
		here := together[s.Group]
		ground := map[string]bool{}
		if s.Motion == geom.Rear {
			for _, id := range s.Joints {
				if j := f.Joint(id); j.Of.Place.X.Z > 0.99 && j.OfEnd == geom.Start {
					ground[j.Into.ID] = true
				}
			}
		}
		back := vec.V{} // from home, along the legs from the last to the first
		for k := len(s.Legs) - 1; k >= 0; k-- {
			leg := s.Legs[k].Direction.Mul(-s.Legs[k].Distance)
			for n := range places {
				off := back.Add(leg.Mul((float64(n) + 0.37) / float64(places)))
				for _, m := range s.Move {
					for _, id := range here {
						if ground[id] {
							continue
						}
						tried++
						if d := clash(cells[m], off, cells[id]); d > 0.01 {
							t.Fatalf("step %d (%s): %s runs %.3f mm into %s", i+1, s.Text, m, d, id)
						}
					}
				}
			}
			back = back.Add(leg)
		}
		together[s.Group] = append(slices.Clone(here), s.Move...)
	}
	if tried == 0 && len(f.Steps) > 2 {
		t.Error("nothing was tried")
	}
}

// clash returns the deepest overlap of two sets of cells, the first set off.
func clash(a []solid.Convex, off vec.V, b []solid.Convex) float64 {
	most := 0.0
	for _, c := range a {
		lo, hi := c.Bounds()
		lo, hi = lo.Add(off), hi.Add(off)
		for _, d := range b {
			l, h := d.Bounds()
			if lo.X >= h.X || l.X >= hi.X || lo.Y >= h.Y || l.Y >= hi.Y || lo.Z >= h.Z || l.Z >= hi.Z {
				continue
			}
			most = max(most, depth(shifted(c, off), d))
		}
	}
	return most
}

func TestReplayOfSamples(t *testing.T) {
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			src, _ := samples.Source(name)
			replay(t, trial.Frame(t, "test.yaml", string(src)), 3)
		})
	}
}

const plate = `frame: Spliced plate
units: in
timbers:
  plate-a: {role: plate, section: 6 x 8, from: [0, 0, 96], to: [150, 0, 96], faces: [top, south]}
  plate-b: {role: plate, section: 6 x 8, from: [150, 0, 96], to: [300, 0, 96], faces: [top, south]}
  post-1: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 88], faces: [south, west]}
  post-2: {role: post, section: 6 x 6, from: [120, 0, 0], to: [120, 0, 88], faces: [south, west]}
  post-3: {role: post, section: 6 x 6, from: [294, 0, 0], to: [294, 0, 88], faces: [south, west]}
joints:
  - {kind: %s, of: plate-b, end: start, into: plate-a}
  - {kind: mortise and tenon, of: post-1, end: end, into: plate-a, hold back start: 2}
  - {kind: mortise and tenon, of: post-2, end: end, into: plate-a}
  - {kind: mortise and tenon, of: post-3, end: end, into: plate-b, hold back end: 2}
`

const gate = `frame: Gate
units: in
timbers:
  post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 8'], faces: [south, west]}
  rail: {role: tie, section: 6 x 6, from: [0, 6, 48], to: [0, 6', 48], faces: [top, west]}
  side: {role: tie, section: 6 x 6, from: [6, 0, %s], to: [6', 0, %s], faces: [top, south]}
joints:
  - {%s, of: rail, end: start, into: post}
  - {%s, of: side, end: start, into: post}
`

// Joints with two legs, wedges and keys go together by their own moves, and
// their wedges and keys are driven once they are closed.
func TestKindsGoTogether(t *testing.T) {
	tenon := "kind: mortise and tenon"
	for name, c := range map[string]struct {
		src    string
		motion geom.Motion
	}{
		"lap scarf":    {fmt.Sprintf(plate, "half-lap scarf"), geom.Straight},
		"keyed scarf":  {fmt.Sprintf(plate, "half-lap scarf, scarf: {key: key, length: 24, undercut: 6}"), geom.Legs},
		"wedged scarf": {fmt.Sprintf(plate, "half-lap scarf, scarf: {key: wedges, key size: 1 1/4}, pegs: 4"), geom.Legs},
		"splayed":      {fmt.Sprintf(plate, "splayed scarf"), geom.Straight},
		"wedged tenon": {fmt.Sprintf(gate, "70", "70", "kind: wedged through tenon", tenon), geom.Legs},
	} {
		t.Run(name, func(t *testing.T) {
			f := trial.Frame(t, "test.yaml", c.src)
			for _, x := range against(f) {
				t.Errorf("stopped: %s", x.Text)
			}
			bookkeeping(t, f)
			replay(t, f, 8)
			j := f.Joints[0]
			for i, s := range f.Steps {
				if !slices.Contains(s.Joints, j.ID) {
					continue
				}
				if s.Motion != c.motion {
					t.Errorf("step %d closes %s by %s: %s", i+1, j.Kind, s.Motion, s.Text)
				}
				for _, p := range j.Pieces {
					if !slices.Contains(s.Pieces, p.ID) || !strings.Contains(s.Text, p.ID) {
						t.Errorf("step %d does not drive %s: %s", i+1, p.ID, s.Text)
					}
				}
			}
		})
	}
}

// A beam dovetailed into a post's side comes out sideways only, and a brace
// tenoned into both comes out of the post along the beam and out of the beam
// down: no two of the three can part from the third in one direction.
func TestTrappedBraceIsNamed(t *testing.T) {
	f := trial.Frame(t, "test.yaml", `frame: Knee
units: in
timbers:
  post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 9'], faces: [south, west]}
  beam: {role: beam, section: 6 x 6, from: [0, 0, 8'], to: [0, 9', 8'], faces: [top, west]}
  brace: {role: brace, section: 3 x 5, between: [post, beam], legs: 36 x 36, toward: north}
joints:
  - {kind: half-dovetail lap, of: beam, end: start, into: post, into face: 2, pegs: 1}
`)
	list := against(f)
	if len(list) != 1 || !slices.Equal(list[0].Timbers, []string{"post", "beam", "brace"}) || len(list[0].Also) != 2 || list[0].At.Line != 4 {
		t.Fatalf("want one stop that names all three at their lines, got %+v", list)
	}
	if !strings.Contains(list[0].Mend, "brace") {
		t.Errorf("the mend does not speak of the brace: %s", list[0].Mend)
	}
}

// Two rails into neighbouring faces of a post at one height: the peg of each
// comes out where the other stands, so that one of them can never be driven.
// With a peg in one only, that rail goes in first, and its peg is sawn.
func TestPegsBehindANeighbour(t *testing.T) {
	pegged := "kind: mortise and tenon, bore: 3/4, from reference: 3/4, thickness: 1, tenon length: 2.75"
	bare := "kind: mortise and tenon, pegs: 0, tenon length: 1.25"
	f := trial.Frame(t, "test.yaml", fmt.Sprintf(gate, "48", "48", pegged, pegged))
	if list := against(f); len(list) != 1 || list[0].Rule != "peg reach" || !strings.Contains(list[0].Text, "lead") {
		t.Errorf("want one stop of peg reach, got %+v", list)
	}
	f = trial.Frame(t, "test.yaml", fmt.Sprintf(gate, "48", "48", pegged, bare))
	if list := against(f); len(list) > 0 {
		t.Errorf("stopped: %s", list[0].Text)
	}
	at := func(joint string) int {
		return slices.IndexFunc(f.Steps, func(s geom.Step) bool { return slices.Contains(s.Joints, joint) })
	}
	if a, b := at("rail-into-post"), at("side-into-post"); a < 0 || b < a {
		t.Errorf("the pegged rail goes in at step %d, the other at %d", a+1, b+1)
	}
	said := false
	for _, x := range f.Notes {
		said = said || x.Rule == "peg reach" && strings.Contains(x.Mend, "before side goes in")
	}
	if !said {
		t.Errorf("nothing says to saw the peg: %+v", f.Notes)
	}
}
