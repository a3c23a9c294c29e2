package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// opening is an opening as placed: clear from lo to hi along its wall.
type opening struct {
	spec.Opening
	w          wall
	lo, hi     float64
	post       float64 // size of its posts along the wall
	slug       string
	first, end *stick
}

func (p *plan) layOpenings() {
	var done []*opening
	for i, o := range p.b.Openings {
		if op := p.layOpening(i, o, done); op != nil {
			done = append(done, op)
		}
	}
}

// kind is what the user calls an opening without a name.
func kindOf(o spec.Opening) string {
	if o.Sill.Set {
		return "window"
	}
	return "door"
}

// bayOf finds the two posts that an opening lies between, and faults a bay
// that its wall does not have.
func (p *plan) bayOf(w wall, o spec.Opening) (a, b vertical, n int, ok bool) {
	n = int(o.Bay.Or(1))
	main := p.mainPosts(w)
	if n < 1 || n >= len(main) {
		p.s.fault(o.Bay.At, o.Bay.Src, fmt.Sprintf("the %s wall has no bay %d", w.name, n), fmt.Sprintf("choose a bay from 1 to %d", len(main)-1))
		return a, b, n, false
	}
	return main[n-1], main[n], n, true
}

func (p *plan) layOpening(i int, o spec.Opening, done []*opening) *opening {
	s := p.s
	w := p.wallNamed(o.Wall.Or("south"))
	a, b, n, ok := p.bayOf(w, o)
	if !ok {
		return nil
	}
	pa, pb := s.size("door post")
	if o.Sill.Set {
		pa, pb = s.size("window post")
	}
	lo := (a.hi+b.lo)/2 - o.Width.MM/2
	if o.From.Set {
		lo = a.hi + o.From.MM
	}
	op := &opening{Opening: o, w: w, lo: lo, hi: lo + o.Width.MM, post: pb, slug: fmt.Sprintf("%s-%s-%d", kindOf(o), w.name, i+1)}
	if !p.openingFits(op, a, b, n) || !p.openingClear(op, done) {
		return nil
	}
	op.first = p.doorPost(op, "a", lo-pb, w.dir, pa, pb, n)
	op.end = p.doorPost(op, "b", op.hi, w.dir.Neg(), pa, pb, n)
	_, hd := s.size("header")
	if under := p.headUnder(w); o.Height.MM+hd <= under-s.std.stagger {
		p.between("header-"+op.slug, "header", op, o.Height.MM, false, n)
	} else {
		head := p.headOf(w)
		s.note(o.At, fmt.Sprintf("the %s over the %s serves as its head, at %s: there is no room for a header below it",
			head.t.Role, o.Name.Or(kindOf(o)), s.f.Units.Format(under)), "lower the opening to get a header", head.t.ID)
	}
	if o.Sill.Set {
		p.between("rail-"+op.slug, "rail", op, o.Sill.MM, true, n)
	}
	return op
}

// openingFits faults an opening that its bay or its wall cannot hold.
func (p *plan) openingFits(o *opening, a, b vertical, n int) bool {
	s := p.s
	show := s.f.Units.Format
	under := p.headUnder(o.w)
	_, rail := s.size("rail")
	corner, far := p.cornerClear(o.w)
	switch {
	case o.lo-o.post < a.hi-1e-6 || o.hi+o.post > b.lo+1e-6:
		s.fault(o.Width.At, o.Width.Src, fmt.Sprintf("the opening and its posts need %s and bay %d of the %s wall is %s clear",
			show(o.Width.MM+2*o.post), n, o.w.name, show(b.lo-a.hi)), "make the opening narrower, move it, or widen the bay")
	case o.lo-o.post < corner-1e-6 || o.hi+o.post > far+1e-6:
		s.fault(o.At, o.Name.S, fmt.Sprintf("a post of this opening would stand on the corner joint of the sills, which is clear from %s to %s along the %s wall", show(corner), show(far), o.w.name),
			"move the opening away from the corner, or use narrower sills")
	case o.Height.MM > under:
		s.fault(o.Height.At, o.Height.Src, fmt.Sprintf("the opening is %s high and the %s above it starts at %s",
			show(o.Height.MM), p.headOf(o.w).t.Role, show(under)), "lower the opening or raise the eave")
	case o.Sill.Set && o.Sill.MM >= o.Height.MM-s.std.stagger:
		s.fault(o.Sill.At, o.Sill.Src, fmt.Sprintf("the window's sill is at %s and its head at %s", show(o.Sill.MM), show(o.Height.MM)), "lower the sill or raise the height; both are measured from the datum")
	case o.Sill.Set && o.Sill.MM < rail:
		s.fault(o.Sill.At, o.Sill.Src, fmt.Sprintf("the rail under the window is %s deep and would lie below the foot of the wall", show(rail)), "raise the sill, or leave it out to make a door")
	default:
		return true
	}
	return false
}

