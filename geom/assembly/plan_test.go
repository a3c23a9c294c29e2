package assembly_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// against returns the findings of the order of assembly that stop a frame.
func against(f *geom.Frame) []finding.Finding {
	var r []finding.Finding
	for _, x := range f.Notes {
		if x.Severity == finding.Stop && (x.Rule == "assembly" || x.Rule == "peg reach") {
			r = append(r, x)
		}
	}
	return r
}

const barn = `frame: Barn
units: in
building:
  span: 14'
  bays: [%s]
  eave: 9'
  roof: {shape: gable, pitch: 9 in 12}
  sills: %s
  girts: {height: [4'], in: [%s]}
  braces: {legs: 30" x 30", in: [bents, walls]}
`

// bookkeeping holds a complete order: every timber moves once on the standing
// frame, every joint closes once and every peg is driven at the step that
// closes its joint, with both timbers there; nothing hangs on nothing.
func bookkeeping(t *testing.T, f *geom.Frame) {
	t.Helper()
	stands, closed := map[string]int{}, map[string]int{}
	driven := map[string]int{}
	lying := map[string]map[string]bool{}
	for i, s := range f.Steps {
		here := func(id string) bool { return stands[id] > 0 }
		if s.Group != "" {
			if lying[s.Group] == nil {
				lying[s.Group] = map[string]bool{}
			}
			here = func(id string) bool { return lying[s.Group][id] }
		} else if len(s.Move) > 1 && len(lying[s.Name]) != len(s.Move) {
			t.Errorf("step %d raises %d timbers as %s, of which %d were put together", i+1, len(s.Move), s.Name, len(lying[s.Name]))
		}
		if len(s.Onto) == 0 && s.Group == "" && !s.Support {
			t.Errorf("step %d sets %v on nothing", i+1, s.Move)
		}
		for _, id := range s.Onto {
			if !here(id) {
				t.Errorf("step %d joins %v to %s, which is not there", i+1, s.Move, id)
			}
		}
		for _, id := range s.Joints {
			closed[id]++
			j := f.Joint(id)
			for _, g := range j.Pegs {
				if !slices.Contains(s.Pegs, g.ID) {
					t.Errorf("step %d closes %s and does not drive %s", i+1, id, g.ID)
				}
			}
		}
		for _, id := range s.Pegs {
			driven[id]++
		}
		for _, id := range s.Move {
			if s.Group == "" {
				stands[id]++
			} else {
				lying[s.Group][id] = true
			}
		}
		if s.Text == "" || s.Name == "" {
			t.Errorf("step %d has no words", i+1)
		}
	}
	for _, tm := range f.Timbers {
		if stands[tm.ID] != 1 {
			t.Errorf("%s is put up %d times", tm.ID, stands[tm.ID])
		}
	}
	for _, j := range f.Joints {
		if closed[j.ID] != 1 {
			t.Errorf("%s closes %d times", j.ID, closed[j.ID])
		}
		for _, g := range j.Pegs {
			if driven[g.ID] != 1 {
				t.Errorf("%s is driven %d times", g.ID, driven[g.ID])
			}
		}
	}
}

func TestSamplesGoTogether(t *testing.T) {
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			src, _ := samples.Source(name)
			f := trial.Frame(t, "test.yaml", string(src))
			for _, x := range against(f) {
				t.Errorf("stopped: %s", x.Text)
			}
			bookkeeping(t, f)
		})
	}
}

// stage puts a step of a barn in the order of a crew's work (common practice,
// no source): sills, bents put together flat, each bent reared before the next
// with the girts and wall braces of its bay between, plates down, then rafters.
func stage(f *geom.Frame, s geom.Step) int {
	tm := f.Timber(s.Move[0])
	switch {
	case strings.Contains(tm.Role, "sill"):
		return 0
	case strings.HasPrefix(s.Group, "bent"):
		return 1
	case s.Group != "" || tm.Role == "rafter":
		return 100
	case tm.Role == "plate":
		return 99
	case strings.HasPrefix(s.Name, "bent"):
		return 10 * tm.Bent
	case tm.Role == "brace": // a wall brace goes into the post of a bent that stands
		for _, j := range f.JointsOf(tm) {
			if j.Into.Role == "post" {
				return 10*j.Into.Bent + 1
			}
		}
	case tm.Bay > 0:
		return 10*tm.Bay + 2
	}
	return -1
}

