package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// laySills lays the ring of sills, cross sills at the inner bents where asked
// for or where a floor's joists run along the building, and the piers.
func (p *plan) laySills() {
	if !p.b.Sills.Or(false) {
		return
	}
	s := p.s
	w, d := s.size("sill")
	for _, sd := range sides {
		l := line{at: vec.V{Y: p.wallY(sd.wall)}, dir: east, out1: up, out2: sd.out, size1: d, size2: w,
			name1: "top", name2: "outside", name3: "bottom", name4: "inside"}
		st := s.add("sill-"+sd.wall, "sill", p.b.Sills.At, l, 0, p.length, spec.TimberSettings{})
		st.t.Wall = sd.wall
		p.sills[sd.wall] = st
	}
	inner := p.b.CrossSills.Or("at gables") == "at bents" || !p.b.CrossSills.Set && p.b.Floor.Direction.Or("across") == "along"
	for _, bt := range p.bents {
		if inner || p.gable(bt) != "" {
			p.crossSill(bt)
		}
	}
	p.layPiers()
}

// crossSill lays a sill across the building under a bent.
func (p *plan) crossSill(bt *bent) {
	s := p.s
	w, d := s.size("cross sill")
	wall, at := p.gable(bt), p.b.Sills.At
	id, word, inside := "sill-"+wall, "outside", "inside"
	if wall == "" {
		id, word, inside = fmt.Sprintf("sill-%d", bt.n), bt.word, p.inside(bt)
		if p.b.CrossSills.Set {
			at = p.b.CrossSills.At
		}
	}
	l := line{at: vec.V{X: bt.x}, dir: north, out1: up, out2: bt.out, size1: d, size2: w,
		name1: "top", name2: word, name3: "bottom", name4: inside}
	st := s.add(id, "cross sill", at, l, 0, p.span, spec.TimberSettings{})
	st.t.Wall, st.t.Bent = wall, bt.n
	p.cross[bt.n] = st
	own := spec.JointSettings{FromReference: set(s.std.cornerDown), TenonLength: set(s.std.tenon), Pegs: count(1), Along: centred(),
		Bore: set(s.std.smallBore), Thickness: set(s.std.thin)}
	if wall != "" {
		holdAt(&own, bt, s.std.hold)
	}
	// The post above stands on the peg: it is sawn flush.
	s.joinEnd("sill corner", p.sills["south"], st, geom.Start, own, at).flush = true
	s.joinEnd("sill corner", p.sills["north"], st, geom.Finish, own, at).flush = true
}

// holdAt holds a tenon back on the side of the bent's reference face.
func holdAt(own *spec.JointSettings, bt *bent, by float64) {
	if bt.last() {
		own.HoldBackEnd = set(by)
	} else {
		own.HoldBackStart = set(by)
	}
}

// layPiers sets piers under the sills: one under each bent at each eave wall,
// and between those as many at even distances as the spacing asks for.
func (p *plan) layPiers() {
	if !p.b.Piers.Set {
		return
	}
	spacing := p.b.Piers.Spacing.Or(math.Inf(1))
	_, post := p.s.size("post")
	for _, sd := range sides {
		st := p.sills[sd.wall]
		last := 0.0
		for i, bt := range p.bents {
			x := bt.x - bt.out.X*post/2
			if i > 0 {
				p.piersBetween(st, last, x, spacing)
			}
			p.pierAt(st, x)
			last = x
		}
	}
	for _, bt := range p.bents {
		if st := p.cross[bt.n]; st != nil {
			p.piersBetween(st, post/2, p.span-post/2, spacing)
		}
	}
}

func (p *plan) piersBetween(st *stick, from, to, spacing float64) {
	n := int(math.Ceil((to-from)/spacing - 1e-9))
	for i := 1; i < n; i++ {
		p.pierAt(st, from+(to-from)*float64(i)/float64(n))
	}
}

// pierAt sets a pier under the middle of a level stick, at x along it.
func (p *plan) pierAt(st *stick, x float64) {
	depth := st.depthAxis()
	at := vec.V{X: x, Y: st.t.Section[0] / 2, Z: st.t.Section[1] / 2}
	if depth == 0 {
		at.Y = st.t.Section[0]
	} else {
		at.Z = st.t.Section[1]
	}
	w := st.t.Section[1-depth]
	size := [2]float64{w, w}
	if p.b.Piers.Size.Set {
		size = [2]float64{p.b.Piers.Size.A, p.b.Piers.Size.B}
	}
	p.s.f.Supports = append(p.s.f.Supports, geom.Support{Timber: st.t.ID, At: st.t.Place.Out(at), Size: size})
}

// foot stands an upright on a sill with an unpegged stub tenon, or on a pier.
func (p *plan) foot(st *stick, sill *stick, more func(*spec.JointSettings)) {
	s := p.s
	if sill == nil {
		at := st.t.Place.Out(vec.V{Y: st.t.Section[0] / 2, Z: st.t.Section[1] / 2})
		sup := geom.Support{Timber: st.t.ID, At: at, Size: st.t.Section}
		if p.b.Piers.Size.Set {
			sup.Size = [2]float64{p.b.Piers.Size.A, p.b.Piers.Size.B}
		}
		s.f.Supports = append(s.f.Supports, sup)
		return
	}
	own := spec.JointSettings{Stub: flag(true), Pegs: count(0), FromReference: set(s.std.footOff), Thickness: set(s.std.thin), TenonLength: set(s.std.stub)}
	if more != nil {
		more(&own)
	}
	s.joinEnd("mortise and tenon", sill, st, geom.Start, own, st.t.At)
}
