package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/measure"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

var (
	east, north, up   = vec.V{X: 1}, vec.V{Y: 1}, vec.V{Z: 1}
	west, south, down = vec.V{X: -1}, vec.V{Y: -1}, vec.V{Z: -1}
)

// line says where a stick lies: its reference arris through at, running along
// dir, and the outward directions of its two reference faces with the sizes
// measured off them.
type line struct {
	at, dir    vec.V
	out1, out2 vec.V
	size1      float64
	size2      float64
	name1      string
	name2      string
	name3      string // opposite out1
	name4      string // opposite out2
}

// place returns the timber axes of a line, its section and its face names in
// face order. Mirrored sticks swap faces 1 and 2 so that the axes stay
// right-handed.
func (l line) place() (vec.Placement, [2]float64, [4]string) {
	i1, i2 := l.out1.Neg(), l.out2.Neg()
	if i1.Cross(i2).Dot(l.dir) > 0 {
		return vec.Placement{X: l.dir, Y: i1, Z: i2, O: l.at}, [2]float64{l.size1, l.size2}, [4]string{l.name1, l.name2, l.name3, l.name4}
	}
	return vec.Placement{X: l.dir, Y: i2, Z: i1, O: l.at}, [2]float64{l.size2, l.size1}, [4]string{l.name2, l.name1, l.name4, l.name3}
}

// add plans a stick on a line between two coordinates along it.
func (s *solver) add(id, role string, at finding.Pos, l line, lo, hi float64, set spec.TimberSettings) *stick {
	if old, ok := s.sticks[id]; ok {
		s.fault(at, id, fmt.Sprintf("there is already a timber called %s", old.t.ID), "give this one another name")
		return old
	}
	pl, sec, names := l.place()
	t := &geom.Timber{ID: id, Role: role, At: at, Place: pl, Section: sec, FaceNames: names, Wood: s.timber, Species: s.timber.Name}
	st := &stick{t: t, lo: lo, hi: hi, overall: set, first: pl.Y == l.out1.Neg()}
	s.sticks[id] = st
	s.order = append(s.order, st)
	s.trim(st, set)
	return st
}

// trim settles a stick's ideal section and wood from its settings.
func (s *solver) trim(st *stick, set spec.TimberSettings) {
	t := st.t
	if set.Species.Set {
		t.Wood = s.species(set.Species, "", wood.FramingNames)
		t.Species = t.Wood.Name
	}
	t.Trim = set.Trim.Or(0)
	t.Moisture = s.f.Stock.Green
	if set.Seasoning.Set || set.Species.Set {
		sea := s.d.Wood.Seasoning
		if set.Seasoning.Set {
			sea = set.Seasoning
		}
		t.Moisture, _ = moisture(t.Wood, sea, "green")
	}
	reduce := s.reduceOf(t.Role)
	if set.Planed.Set && set.Planed.On {
		reduce = 0
	}
	reduce = set.Reduce.Or(reduce)
	t.Ideal = [2]float64{t.Section[0] - reduce, t.Section[1] - reduce}
	if t.Ideal[0] < 20 || t.Ideal[1] < 20 {
		s.fault(t.At, t.ID, fmt.Sprintf("the ideal timber inside %s would be %s x %s", t.ID, s.f.Units.Format(t.Ideal[0]), s.f.Units.Format(t.Ideal[1])),
			"give a larger section or a smaller reduce")
	}
}

// reduceOf is what the ideal timber of a role is thinner than its stick.
func (s *solver) reduceOf(role string) float64 {
	if r := s.d.Wood.ReduceFor(role); r.Set && (role != "brace" || s.ownReduce("brace")) {
		return r.MM
	}
	if role == "brace" || s.d.Wood.Planed.Or(false) {
		return 0 // braces are sized stock
	}
	return s.std.reduce
}

// idealSize is the ideal section of a role's stick, in the order in which
// sections are written.
func (s *solver) idealSize(role string) (a, b float64) {
	a, b = s.size(role)
	r := s.reduceOf(role)
	return a - r, b - r
}

func (s *solver) ownReduce(role string) bool {
	for _, r := range s.d.Wood.ReduceBy {
		if r.Role.S == role {
			return true
		}
	}
	return false
}

// size returns the section of a role: as written, or the usual one.
func (s *solver) size(role string) (a, b float64) {
	if sec, ok := s.d.Section(role); ok {
		return sec.A, sec.B
	}
	switch role {
	case "cross sill":
		return s.size("sill")
	case "header", "rail":
		return s.size("girt")
	case "window post":
		return s.size("door post")
	}
	return s.std.size(role, s.f.Units == measure.Metric, s.d.Building.Roof.Truss.Or("none") != "none")
}

// asSection turns a measured A x B, written as sections are, into sizes along
// the timber's y and z.
func (s *solver) asSection(st *stick, m spec.Section) [2]float64 {
	// A section is written as the generator lays it: width off the side face
	// and depth off the top face, posts first off the outside face.
	if st.firstAlongY() {
		return [2]float64{m.A, m.B}
	}
	return [2]float64{m.B, m.A}
}

// firstAlongY reports whether the first figure of the stick's section runs
// along its y axis. For level and sloping sticks the first figure is the
// level width; for plumb ones it is off the first reference face.
func (st *stick) firstAlongY() bool {
	t := st.t
	if math.Abs(t.Place.X.Z) > 0.999 {
		return st.first
	}
	return math.Abs(t.Place.Y.Z) < math.Abs(t.Place.Z.Z)
}

// underIdeal reports a stick that measures less than its ideal timber.
func (s *solver) underIdeal(st *stick, a, b [2]float64) {
	t := st.t
	for i, m := range [2][2]float64{a, b} {
		for k := range 2 {
			if m[k] >= t.Ideal[k]-1e-6 {
				continue
			}
			at := t.At
			if st.measured[i] != nil {
				at = st.measured[i].At
			}
			s.f.Notes = append(s.f.Notes, finding.Finding{Severity: finding.Stop, Rule: "stick", Timbers: []string{t.ID}, At: at,
				Text: fmt.Sprintf("%s measures %s, which is under its ideal %s: no square-rule joint can be cut to it",
					t.ID, s.f.Units.FormatJoint(m[k]), s.f.Units.FormatJoint(t.Ideal[k])),
				Mend: "use another stick, or set a larger reduce for this timber"})
			return
		}
	}
}
