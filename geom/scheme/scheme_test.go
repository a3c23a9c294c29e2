package scheme_test

import (
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/measure"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// upright is the line of a post at x, 150 wide and 200 deep, with its
// reference faces to the south and to the west.
func upright(x float64) scheme.Line {
	return scheme.Line{At: vec.V{X: x}, Dir: vec.V{Z: 1}, Out1: vec.V{Y: -1}, Out2: vec.V{X: -1}, Size1: 150, Size2: 200}
}

// level is the line of a rail from the post at x = 0 along y, its top at 1.2 m.
func level() scheme.Line {
	return scheme.Line{At: vec.V{Y: 150, Z: 1200}, Dir: vec.V{Y: 1}, Out1: vec.V{Z: 1}, Out2: vec.V{X: -1}, Size1: 150, Size2: 150}
}

// lay lays a rough-sawn post or a planed rail.
func lay(s *scheme.Scheme, id, role string, l scheme.Line, lo, hi float64) *scheme.Stick {
	return s.Add(id, role, finding.Pos{}, l, lo, hi, spec.TimberSettings{Planed: spec.FlagOf(role != "post")})
}

// What does not clear leaves nothing behind; what clears stays. A rail is in
// the way of a post that it runs into, and not of one that it is joined to.
func TestAttemptTakesBack(t *testing.T) {
	s := scheme.New(&spec.Description{Units: measure.Metric})
	post := lay(s, "post", "post", upright(0), 0, 2400)
	rail := func(from float64, joined bool) func() {
		return func() {
			e := lay(s, "rail", "tie", level(), from, 1500)
			if joined {
				s.Join("mortise and tenon", post, e, geom.Start, spec.JointSettings{}, finding.Pos{})
			}
		}
	}
	if why := s.Attempt(0, rail(-50, false)); why != "post" {
		t.Errorf("a rail that runs 50 mm into the post: %q is in the way", why)
	}
	if len(s.Order) != 1 || s.Sticks["rail"] != nil {
		t.Errorf("%d sticks are left", len(s.Order))
	}
	if why := s.Attempt(0, rail(-50, true)); why != "" || len(s.Order) != 2 || len(s.Pacts) != 1 {
		t.Errorf("a rail that is joined to the post: %q is in the way, %d sticks, %d joints", why, len(s.Order), len(s.Pacts))
	}
	// A rail 150 high, 160 above the first, clears it by 10: its mortise is
	// nearer to the other than the 12 that a web has.
	again := func() {
		e := lay(s, "again", "tie", level(), 0, 1500)
		e.Timber.Place.O.Z += 160
		s.Join("mortise and tenon", post, e, geom.Start, spec.JointSettings{}, finding.Pos{})
	}
	if why := s.Attempt(0, again); why != "the joint of rail in post" || len(s.Pacts) != 1 {
		t.Errorf("a mortise too near another: %q, %d joints", why, len(s.Pacts))
	}
}

// The faces of a stick lie where its line says, whichever way round its axes
// are, and its ideal section is the usual 12 mm less off the faces opposite the
// references. Worked by hand.
func TestFacesOfAStick(t *testing.T) {
	s := scheme.New(&spec.Description{Units: measure.Metric})
	mirrored := upright(1000)
	mirrored.Out2 = vec.V{X: 1}
	for id, l := range map[string]scheme.Line{"plain": upright(1000), "mirrored": mirrored} {
		st := lay(s, id, "post", l, 0, 2400)
		near, far := 1000.0, 1200.0
		if id == "mirrored" {
			near, far = 800, 1000
		}
		trial.Near(t, id+" near", st.Low(vec.V{X: 1}), near, 1e-9)
		trial.Near(t, id+" far", st.High(vec.V{X: 1}), far, 1e-9)
		trial.Near(t, id+" north", st.High(vec.V{Y: 1}), 150, 1e-9)
		trial.Near(t, id+" across", st.Across(vec.V{X: 1}), 188, 1e-9)
		trial.Near(t, id+" along the other", st.Across(vec.V{Y: -1}), 138, 1e-9)
	}
}

// A joint's name leaves room within 60 characters for the number of a peg, and
// two long names that differ at their ends alone stay apart.
func TestJointNames(t *testing.T) {
	s := scheme.New(&spec.Description{Units: measure.Metric})
	long := strings.Repeat("very-", 10)
	a, b := lay(s, long+"long-a", "post", upright(0), 0, 2400), lay(s, long+"long-b", "post", upright(900), 0, 2400)
	r := lay(s, "rail", "tie", level(), 0, 900)
	one, two := scheme.JointID(a, r), scheme.JointID(b, r)
	if len(one) > 60-len("-peg-4") || one == two {
		t.Errorf("%s and %s", one, two)
	}
	if got := scheme.JointID(r, lay(s, "short", "post", upright(2000), 0, 2400)); got != "rail-into-short" {
		t.Error(got)
	}
}
