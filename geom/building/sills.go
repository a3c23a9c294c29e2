package building

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/scheme"
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
	w, d := s.Size("sill")
	for _, sd := range sides {
		l := scheme.Line{At: vec.V{Y: p.wallY(sd.wall)}, Dir: east, Out1: up, Out2: sd.out, Size1: d, Size2: w,
			Name1: "top", Name2: "outside", Name3: "bottom", Name4: "inside"}
		st := s.Add("sill-"+sd.wall, "sill", p.b.Sills.At, l, 0, p.length, spec.TimberSettings{})
		st.Timber.Wall = sd.wall
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
	w, d := s.Size("cross sill")
	wall, at := p.gable(bt), p.b.Sills.At
	id, word, inside := "sill-"+wall, "outside", "inside"
	if wall == "" {
		id, word, inside = fmt.Sprintf("sill-%d", bt.n), bt.word, p.inside(bt)
		if p.b.CrossSills.Set {
			at = p.b.CrossSills.At
		}
	}
	l := scheme.Line{At: vec.V{X: bt.x}, Dir: north, Out1: up, Out2: bt.out, Size1: d, Size2: w,
		Name1: "top", Name2: word, Name3: "bottom", Name4: inside}
	st := s.Add(id, "cross sill", at, l, 0, p.span, spec.TimberSettings{})
	st.Timber.Wall, st.Timber.Bent = wall, bt.n
	p.cross[bt.n] = st
	own := spec.JointSettings{FromReference: spec.LengthOf(p.std.cornerDown), TenonLength: spec.LengthOf(s.Std.Tenon), Pegs: spec.NumberOf(1), Along: spec.Centred(),
		Bore: spec.LengthOf(s.Std.SmallBore), Thickness: spec.LengthOf(s.Std.Thin)}
	if wall != "" {
		holdAt(&own, bt, p.std.hold)
	}
	// The post above stands on the peg: it is sawn flush.
	s.Join("sill corner", p.sills["south"], st, geom.Start, own, at).Flush = true
	s.Join("sill corner", p.sills["north"], st, geom.Finish, own, at).Flush = true
}

// holdAt holds a tenon back on the side of the bent's reference face.
func holdAt(own *spec.JointSettings, bt *bent, by float64) {
	if bt.last() {
		own.HoldBackEnd = spec.LengthOf(by)
	} else {
		own.HoldBackStart = spec.LengthOf(by)
	}
}

// layPiers sets piers under the sills: one under each bent at each eave wall,
// and between those as many at even distances as the spacing asks for.
func (p *plan) layPiers() {
	if !p.b.Piers.Set {
		return
	}
	spacing := p.b.Piers.Spacing.Or(math.Inf(1))
	_, post := p.s.Size("post")
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

// piersBetween sets piers under a sill between two others, at even distances of no more
// than spacing.
func (p *plan) piersBetween(st *scheme.Stick, from, to, spacing float64) {
	n := int(math.Ceil((to-from)/spacing - 1e-9))
	for i := 1; i < n; i++ {
		p.pierAt(st, from+(to-from)*float64(i)/float64(n))
	}
}

// pierAt sets a pier under the middle of a level stick, at x along it.
func (p *plan) pierAt(st *scheme.Stick, x float64) {
	depth := st.DepthAxis()
	at := vec.V{X: x, Y: st.Timber.Section[0] / 2, Z: st.Timber.Section[1] / 2}
	if depth == 0 {
		at.Y = st.Timber.Section[0]
	} else {
		at.Z = st.Timber.Section[1]
	}
	w := st.Timber.Section[1-depth]
	size := [2]float64{w, w}
	if p.b.Piers.Size.Set {
		size = [2]float64{p.b.Piers.Size.A, p.b.Piers.Size.B}
	}
	p.s.Frame.Supports = append(p.s.Frame.Supports, geom.Support{Timber: st.Timber.ID, At: st.Timber.Place.Out(at), Size: size})
}

// foot stands an upright on a sill with an unpegged stub tenon, or on a pier.
func (p *plan) foot(st *scheme.Stick, sill *scheme.Stick, more func(*spec.JointSettings)) {
	s := p.s
	if sill == nil {
		at := st.Timber.Place.Out(vec.V{Y: st.Timber.Section[0] / 2, Z: st.Timber.Section[1] / 2})
		sup := geom.Support{Timber: st.Timber.ID, At: at, Size: st.Timber.Section}
		if p.b.Piers.Size.Set {
			sup.Size = [2]float64{p.b.Piers.Size.A, p.b.Piers.Size.B}
		}
		s.Frame.Supports = append(s.Frame.Supports, sup)
		return
	}
	own := spec.JointSettings{Stub: spec.FlagOf(true), Pegs: spec.NumberOf(0), FromReference: spec.LengthOf(p.std.footOff), Thickness: spec.LengthOf(s.Std.Thin), TenonLength: spec.LengthOf(s.Std.Stub)}
	if more != nil {
		more(&own)
	}
	s.Join("mortise and tenon", sill, st, geom.Start, own, st.Timber.At)
}