// cornerClear is the part of a wall whose sill lies beyond the corner joints.
func (p *plan) cornerClear(w wall) (lo, hi float64) {
	lo, hi = math.Inf(-1), math.Inf(1)
	if w.gable() && len(p.sills) > 0 {
		lo, hi = p.sills["south"].high(north), p.sills["north"].low(north)
	}
	return lo, hi
}

// openingClear faults an opening whose posts would stand in another opening or
// in its posts.
func (p *plan) openingClear(o *opening, done []*opening) bool {
	for _, q := range done {
		if q.w.name != o.w.name || o.lo-o.post >= q.hi+q.post-1e-6 || o.hi+o.post <= q.lo-q.post+1e-6 {
			continue
		}
		over := min(o.hi+o.post, q.hi+q.post) - max(o.lo-o.post, q.lo-q.post)
		p.s.fault(o.At, o.Name.S, fmt.Sprintf("%s and %s overlap in the %s wall by %s, their posts included", o.Name.S, q.Name.S, o.w.name, p.s.f.Units.Format(over)),
			"give from: to move one of them along its bay, or make one narrower")
		return false
	}
	return true
}

// doorPost stands a door post whose reference faces are outside and toward
// the opening; toward is the direction of the opening.
func (p *plan) doorPost(o *opening, tag string, lo float64, toward vec.V, a, b float64, bay int) *stick {
	s, w := p.s, o.w
	ref := lo + b
	if toward.Dot(w.dir) < 0 {
		ref = lo
	}
	role := "door post"
	if o.Sill.Set {
		role = "window post"
	}
	l := line{at: w.origin.Add(w.dir.Mul(ref)), dir: up, out1: w.out, out2: toward, size1: a, size2: b,
		name1: "outside", name2: "opening side", name3: "inside", name4: "away from opening"}
	under := p.headUnder(w)
	var st *stick
	lay := func(own spec.JointSettings) func() {
		return func() {
			st = s.add(o.slug+"-post-"+tag, role, o.At, l, 0, under, spec.TimberSettings{})
			st.t.Wall, st.t.Bay = w.name, bay
			p.foot(st, p.sillOf(w), nil)
			s.joinEnd("mortise and tenon", p.headOf(w), st, geom.Finish, own, o.At).flush = !w.gable()
		}
	}
	own := spec.JointSettings{TenonLength: set(s.std.shallow), Along: centred(), Bore: set(s.std.smallBore), OffShoulder: set(s.std.offShoulder), Thickness: set(s.std.thin)}
	stub := own
	stub.TenonLength, stub.Pegs = set(s.std.stub), count(0)
	short := stub
	short.TenonLength = set(s.std.stub - s.std.web)
	if s.attempt(0, lay(own)) != "" && s.attempt(0, lay(stub)) != "" && s.attempt(0, lay(short)) != "" {
		lay(own)() // the proofs say what is in the way
	} else if p := s.pacts[len(s.pacts)-1]; p.own.Pegs.Set {
		s.note(o.At, fmt.Sprintf("the head of %s has a stub tenon without a peg, clear of the joint above it", st.t.ID), "move the opening to get a pegged tenon", st.t.ID)
	}
	p.pos[w.name] = append(p.pos[w.name], vertical{st, lo, lo + b})
	return st
}

// between lays a header or a rail between the posts of an opening. Its
// reference faces are outside and the one that bounds the opening.
func (p *plan) between(id, role string, o *opening, z float64, top bool, bay int) {
	s, w := p.s, o.w
	wd, d := s.size(role)
	ref, word, other := down, "underside", "top"
	if top {
		ref, word, other = up, "top", "underside"
	}
	l := line{at: w.origin.Add(vec.V{Z: z}), dir: w.dir, out1: ref, out2: w.out, size1: d, size2: wd,
		name1: word, name2: "outside", name3: other, name4: "inside"}
	st := s.add(id, role, o.At, l, o.lo, o.hi, spec.TimberSettings{})
	st.t.Wall, st.t.Bay = w.name, bay
	own := p.girtTenon(o.first)
	s.joinEnd("mortise and tenon", o.first, st, geom.Start, own, o.At)
	s.joinEnd("mortise and tenon", o.end, st, geom.Finish, p.girtTenon(o.end), o.At)
}
