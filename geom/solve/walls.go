package solve

import (
	"fmt"
	"slices"
	"strings"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// wall is one of the four walls: its own axis runs along it from its first
// post, and out is its outside.
type wall struct {
	name   string
	dir    vec.V
	out    vec.V
	origin vec.V
	bt     *bent // of a gable wall
}

func (p *plan) walls() []wall {
	first, last := p.bents[0], p.bents[len(p.bents)-1]
	return []wall{
		{name: "south", dir: east, out: south},
		{name: "north", dir: east, out: north, origin: vec.V{Y: p.span}},
		{name: "west", dir: north, out: west, bt: first},
		{name: "east", dir: north, out: east, origin: vec.V{X: last.x}, bt: last},
	}
}

func (w wall) gable() bool { return w.bt != nil }

func (p *plan) wallNamed(name string) wall {
	for _, w := range p.walls() {
		if w.name == name {
			return w
		}
	}
	return p.walls()[0]
}

// sillOf and headOf are the level sticks at the foot and head of a wall.
func (p *plan) sillOf(w wall) *stick {
	if w.gable() {
		return p.cross[w.bt.n]
	}
	return p.sills[w.name]
}

func (p *plan) headOf(w wall) *stick {
	if w.gable() {
		return w.bt.tie
	}
	return p.plates[w.name]
}

// opening is an opening as placed: clear from lo to hi along its wall.
type opening struct {
	spec.Opening
	w          wall
	lo, hi     float64
	slug       string
	first, end *stick
}

func (p *plan) layOpenings() {
	for i, o := range p.b.Openings {
		p.layOpening(i, o)
	}
}

func (p *plan) layOpening(i int, o spec.Opening) {
	s := p.s
	w := p.wallNamed(o.Wall.Or("south"))
	n := int(o.Bay.Or(1))
	main := p.mainPosts(w)
	if n < 1 || n >= len(main) {
		s.fault(o.Bay.At, o.Bay.Src, fmt.Sprintf("the %s wall has no bay %d", w.name, n), fmt.Sprintf("choose a bay from 1 to %d", len(main)-1))
		return
	}
	a, b := main[n-1], main[n]
	width := o.Width.MM
	pa, pb := s.size("door post")
	lo := (a.hi+b.lo)/2 - width/2
	if o.From.Set {
		lo = a.hi + o.From.MM
	}
	hi := lo + width
	name := "door"
	if o.Sill.Set {
		name = "window"
	}
	if lo-pb < a.hi-1e-6 || hi+pb > b.lo+1e-6 {
		s.fault(o.Width.At, o.Width.Src, fmt.Sprintf("the opening and its posts need %s and bay %d of the %s wall is %s clear",
			s.f.Units.Format(width+2*pb), n, w.name, s.f.Units.Format(b.lo-a.hi)), "make the opening narrower, move it, or widen the bay")
		return
	}
	head := p.headOf(w)
	under := p.plateUnder
	if w.gable() {
		under = p.tieTop - head.t.Ideal[head.depthAxis()]
	}
	_, hd := s.size("header")
	if o.Height.MM > under {
		s.fault(o.Height.At, o.Height.Src, fmt.Sprintf("the opening is %s high and the %s above it starts at %s",
			s.f.Units.Format(o.Height.MM), head.t.Role, s.f.Units.Format(under)), "lower the opening or raise the eave")
		return
	}
	header := o.Height.MM+hd <= under-s.std.stagger
	slug := fmt.Sprintf("%s-%s-%d", name, w.name, i+1)
	op := &opening{Opening: o, w: w, lo: lo, hi: hi, slug: slug}
	op.first = p.doorPost(op, "a", lo-pb, w.dir, pa, pb, n)
	op.end = p.doorPost(op, "b", hi, w.dir.Neg(), pa, pb, n)
	if header {
		p.between("header-"+slug, "header", op, o.Height.MM, false, n)
	} else {
		s.note(o.At, fmt.Sprintf("the %s over the %s serves as its head, at %s: there is no room for a header below it",
			head.t.Role, o.Name.Or(name), s.f.Units.Format(under)), "lower the opening to get a header", head.t.ID)
	}
	if o.Sill.Set {
		p.between("rail-"+slug, "rail", op, o.Sill.MM, true, n)
	}
}

// mainPosts are the frame posts of a wall, in order along it.
func (p *plan) mainPosts(w wall) []vertical {
	var r []vertical
	for _, v := range p.pos[w.name] {
		if v.st.t.Role == "post" {
			r = append(r, v)
		}
	}
	slices.SortFunc(r, func(a, b vertical) int { return int(a.lo - b.lo) })
	return r
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
	st := s.add(o.slug+"-post-"+tag, role, o.At, l, 0, p.plateUnder, spec.TimberSettings{})
	st.t.Wall, st.t.Bay = w.name, bay
	p.foot(st, p.sillOf(w), nil)
	head := p.headOf(w)
	own := spec.JointSettings{TenonLength: set(s.std.shallow), Along: centred(), Bore: set(s.std.smallBore), OffShoulder: set(s.std.offShoulder), Thickness: set(s.std.thin)}
	s.joinEnd("mortise and tenon", head, st, geom.Finish, own, o.At).flush = !w.gable()
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

// girtTenon shortens a girt's tenon in a slender post.
func (p *plan) girtTenon(post *stick) spec.JointSettings {
	least := min(post.t.Ideal[0], post.t.Ideal[1])
	own := spec.JointSettings{TenonLength: set(min(p.s.std.braceTenon, least-p.s.std.deeper-p.s.std.web))}
	return own
}

func (p *plan) layGirts() {
	g := p.b.Girts
	if !g.Set || g.No {
		return
	}
	s := p.s
	_, d := s.size("girt")
	both := has(g.In, "eave walls") && has(g.In, "gable walls")
	for i, h := range g.Heights {
		for _, w := range p.walls() {
			if w.gable() && !has(g.In, "gable walls") || !w.gable() && !has(g.In, "eave walls") {
				continue
			}
			z := h.MM
			if w.gable() && both {
				z -= d + s.std.stagger
			}
			p.girtsOf(w, i, len(g.Heights), p.clearOf(w, z, d, h.At), h.At)
		}
	}
	if both && len(g.Heights) > 0 {
		s.note(g.At, fmt.Sprintf("gable girts are set %s below the eave girts so that their mortises do not meet in the corner posts", s.f.Units.Format(d+s.std.stagger)),
			"give girts in one pair of walls only to set their heights yourself")
	}
}

// clearOf lowers the girts of a wall until they clear the rails and headers of
// its openings: the tenons of both would meet inside a slender post.
func (p *plan) clearOf(w wall, z, depth float64, at finding.Pos) float64 {
	s := p.s
	asked := z
	for range p.s.order {
		moved := false
		for _, st := range s.order {
			t := st.t
			if t.Wall != w.name || t.Role != "header" && t.Role != "rail" {
				continue
			}
			_, d := s.size(t.Role)
			lo := t.Place.O.Z
			if t.Role == "rail" {
				lo -= d
			}
			if z > lo-s.std.stagger && z-depth < lo+d+s.std.stagger {
				z, moved = lo-s.std.stagger, true
			}
		}
		if !moved {
			break
		}
	}
	if z != asked {
		s.note(at, fmt.Sprintf("the girts of the %s wall are set at %s instead of %s, clear of the level sticks of its openings",
			w.name, s.f.Units.Format(z), s.f.Units.Format(asked)), "set the girts or the opening at another height to choose yourself")
	}
	return z
}

func has(list []spec.Text, word string) bool {
	if len(list) == 0 {
		return true
	}
	for _, t := range list {
		if t.S == word {
			return true
		}
	}
	return false
}

// girtsOf lays the girts of one wall at one height: from upright to upright,
// leaving out what would cross an opening.
func (p *plan) girtsOf(w wall, i, of int, z float64, at finding.Pos) {
	s := p.s
	ups := slices.Clone(p.pos[w.name])
	slices.SortFunc(ups, func(a, b vertical) int { return int(a.lo - b.lo) })
	wd, d := s.size("girt")
	bay, laid := 0, 0
	for k := 0; k+1 < len(ups); k++ {
		a, b := ups[k], ups[k+1]
		if a.st.t.Role == "post" {
			bay++
		}
		if inOpening(a.st, b.st) {
			continue
		}
		laid++
		id := fmt.Sprintf("girt-%s-%d", w.name, laid)
		if of > 1 {
			id = fmt.Sprintf("girt-%s-%d-%d", w.name, i+1, laid)
		}
		l := line{at: w.origin.Add(vec.V{Z: z}), dir: w.dir, out1: up, out2: w.out, size1: d, size2: wd,
			name1: "top", name2: "outside", name3: "underside", name4: "inside"}
		st := s.add(id, "girt", at, l, a.hi, b.lo, spec.TimberSettings{})
		st.t.Wall, st.t.Bay = w.name, bay
		s.joinEnd("mortise and tenon", a.st, st, geom.Start, p.intoPost(w, a.st, w.dir), at)
		s.joinEnd("mortise and tenon", b.st, st, geom.Finish, p.intoPost(w, b.st, w.dir.Neg()), at)
	}
}

// inOpening reports whether two neighbouring uprights are the posts of one
// opening. No girt runs between them: its mortises would meet those of the
// girts beside it, back to back in a slender post.
func inOpening(a, b *stick) bool {
	return a.t.Role != "post" && a.t.Role == b.t.Role && strings.TrimSuffix(a.t.ID, "a") == strings.TrimSuffix(b.t.ID, "b")
}

// intoPost shortens a girt's or brace's tenon where another may come from the
// opposite face: (distance between bearing planes - 1/2 in)/2 - 1/4 in.
func (p *plan) intoPost(w wall, post *stick, from vec.V) spec.JointSettings {
	own := p.girtTenon(post)
	if post.t.Role == "post" && !w.gable() && p.interior(post) {
		own.TenonLength = set(min(own.TenonLength.MM, p.opposed(post, w.dir)))
		// The hole moves toward the shoulder with the tenon's end, not past 1.5 D.
		bore := p.s.std.smallBore
		own.OffShoulder = set(max(1.5*bore, min(p.s.std.offShoulder, own.TenonLength.MM-2*bore)))
	}
	return own
}

func (p *plan) interior(post *stick) bool { return post.t.Bent > 1 && post.t.Bent < len(p.bents) }

// opposed is the tenon length that leaves a web between opposed mortises.
func (p *plan) opposed(post *stick, dir vec.V) float64 {
	s := p.s
	between := post.t.Ideal[0]
	if post.t.FaceToward(dir)%2 == 0 {
		between = post.t.Ideal[1]
	}
	return (between-s.std.web)/2 - s.std.deeper
}