func TestThreeBentsGoUpAsACrewRaisesThem(t *testing.T) {
	for _, sills := range []string{"yes", "no"} {
		for _, girts := range []string{"eave walls", "eave walls, gable walls"} {
			t.Run(sills+" "+girts, func(t *testing.T) {
				f := trial.Frame(t, "test.yaml", fmt.Sprintf(barn, "10', 12'", sills, girts))
				for _, x := range against(f) {
					t.Errorf("stopped: %s", x.Text)
				}
				bookkeeping(t, f)
				last := 0
				for i, s := range f.Steps {
					n := stage(f, s)
					if n < last {
						t.Errorf("step %d (%s) comes after stage %d and belongs to %d", i+1, s.Text, last, n)
					}
					last = n
					if strings.HasPrefix(s.Name, "bent") && s.Group == "" {
						if s.Motion != geom.Rear || s.Direction().X > -0.999 {
							t.Errorf("step %d: %s moves by %s along %v", i+1, s.Name, s.Motion, s.Direction())
						}
						if (s.Drop > 0) != (sills == "yes") {
							t.Errorf("step %d: drop %g on sills: %s", i+1, s.Drop, sills)
						}
					}
					if f.Timber(s.Move[0]).Role == "plate" && s.Direction().Z > -0.999 {
						t.Errorf("step %d: the plate moves along %v", i+1, s.Direction())
					}
				}
			})
		}
	}
}

// No step sets two bents at once: nobody lowers a frame on to its sills.
func TestNoStepMovesTwoBents(t *testing.T) {
	f := trial.Frame(t, "test.yaml", fmt.Sprintf(barn, "10', 10', 10'", "yes", "eave walls"))
	for i, s := range f.Steps {
		seen := map[int]bool{}
		for _, id := range s.Move {
			if tm := f.Timber(id); tm.Role == "post" {
				seen[tm.Bent] = true
			}
		}
		if len(seen) > 1 {
			t.Errorf("step %d moves %d bents: %s", i+1, len(seen), s.Text)
		}
	}
}

func TestLongFootTenonsKeepABentFromBeingReared(t *testing.T) {
	src := fmt.Sprintf(barn, "10'", "yes", "eave walls") + "adjust:\n  - {joints: posts into sills, tenon length: 4}\n"
	f := trial.Frame(t, "test.yaml", src)
	list := against(f)
	if len(list) != 1 || list[0].Rule != "assembly" {
		t.Fatalf("want one stop of assembly, got %v", list)
	}
	x := list[0]
	if !strings.Contains(x.Text, "bent 2") || !strings.Contains(x.Text, `4"`) || !slices.Contains(x.Timbers, "post-2-south") || !strings.Contains(x.Mend, `3"`) {
		t.Errorf("the stop does not name the bent, its feet and the stub: %+v", x)
	}
}

// Where no timber says which bent it belongs to, bents are found by their
// posts: two in one plane across, joined through timbers of that plane.
func TestBentsAreFoundInAFrameSaidTimberByTimber(t *testing.T) {
	f := trial.Frame(t, "test.yaml", `frame: Two bents
units: in
timbers:
  p1: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 8'], faces: [south, west]}
  p2: {role: post, section: 6 x 6, from: [0, 10', 0], to: [0, 10', 8'], faces: [north, west]}
  t1: {role: beam, section: 6 x 6, from: [0, 6, 80], to: [0, 114, 80], faces: [top, west]}
  p3: {role: post, section: 6 x 6, from: [10', 0, 0], to: [10', 0, 8'], faces: [south, west]}
  p4: {role: post, section: 6 x 6, from: [10', 10', 0], to: [10', 10', 8'], faces: [north, west]}
  t2: {role: beam, section: 6 x 6, from: [10', 6, 80], to: [10', 114, 80], faces: [top, west]}
  g1: {role: rail, section: 4 x 5, from: [6, 0, 40], to: [10', 0, 40], faces: [top, south]}
joints:
  - {kind: mortise and tenon, of: t1, end: start, into: p1}
  - {kind: mortise and tenon, of: t1, end: end, into: p2}
  - {kind: mortise and tenon, of: t2, end: start, into: p3}
  - {kind: mortise and tenon, of: t2, end: end, into: p4}
  - {kind: mortise and tenon, of: g1, end: start, into: p1}
  - {kind: mortise and tenon, of: g1, end: end, into: p3}
`)
	bookkeeping(t, f)
	replay(t, f, 6)
	var got []string
	for _, s := range f.Steps {
		if s.Group == "" {
			got = append(got, s.Name+" "+string(s.Motion))
		}
	}
	if want := []string{"bent 1 rear", "g1 straight", "bent 2 rear"}; !slices.Equal(got, want) {
		t.Errorf("the frame goes up as %q, want %q", got, want)
	}
}

