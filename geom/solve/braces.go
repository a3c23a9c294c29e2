package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// knee is one brace that is asked for: out from a post along h to a level
// stick above it or, going down, below it.
type knee struct {
	id         string
	post, head *stick
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
			set.Legs = p.s.d.Layout.For("brace").Legs
		}
		if !set.Legs.Set {
			set.Legs = spec.Section{A: p.s.std.legs, B: p.s.std.legs, At: set.At}
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
	n := len(s.faults)
	if set.Go.S == "down" && len(p.sills) == 0 {
		s.fault(set.Go.At, set.Go.S, "there are no sills for these braces to stand on", "write sills: yes, or go: up")
	}
	for _, x := range set.Bents {
		if int(x.V) > len(p.bents) {
			s.fault(x.At, x.Src, fmt.Sprintf("the building has only %d bents", len(p.bents)), "write the number of one of its bents")
		}
	}
	for _, x := range set.Bays {
		if int(x.V) >= len(p.bents) {
			s.fault(x.At, x.Src, fmt.Sprintf("the last bay of the building is bay %d", len(p.bents)-1), "write the number of one of its bays")
		}
	}
	return n == len(s.faults)
}

// legSense faults legs that are longer than what they run along: most often
// feet that were meant as inches.
func (p *plan) legSense(legs spec.Section) bool {
	s := p.s
	post, level := 0.0, p.b.Span.MM
	for _, bt := range p.bents {
		for _, st := range bt.post {
			post = max(post, st.hi-st.lo)
		}
	}
	for _, bay := range p.b.Bays {
		level = max(level, bay.MM)
	}
	show := s.f.Units.Format
	switch {
	case legs.A >= post:
		s.fault(legs.At, legs.Src, "a leg of "+show(legs.A)+" is longer than the posts, "+show(post), "check the unit; the first leg runs along the post, and 24\" to 36\" is usual")
	case legs.B >= level:
		s.fault(legs.At, legs.Src, "a leg of "+show(legs.B)+" is longer than the timber it runs along, "+show(level), "check the unit; the second leg runs along the level timber, and 24\" to 36\" is usual")
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

func picked(list []spec.Number, n int) bool {
	for _, x := range list {
		if int(x.V) == n {
			return true
		}
	}
	return len(list) == 0
}

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
	if s.sticks[k.id] != nil {
		k.why = "the brace of another set"
		return
	}
	try := func(a, b float64) string {
		legs := spec.Section{A: a, B: b, At: k.legs.At}
		return s.attempt(s.std.web, func() {
			if st := s.braceBetween(k.id, k.post, k.head, k.h, legs, nil, spec.TimberSettings{}); st != nil {
				st.t.Bent, st.t.Bay, st.t.Wall = k.head.t.Bent, k.bay, k.head.t.Wall
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
			moved = append(moved, fmt.Sprintf("%s %s x %s", k.id, s.f.Units.Format(k.legs.A), s.f.Units.Format(k.legs.B)))
			first = append(first, k.id)
		default:
			gone, why = append(gone, k.id), append(why, k.why)
		}
	}
	if len(moved) > 0 {
		s.note(set.Legs.At, "legs of "+s.f.Units.Format(set.Legs.A)+" x "+s.f.Units.Format(set.Legs.B)+" would run into other sticks or their joints; these braces have others: "+join(moved),
			"give other legs, or move what stands there", first...)
	}
	if len(gone) > 0 {
		s.note(set.Legs.At, "no room for "+join(gone)+": in the way of "+gone[0]+" is "+why[0], "give shorter legs, or move what stands there")
	}
}

// corner is where a brace stands: the ideal faces of its two receivers meet at
// a point of their reference side, and the legs run from there.
type corner struct {
	at   vec.V // where the ideal faces meet, on the reference side
	h    vec.V // along the level receiver, away from the plumb one
	vert vec.V // from the brace toward the level receiver: up or down
	side vec.V // outward from the reference side of the brace's plane
}

// cornerOf finds the corner between a plumb and a level stick.
func (s *solver) cornerOf(post, head *stick, h vec.V) corner {
	pt, ht := post.t, head.t
	c := corner{h: h, vert: up}
	if s.headBelow(post, head) {
		c.vert = down
	}
	across := vec.V{X: -1}
	if h.X != 0 {
		across = vec.V{Y: -1}
	}
	side := pt.IdealPlane(1).Moved(pt.Place)
	if math.Abs(side.N.Dot(across)) < 0.5 {
		side = pt.IdealPlane(2).Moved(pt.Place)
	}
	c.side = side.N
	c.at = solid.Meet(pt.IdealPlane(pt.FaceToward(h)).Moved(pt.Place), ht.IdealPlane(ht.FaceToward(c.vert.Neg())).Moved(ht.Place), side)
	return c
}

// braceBetween plans a brace between a plumb and a level stick: legs.A along
// the post from the level stick's ideal face, legs.B along that from the
// post's. The brace is centred on its tenon unless off says where its
// reference side lies.
func (s *solver) braceBetween(id string, post, head *stick, h vec.V, legs spec.Section, off *float64, own spec.TimberSettings) *stick {
	c := s.cornerOf(post, head, h)
	lo, hi := c.at.Sub(c.vert.Mul(legs.A)), c.at.Add(h.Mul(legs.B))
	first, second := post, head
	if c.vert.Z < 0 {
		lo, hi, first, second = hi, lo, head, post
	}
	w, d := s.size("brace")
	if own.Section.Set {
		w, d = own.Section.A, own.Section.B
	}
	set := s.settingsOf(&pact{kind: "brace mortise and tenon", r: post, e: &stick{t: &geom.Timber{Role: "brace", Section: [2]float64{w, d}}}})
	lay := set.FromRef + set.Thickness/2 - w/2
	if off != nil {
		lay = *off
	}
	dir := hi.Sub(lo).Unit()
	in := c.at.Sub(lo)
	inward := in.Sub(dir.Mul(in.Dot(dir))).Unit()
	name := "bent side"
	if h.X != 0 {
		name = "outside"
	}
	l := line{at: lo.Sub(c.side.Mul(lay)), dir: dir, out1: c.side, out2: inward.Neg(), size1: w, size2: d,
		name1: name, name2: "outer edge", name3: "far side", name4: "inner edge"}
	st := s.add(id, "brace", legs.At, l, 0, hi.Dist(lo), own)
	s.joinEnd("brace mortise and tenon", first, st, geom.Start, s.braceTenon(first, dir, set.Housing), legs.At)
	s.joinEnd("brace mortise and tenon", second, st, geom.Finish, s.braceTenon(second, dir, set.Housing), legs.At)
	return st
}

// braceTenon is shorter in an interior post, where another brace's tenon may
// come from the other side. The hole moves toward the shoulder with it, not
// past 1.5 diameters, so that two remain along the grain to the tenon's end. On
// a sill tenon and housing together are no deeper than the tenon is elsewhere:
// the foot may have to turn up with its bent.
func (s *solver) braceTenon(r *stick, dir vec.V, housing float64) spec.JointSettings {
	n := r.t.FaceToward(dir)
	between := r.t.Ideal[0]
	if n == 2 || n == 4 {
		between = r.t.Ideal[1]
	}
	own := spec.JointSettings{TenonLength: set(min(s.std.braceTenon, between-s.std.deeper-2*s.std.web))}
	sill := (r.t.Role == "sill" || r.t.Role == "cross sill") && (housing > 0 || own.TenonLength.MM > 3*inch)
	opposed := r.t.Role == "post" && r.t.Bent > 1 && r.t.Bent <= len(s.d.Building.Bays) && dir.X != 0
	if sill {
		if own.TenonLength.MM > 3*inch { // the longest that turns up
			own.TenonLength = set(75)
		}
		own.TenonLength = set(own.TenonLength.MM - housing)
	}
	if opposed {
		own.TenonLength = set(min(own.TenonLength.MM, (between-s.std.web)/2-s.std.deeper))
	}
	if sill || opposed {
		bore := s.std.smallBore
		sin := math.Abs(r.t.IdealPlane(n).Moved(r.t.Place).N.Dot(dir))
		if off := max(1.5*bore, own.TenonLength.MM-2*bore*sin); off < s.std.offShoulder {
			own.OffShoulder = set(off)
		}
	}
	return own
}

// headBelow reports whether the brace goes down from the level stick.
func (s *solver) headBelow(post, head *stick) bool {
	low := post.t.Place.O.Z
	return head.t.Role == "sill" || head.t.Role == "cross sill" || head.t.Place.O.Z < low+300 && post.hi > 1200
}
