package scheme

import (
	"pegwright/geom/measure"
)

// reduceOf is what the ideal timber of a role is thinner than its stick.
func (s *Scheme) reduceOf(role string) float64 {
	if r := s.Description.Wood.ReduceFor(role); r.Set && (role != "brace" || s.ownReduce("brace")) {
		return r.MM
	}
	if role == "brace" || s.Description.Wood.Planed.Or(false) {
		return 0 // braces are sized stock
	}
	return s.Std.Reduce
}

// IdealSize is the ideal section of a role's stick, in the order in which
// sections are written.
func (s *Scheme) IdealSize(role string) (a, b float64) {
	a, b = s.Size(role)
	r := s.reduceOf(role)
	return a - r, b - r
}

// ownReduce reports whether the description gives a role a reduce of its own.
func (s *Scheme) ownReduce(role string) bool {
	for _, r := range s.Description.Wood.ReduceBy {
		if r.Role.S == role {
			return true
		}
	}
	return false
}

// Size returns the section of a role: as written, or the usual one.
func (s *Scheme) Size(role string) (a, b float64) {
	if sec, ok := s.Description.Section(role); ok {
		return sec.A, sec.B
	}
	switch role {
	case "cross sill":
		return s.Size("sill")
	case "header", "rail":
		return s.Size("girt")
	case "window post":
		return s.Size("door post")
	}
	return s.Std.size(role, s.Frame.Units == measure.Metric, s.Description.Building.Roof.Truss.Or("none") != "none")
}
