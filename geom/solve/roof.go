package solve

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// layRoof sets pairs of rafters: one pair flush with each bent's reference
// face, and common pairs between at even spacing.
func (p *plan) layRoof() {
	r := p.b.Roof
	if !r.Set {
		return
	}
	deg := 36.869897645844
	if r.Pitch.Set {
		deg = r.Pitch.Degrees
	}
	sin, cos := math.Sincos(deg * math.Pi / 180)
	if r.Pitch.Set && r.Pitch.Run > 0 {
		h := math.Hypot(r.Pitch.Rise, r.Pitch.Run)
		sin, cos = r.Pitch.Rise/h, r.Pitch.Run/h
	}
	p.sin, p.cos = sin, cos
	w, _ := p.s.size("rafter")
	k := 0
	for i := 0; i+1 < len(p.bents); i++ {
		from, to := p.bents[i].x, p.bents[i+1].x
		if p.bents[i+1].last() {
			to -= w
		}
		n := int(math.Ceil((to-from)/p.b.Roof.RafterSpacing.Or(p.s.std.rafterSpacing) - 1e-9))
		for j := range n {
			k++
			p.rafterPair(k, from+(to-from)*float64(j)/float64(n), west)
		}
	}
	p.rafterPair(k+1, p.bents[len(p.bents)-1].x, east)
}

// seatDepth is how far the rafter's underside lies below the plate's outer
// top arris, square to the rafter: a third of the rafter, less where the plate
// is too narrow.
func (p *plan) seatDepth(depth, plateWidth float64) float64 {
	if v := p.s.d.Layout.For("rafter").SeatDepth; v.Set {
		return v.MM
	}
	return min(depth/3, (plateWidth-inch)*p.sin)
}

func (p *plan) rafterPair(k int, x float64, side vec.V) {
	s := p.s
	w, d := s.size("rafter")
	over := p.b.Roof.Overhang.Or(s.std.overhang)
	var pair [2]*stick
	for i, sd := range sides {
		in := sd.out.Neg()
		dir := in.Mul(p.cos).Add(up.Mul(p.sin))
		top := up.Mul(p.cos).Sub(in.Mul(p.sin))
		word, other := "west side", "east side"
		if side.X > 0 {
			word, other = other, word
		}
		l := line{dir: dir, out1: top, out2: side, size1: d, size2: w, name1: "top", name2: word, name3: "underside", name4: other}
		st := s.add(fmt.Sprintf("rafter-%d-%s", k, sd.wall), "rafter", p.b.Roof.At, l, 0, 1, spec.TimberSettings{})
		ideal := st.t.Ideal[0]
		if st.t.Place.OutDir(vec.V{Z: 1}).Dot(top) != 0 {
			ideal = st.t.Ideal[1]
		}
		plate := p.plates[sd.wall]
		width := plate.t.Ideal[1-plate.depthAxis()]
		deep := p.seatDepth(ideal, width)
		// Height of the top line above the plate's top, at its outer face.
		rise := (ideal - deep) / p.cos
		st.t.Place.O = vec.V{X: x, Y: p.wallY(sd.wall), Z: p.eave + rise}
		st.lo = -over / p.cos
		st.hi = p.span / 2 / p.cos
		if p.b.Roof.Tail.Or("square") == "plumb" {
			st.lo -= d * p.sin / p.cos
			st.plumb = true
		}
		pair[i] = st
		p.seat(st, plate, deep)
	}
	q := &pact{id: pair[1].t.ID + "-to-" + pair[0].t.ID, kind: "bridle", r: pair[0], e: pair[1], end: geom.Finish, rEnd: geom.Finish, at: p.b.Roof.At,
		own: spec.JointSettings{Thickness: set(w / 3), FromReference: set(w / 3), Pegs: count(1), Drawbore: spec.Drawbore{Mode: spec.DrawNone, Set: true}, Bore: set(s.std.smallBore)}}
	s.pacts = append(s.pacts, q)
}

// seat plans the rafter's seat on its plate. Its peg stands 1-1/2 diameters
// off the rafter's reference side, clear of the tenon of a post below, and its
// bore stops above the mortises in the plate's underside.
func (p *plan) seat(st, plate *stick, deep float64) {
	s := p.s
	kind := "step-lap seat"
	if p.b.Roof.Seat.Or("step-lap") == "birdsmouth" {
		kind = "birdsmouth seat"
	}
	depth := plate.t.Ideal[plate.depthAxis()]
	q := &pact{id: st.t.ID + "-on-" + plate.t.ID, kind: kind, r: plate, e: st, at: p.b.Roof.At,
		own: spec.JointSettings{Pegs: count(1), Bore: set(s.std.smallBore), Drawbore: spec.Drawbore{Mode: spec.DrawNone, Set: true}, SeatDepth: set(deep)}}
	q.pegOff = 1.5 * s.std.smallBore
	// The bore starts on the table, below the plate's top, and its low rim runs
	// deeper than its axis.
	lost := s.std.smallBore / 2 * p.sin
	if kind == "step-lap seat" {
		lost += 0.3 * deep * p.cos
	}
	room := depth - s.topTenon(plate) - s.std.deeper - s.std.seatWood - lost
	q.set.BlindDepth = max(min(room/p.cos, 3*inch), inch)
	s.pacts = append(s.pacts, q)
}

// plumbTail cuts a rafter's tail plumb.
func (s *solver) plumbTail(st *stick) {
	t := st.t
	in := vec.V{X: t.Place.X.X, Y: t.Place.X.Y}.Unit()
	o := t.Place.O
	// The tail's underside corner stands at x = 0; the plumb plane passes it.
	far := math.Inf(-1)
	for _, v := range t.Blank.V {
		if v.X == 0 {
			far = max(far, t.Place.Out(v).Sub(o).Dot(in))
		}
	}
	pl := solid.Plane{N: in, D: in.Dot(o) + far}.Moved(t.Place.Inverse())
	big := t.Blank.Grow(10)
	for i := range big.Faces {
		big.Faces[i].Role = ""
	}
	c := big.Clip(pl, geom.RoleEnd)
	t.Cuts = append(t.Cuts, geom.Cut{Name: "tail", Solid: c})
}
