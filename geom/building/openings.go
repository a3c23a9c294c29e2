package building

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/scheme"
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
	first, end *scheme.Stick
}

// layOpenings lays the doors and windows. Each must be clear of those before it.
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
		p.s.Fault(o.Bay.At, o.Bay.Src, fmt.Sprintf("the %s wall has no bay %d", w.name, n), fmt.Sprintf("choose a bay from 1 to %d", len(main)-1))
		return a, b, n, false
	}
	return main[n-1], main[n], n, true
}

// layOpening lays the posts of one opening, its header and, for a window, its rail. It
// returns nil where the opening has no room.
func (p *plan) layOpening(i int, o spec.Opening, done []*opening) *opening {
	s := p.s
	w := p.wallNamed(o.Wall.Or("south"))
	a, b, n, ok := p.bayOf(w, o)
	if !ok {
		return nil
	}
	pa, pb := s.Size("door post")
	if o.Sill.Set {
		pa, pb = s.Size("window post")
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
	_, hd := s.Size("header")
	if under := p.headUnder(w); o.Height.MM+hd <= under-p.std.stagger {
		p.between("header-"+op.slug, "header", op, o.Height.MM, false, n)
	} else {
		head := p.headOf(w)
		s.Note(o.At, fmt.Sprintf("the %s over the %s serves as its head, at %s: there is no room for a header below it",
			head.Timber.Role, o.Name.Or(kindOf(o)), s.Frame.Units.Format(under)), "lower the opening to get a header", head.Timber.ID)
	}
	if o.Sill.Set {
		p.between("rail-"+op.slug, "rail", op, o.Sill.MM, true, n)
	}
	return op
}

// openingFits faults an opening that its bay or its wall cannot hold.
func (p *plan) openingFits(o *opening, a, b vertical, n int) bool {
	s := p.s
	show := s.Frame.Units.Format
	under := p.headUnder(o.w)
	_, rail := s.Size("rail")
	corner, far := p.cornerClear(o.w)
	switch {
	case o.lo-o.post < a.hi-1e-6 || o.hi+o.post > b.lo+1e-6:
		s.Fault(o.Width.At, o.Width.Src, fmt.Sprintf("the opening and its posts need %s and bay %d of the %s wall is %s clear",
			show(o.Width.MM+2*o.post), n, o.w.name, show(b.lo-a.hi)), "make the opening narrower, move it, or widen the bay")
	case o.lo-o.post < corner-1e-6 || o.hi+o.post > far+1e-6:
		s.Fault(o.At, o.Name.S, fmt.Sprintf("a post of this opening would stand on the corner joint of the sills, which is clear from %s to %s along the %s wall", show(corner), show(far), o.w.name),
			"move the opening away from the corner, or use narrower sills")
	case o.Height.MM > under:
		s.Fault(o.Height.At, o.Height.Src, fmt.Sprintf("the opening is %s high and the %s above it starts at %s",
			show(o.Height.MM), p.headOf(o.w).Timber.Role, show(under)), "lower the opening or raise the eave")
	case o.Sill.Set && o.Sill.MM >= o.Height.MM-p.std.stagger:
		s.Fault(o.Sill.At, o.Sill.Src, fmt.Sprintf("the window's sill is at %s and its head at %s", show(o.Sill.MM), show(o.Height.MM)), "lower the sill or raise the height; both are measured from the datum")
	case o.Sill.Set && o.Sill.MM < rail:
		s.Fault(o.Sill.At, o.Sill.Src, fmt.Sprintf("the rail under the window is %s deep and would lie below the foot of the wall", show(rail)), "raise the sill, or leave it out to make a door")
	default:
		return true
	}
	return false
}

// cornerClear is the part of a wall whose sill lies beyond the corner joints.
func (p *plan) cornerClear(w wall) (lo, hi float64) {
	lo, hi = math.Inf(-1), math.Inf(1)
	if w.gable() && len(p.sills) > 0 {
		lo, hi = p.sills["south"].High(north), p.sills["north"].Low(north)
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
		p.s.Fault(o.At, o.Name.S, fmt.Sprintf("%s and %s overlap in the %s wall by %s, their posts included", o.Name.S, q.Name.S, o.w.name, p.s.Frame.Units.Format(over)),
			"give from: to move one of them along its bay, or make one narrower")
		return false
	}
	return true
}

// doorPost stands a door post whose reference faces are outside and toward
// the opening; toward is the direction of the opening.
func (p *plan) doorPost(o *opening, tag string, lo float64, toward vec.V, a, b float64, bay int) *scheme.Stick {
	s, w := p.s, o.w
	ref := lo + b
	if toward.Dot(w.dir) < 0 {
		ref = lo
	}
	role := "door post"
	if o.Sill.Set {
		role = "window post"
	}
	l := scheme.Line{At: w.origin.Add(w.dir.Mul(ref)), Dir: up, Out1: w.out, Out2: toward, Size1: a, Size2: b,
		Name1: "outside", Name2: "opening side", Name3: "inside", Name4: "away from opening"}
	under := p.headUnder(w)
	var st *scheme.Stick
	lay := func(own spec.JointSettings) func() {
		return func() {
			st = s.Add(o.slug+"-post-"+tag, role, o.At, l, 0, under, spec.TimberSettings{})
			st.Timber.Wall, st.Timber.Bay = w.name, bay
			p.foot(st, p.sillOf(w), nil)
			s.Join("mortise and tenon", p.headOf(w), st, geom.Finish, own, o.At).Flush = !w.gable()
		}
	}
	own := spec.JointSettings{TenonLength: spec.LengthOf(p.std.shallow), Along: spec.Centred(), Bore: spec.LengthOf(s.Std.SmallBore), OffShoulder: spec.LengthOf(s.Std.OffShoulder), Thickness: spec.LengthOf(s.Std.Thin)}
	stub := own
	stub.TenonLength, stub.Pegs = spec.LengthOf(s.Std.Stub), spec.NumberOf(0)
	short := stub
	short.TenonLength = spec.LengthOf(s.Std.Stub - s.Std.Web)
	if s.Attempt(0, lay(own)) != "" && s.Attempt(0, lay(stub)) != "" && s.Attempt(0, lay(short)) != "" {
		lay(own)() // the proofs say what is in the way
	} else if p := s.Pacts[len(s.Pacts)-1]; p.Own.Pegs.Set {
		s.Note(o.At, fmt.Sprintf("the head of %s has a stub tenon without a peg, clear of the joint above it", st.Timber.ID), "move the opening to get a pegged tenon", st.Timber.ID)
	}
	p.pos[w.name] = append(p.pos[w.name], vertical{st, lo, lo + b})
	return st
}

// between lays a header or a rail between the posts of an opening. Its
// reference faces are outside and the one that bounds the opening.
func (p *plan) between(id, role string, o *opening, z float64, top bool, bay int) {
	s, w := p.s, o.w
	wd, d := s.Size(role)
	ref, word, other := down, "underside", "top"
	if top {
		ref, word, other = up, "top", "underside"
	}
	l := scheme.Line{At: w.origin.Add(vec.V{Z: z}), Dir: w.dir, Out1: ref, Out2: w.out, Size1: d, Size2: wd,
		Name1: word, Name2: "outside", Name3: other, Name4: "inside"}
	st := s.Add(id, role, o.At, l, o.lo, o.hi, spec.TimberSettings{})
	st.Timber.Wall, st.Timber.Bay = w.name, bay
	own := p.girtTenon(o.first)
	s.Join("mortise and tenon", o.first, st, geom.Start, own, o.At)
	s.Join("mortise and tenon", o.end, st, geom.Finish, p.girtTenon(o.end), o.At)
}
