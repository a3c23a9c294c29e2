package check

import (
	"fmt"
	"strings"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// How deep a timber may be notched, as parts of the depth of its ideal section.
// All are common practice, no source, but Tension, which building codes ask of
// joists in like words.
const (
	Seated  = 1.0 / 3 // a rafter at its seat, square to its length
	Tension = 1.0 / 4 // a level timber from below, on its stretched side
	Housed  = 1.0 / 4 // a receiver, by one housing below its ideal face
	Severed = 1.0 / 2 // beyond this part a notch or housing is a stop
)

// notches proves that what a joint takes leaves each timber its depth: rafters
// at their seats, level timbers from below, receivers under a housing.
func (p *proof) notches(j *geom.Joint) {
	p.housed(j)
	if c := j.Of.Place.X.Dot(j.Into.Place.X); c*c > 1-1e-6 {
		return // a scarf: each is halved where the other makes it whole
	}
	for _, t := range []*geom.Timber{j.Of, j.Into} {
		if n, down, ok := lower(t); ok {
			p.notched(j, t, n, down)
		}
	}
}

// lower returns the face of a timber that looks down, and the way in from it
// in the timber's axes; false for a plumb one.
func lower(t *geom.Timber) (face int, out vec.V, ok bool) {
	if plumb(t) {
		return 0, vec.V{}, false
	}
	n := t.FaceToward(vec.V{Z: -1})
	return n, t.IdealPlane(n).N, true
}

// notched measures how deep a joint cuts into a timber from below.
func (p *proof) notched(j *geom.Joint, t *geom.Timber, face int, out vec.V) {
	ideal := geom.BlankOf(t.Length, t.Ideal, t.Ideal)
	depth := t.Across(face)
	most := 0.0
	for _, c := range t.Cuts {
		if c.Joint != j.ID || c.Name == "mortise" || c.Name == "slot" || p.skin(t, c) {
			continue
		}
		in := solid.Common(c.Solid, ideal)
		if in.Thickness() < 0.1 {
			continue
		}
		lo, hi := in.Extent(out)
		if bottom := t.IdealPlane(face).D; hi > bottom-flush && hi-lo < depth-flush {
			most = max(most, bottom-lo)
		}
	}
	part, what := Tension, "from below, on its stretched side where it carries a load"
	switch {
	case isRafter(t):
		part, what = Seated, "at its seat"
	case j.Of == t || strings.Contains(t.Role, "sill") || !level(t):
		return // an enterer rests on what it is notched over; its end is its kind's business
	}
	if most <= part*depth+0.1 {
		return
	}
	f := finding.Finding{Timbers: []string{t.ID}, Joints: []string{j.ID}, At: j.At,
		Text: fmt.Sprintf("%s is notched %s deep %s: more than a %s of its %s", t.ID, p.show(most), what, fraction(part), p.show(depth)),
		Mend: "notch it less, or use a deeper timber"}
	s := finding.Warn
	if isRafter(t) && most > Severed*depth+0.1 {
		s = finding.Stop
	}
	p.add(s, "notch", f)
}

// fraction is the word for a part of a depth.
func fraction(part float64) string {
	if part == Seated {
		return "third"
	}
	return "quarter"
}

// housed warns of a housing that takes too much of its receiver.
func (p *proof) housed(j *geom.Joint) {
	depth := j.Into.Across(j.Entered)
	if j.Housing <= Housed*depth+0.1 {
		return
	}
	s := finding.Warn
	if j.Housing > Severed*depth {
		s = finding.Stop
	}
	p.add(s, "housing", finding.Finding{Timbers: []string{j.Into.ID}, Joints: []string{j.ID}, At: j.At,
		Text: fmt.Sprintf("the housing for %s takes %s of the %s that %s is deep", j.Of.ID, p.show(j.Housing), p.show(depth), j.Into.ID),
		Mend: "make the housing shallower: 1/2 in to 1 in bears what a shoulder brings"})
}