// The drop of a reared foot in closed form: a foot w wide with a stub s long
// turns about its near arris from the lean whose tangent is s/w, so that its far
// arris comes down w sin(atan(s/w)). For a 3-4-5 triangle, w = 8 and s = 6: 4.8.
func TestDropOfARearedFoot(t *testing.T) {
	src := strings.Replace(fmt.Sprintf(barn, "10'", "yes", "eave walls"), "building:", "sections: {post: 8 x 4}\nbuilding:", 1) +
		"adjust:\n  - {joints: posts into sills, tenon length: 3, hold back start: 0, hold back end: 0}\n"
	f := trial.Frame(t, "test.yaml", src)
	for _, s := range f.Steps {
		if s.Group != "" || !strings.HasPrefix(s.Name, "bent") {
			continue
		}
		if want := 2.4 * 25.4; math.Abs(s.Drop-want) > 1e-6 { // 4 wide along the lean, stub 3
			t.Errorf("%s comes down %.4f mm, want %.4f", s.Name, s.Drop, want)
		}
	}
}

// Braces down to a cross sill go up with their bent: their tenons enter it as
// the stubs of the posts do, and the bent can still take the girts sideways. A
// foot tenon of such a brace is held to the same length as a stub.
func TestSillBracesGoUpWithTheirBent(t *testing.T) {
	src := strings.Replace(fmt.Sprintf(barn, "10'", "yes", "eave walls, gable walls"), "  braces: {legs: 30\" x 30\", in: [bents, walls]}\n",
		"  braces:\n    - {legs: 24 x 24, in: [bents]}\n    - {legs: 24 x 24, in: [gables], go: down}\n", 1)
	f := trial.Frame(t, "test.yaml", src)
	for _, x := range against(f) {
		t.Errorf("stopped: %s", x.Text)
	}
	bookkeeping(t, f)
	reared := 0
	for _, s := range f.Steps {
		if s.Motion == geom.Rear && slices.ContainsFunc(s.Move, func(id string) bool { return strings.HasSuffix(id, "-foot") }) {
			reared++
			if !strings.Contains(s.Text, "sill-west") && !strings.Contains(s.Text, "sill-east") {
				t.Errorf("the cross sill is not named: %s", s.Text)
			}
		}
	}
	if reared != 2 {
		t.Errorf("%d bents were reared with the feet of their sill braces, want 2", reared)
	}
	long := trial.Frame(t, "test.yaml", src+"adjust:\n  - {joints: braces into cross sills, tenon length: 4}\n")
	if len(against(long)) == 0 {
		t.Error("braces with 4 in tenons in the sill are reared")
	}
}

// A floor between the sills is laid before anything is raised.
func TestFloorIsLaidFirst(t *testing.T) {
	f := trial.Frame(t, "test.yaml", strings.Replace(fmt.Sprintf(barn, "10'", "yes", "eave walls"), "  sills: yes\n", "  sills: yes\n  floor: {joists: 4 x 5}\n", 1))
	bookkeeping(t, f)
	raised := false
	joists := 0
	for i, s := range f.Steps {
		if f.Timber(s.Move[0]).Role == "joist" {
			joists++
			if raised {
				t.Errorf("step %d: %s", i+1, s.Text)
			}
		}
		raised = raised || s.Motion == geom.Rear
	}
	if joists < 2 {
		t.Errorf("%d joists are laid", joists)
	}
}

// Joists between ties go in while the sky is open above them: after the plates,
// before the first rafter, as a framer would (common practice, no source). The
// proof holds, and the rafters still go up in pairs joined on the ground.
func TestLoftIsLaidBeforeTheRoof(t *testing.T) {
	f := trial.Sample(t, "reading-hut")
	bookkeeping(t, f)
	if list := against(f); len(list) > 0 {
		t.Errorf("stands against it: %v", list)
	}
	roof, pairs, joists := false, 0, 0
	for i, s := range f.Steps {
		id := s.Move[0]
		if roof = roof || strings.HasPrefix(id, "rafter"); roof && strings.HasPrefix(id, "loft-joist") {
			t.Errorf("step %d: %s", i+1, s.Text)
		}
		if strings.HasPrefix(id, "loft-joist") {
			joists++
		}
		if s.Group == "" && strings.HasPrefix(id, "rafter") && len(s.Move) > 1 {
			pairs++
		}
	}
	if joists < 2 || pairs != 4 {
		t.Errorf("%d joists, %d pairs of rafters", joists, pairs)
	}
}
