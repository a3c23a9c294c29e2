package building

import (
	"fmt"
	"math"
	"strings"

	"pegwright/geom/scheme"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// knee is one brace that is asked for: out from a post along h to a level
// stick above it or, going down, below it.
type knee struct {
	id         string
	post, head *scheme.Stick
	h          vec.V
	legs       spec.Section
	bay        int
	shift      float64 // change of legs that was needed, 0 for none
	why        string  // what was in the way of the legs asked for
}

// layBraces sets corner braces under the ties (bents) and the plates (walls),
// and above the sills where they go down.
func (p *plan) layBraces() {
	b := p.b.Braces
	if !b.Set || b.No {
		return
	}
	for _, set := range b.Sets {
		if !p.braceSense(set) {
			continue
		}
		if !set.Legs.Set {
			set.Legs = p.s.Description.Layout.For("brace").Legs
		}
		if !set.Legs.Set {
			set.Legs = spec.Section{A: p.std.legs, B: p.std.legs, At: set.At}
		}
		if !p.legSense(set.Legs) {
			continue
		}
		var done []*knee
		for _, k := range append(p.bentKnees(set), p.wallKnees(set)...) {
			p.brace(k)
			done = append(done, k)
		}
		p.tellBraces(set, done)
	}
}

// braceSense faults a set of braces that names what is not there.
func (p *plan) braceSense(set spec.BraceSet) bool {
	s := p.s
	n := len(s.Faults)
	if set.Go.S == "down" && len(p.sills) == 0 {
		s.Fault(set.Go.At, set.Go.S, "there are no sills for these braces to stand on", "write sills: yes, or go: up")
	}
	for _, x := range set.Bents {
		if int(x.V) > len(p.bents) {
			s.Fault(x.At, x.Src, fmt.Sprintf("the building has only %d bents", len(p.bents)), "write the number of one of its bents")
		}
	}
	for _, x := range set.Bays {
		if int(x.V) >= len(p.bents) {
			s.Fault(x.At, x.Src, fmt.Sprintf("the last bay of the building is bay %d", len(p.bents)-1), "write the number of one of its bays")
		}
	}
	return n == len(s.Faults)
}

// legSense faults legs that are longer than what they run along: most often
// feet that were meant as inches.
func (p *plan) legSense(legs spec.Section) bool {
	s := p.s
	post, level := 0.0, p.b.Span.MM
	for _, bt := range p.bents {
		for _, st := range bt.post {
			post = max(post, st.Hi-st.Lo)
		}
	}
	for _, bay := range p.b.Bays {
		level = max(level, bay.MM)
	}
	show := s.Frame.Units.Format
	switch {
	case legs.A >= post:
		s.Fault(legs.At, legs.Src, "a leg of "+show(legs.A)+" is longer than the posts, "+show(post), "check the unit; the first leg runs along the post, and 24\" to 36\" is usual")
	case legs.B >= level:
		s.Fault(legs.At, legs.Src, "a leg of "+show(legs.B)+" is longer than the timber it runs along, "+show(level), "check the unit; the second leg runs along the level timber, and 24\" to 36\" is usual")
	default:
		return true
	}
	return false
}

// braceIn reports whether a set of braces stands; none named: bents and walls.
func (p *plan) braceIn(set spec.BraceSet, bt *bent) bool {
	gable := p.gable(bt) != ""
	return has(set.In, "bents") || gable && has(set.In, "gables") || !gable && has(set.In, "inner bents")
}

// picked reports whether a list of numbers, empty for all, holds n.
func picked(list []spec.Number, n int) bool {
	for _, x := range list {
		if int(x.V) == n {
			return true
		}
	}
	return len(list) == 0
}

// bentKnees are the braces that a set asks for in the cross frames.
func (p *plan) bentKnees(set spec.BraceSet) []*knee {
	var r []*knee
	for _, bt := range p.bents {
		if !p.braceIn(set, bt) || !picked(set.Bents, bt.n) {
			continue
		}
		head, tail := bt.tie, ""
		if set.Go.S == "down" {
			head, tail = p.cross[bt.n], "-foot"
		}
		for _, sd := range sides {
			if head != nil && has(set.Sides, sd.wall) {
				r = append(r, &knee{id: fmt.Sprintf("brace-%d-%s%s", bt.n, sd.wall, tail), post: bt.post[sd.wall], head: head, h: sd.out.Neg(), legs: set.Legs})
			}
		}
	}
	return r
}

// wallKnees are the braces that a set asks for along the eave walls, two in a bay.
func (p *plan) wallKnees(set spec.BraceSet) []*knee {
	var r []*knee
	if !has(set.In, "walls") {
		return nil
	}
	for _, sd := range sides {
		if !has(set.Sides, sd.wall) {
			continue
		}
		head, tail := p.plates[sd.wall], ""
		if set.Go.S == "down" {
			head, tail = p.sills[sd.wall], "-foot"
		}
		for i := 1; i < len(p.bents); i++ {
			if !picked(set.Bays, i) {
				continue
			}
			for j, h := range []vec.V{east, west} {
				bt := p.bents[i-1+j]
				if picked(set.Bents, bt.n) {
					r = append(r, &knee{id: fmt.Sprintf("brace-%s-%d%c%s", sd.wall, i, 'a'+j, tail), post: bt.post[sd.wall], head: head, h: h, legs: set.Legs, bay: i})
				}
			}
		}
	}
	return r
}

// brace lays one brace with the legs asked for or, where those do not clear
// what stands there, with the nearest that do: both legs shorter or longer by
// as much, then the post leg alone. What clears nowhere is left out.
func (p *plan) brace(k *knee) {
	s := p.s
	if s.Sticks[k.id] != nil {
		k.why = "the brace of another set"
		return
	}
	try := func(a, b float64) string {
		legs := spec.Section{A: a, B: b, At: k.legs.At}
		return s.Attempt(s.Std.Web, func() {
			if st := s.Brace(k.id, k.post, k.head, k.h, legs, nil, spec.TimberSettings{}); st != nil {
				st.Timber.Bent, st.Timber.Bay, st.Timber.Wall = k.head.Timber.Bent, k.bay, k.head.Timber.Wall
			}
		})
	}
	if k.why = try(k.legs.A, k.legs.B); k.why == "" {
		return
	}
	for i := 1; i <= 12; i++ {
		by := float64(i) * inch
		for _, c := range [][2]float64{{-by, -by}, {by, by}, {-by, 0}, {by, 0}} {
			a, b := k.legs.A+c[0], k.legs.B+c[1]
			if min(a, b) < leastLeg || c[1] == 0 && (a > 1.5*b || b > 1.5*a) {
				continue
			}
			if try(a, b) == "" {
				k.legs.A, k.legs.B, k.shift = a, b, by
				return
			}
		}
	}
	k.shift = math.Inf(1)
}

// leastLeg is the shortest leg that a brace is altered to.
const leastLeg = 14 * inch

// tellBraces says which braces of a set were altered or left out.
func (p *plan) tellBraces(set spec.BraceSet, all []*knee) {
	s := p.s
	var gone, why, moved, first []string
	for _, k := range all {
		switch {
		case k.why == "":
		case k.shift > 0 && !math.IsInf(k.shift, 1):
			moved = append(moved, fmt.Sprintf("%s %s x %s", k.id, s.Frame.Units.Format(k.legs.A), s.Frame.Units.Format(k.legs.B)))
			first = append(first, k.id)
		default:
			gone, why = append(gone, k.id), append(why, k.why)
		}
	}
	if len(moved) > 0 {
		s.Note(set.Legs.At, "legs of "+s.Frame.Units.Format(set.Legs.A)+" x "+s.Frame.Units.Format(set.Legs.B)+" would run into other sticks or their joints; these braces have others: "+strings.Join(moved, ", "),
			"give other legs, or move what stands there", first...)
	}
	if len(gone) > 0 {
		s.Note(set.Legs.At, "no room for "+strings.Join(gone, ", ")+": in the way of "+gone[0]+" is "+why[0], "give shorter legs, or move what stands there")
	}
}
