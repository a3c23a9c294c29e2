package named

import (
	"fmt"
	"math"

	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// toward returns the direction that a word of the description names.
func toward(word string) vec.V {
	return map[string]vec.V{"top": {Z: 1}, "bottom": {Z: -1}, "north": {Y: 1}, "south": {Y: -1}, "east": {X: 1}, "west": {X: -1}}[word]
}

// point is a written point in frame axes, mm.
func point(p spec.Point) vec.V { return vec.V{X: p.X.MM, Y: p.Y.MM, Z: p.Z.MM} }

// timber lays a stick from one point to another.
func (s *lister) timber(t spec.Timber) {
	from, to := point(t.From), point(t.To)
	if !t.From.Set || !t.To.Set {
		s.Fault(t.At, t.ID.S, fmt.Sprintf("%s has no line", t.ID.S), "give from: [x, y, z] and to: [x, y, z], the ends of its reference arris")
		return
	}
	if from.Dist(to) < 25 {
		s.Fault(t.To.At, t.ID.S, "from and to are the same place", "give two points at least an inch apart")
		return
	}
	dir := to.Sub(from).Unit()
	o1, n1, o2, n2, ok := s.references(t, dir)
	if !ok {
		return
	}
	role := t.Role.Or("post")
	a, b := t.Section.A, t.Section.B
	if !t.Section.Set {
		a, b = s.Size(role)
	}
	size1, size2 := a, b
	// Level and sloping sticks are written width x depth: depth off the face
	// that looks up or down, whichever order the faces are named in.
	if math.Abs(dir.Z) < 0.999 && math.Abs(o1.Z) > math.Abs(o2.Z) {
		size1, size2 = b, a
	}
	l := scheme.Line{At: from, Dir: dir, Out1: o1, Out2: o2, Size1: size1, Size2: size2, Name1: n1, Name2: n2, Name3: contrary(n1), Name4: contrary(n2)}
	s.Add(t.ID.S, role, t.At, l, 0, from.Dist(to), t.TimberSettings)
}

// contrary is the word for the face opposite that of a word.
func contrary(w string) string {
	return map[string]string{"top": "underside", "bottom": "top", "north": "south", "south": "north", "east": "west", "west": "east"}[w]
}

// references returns the outward directions of a timber's two reference faces.
func (s *lister) references(t spec.Timber, dir vec.V) (o1 vec.V, n1 string, o2 vec.V, n2 string, ok bool) {
	names := []string{"south", "west"}
	switch {
	case len(t.Faces) == 2:
		names = []string{t.Faces[0].S, t.Faces[1].S}
	case math.Abs(dir.Z) > 0.999:
	case math.Abs(dir.X) > math.Abs(dir.Y):
		names = []string{"top", "south"}
	default:
		names = []string{"top", "west"}
	}
	at := t.At
	if len(t.Faces) == 2 {
		at = t.Faces[0].At
	}
	square := func(d vec.V) vec.V { return d.Sub(dir.Mul(d.Dot(dir))) }
	o1, o2 = square(toward(names[0])), square(toward(names[1]))
	if o1.Len() < 0.05 || o2.Len() < 0.05 || math.Abs(o1.Unit().Dot(o2.Unit())) > 1e-6 {
		s.Fault(at, names[0]+", "+names[1], fmt.Sprintf("%s cannot have these two reference faces", t.ID.S),
			"name two neighbouring faces along its length, such as [top, south]")
		return
	}
	return o1.Unit(), names[0], o2.Unit(), names[1], true
}
