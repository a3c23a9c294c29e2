package solve

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/joint"
	"pegwright/geom/peg"
	"pegwright/geom/scheme"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

// cut lets every joint take its wood and lays the net bodies.
func (s *solver) cut() {
	for _, p := range s.joints {
		k, _ := joint.Lookup(p.Kind)
		res := k.Cut(p.site())
		j := res.Joint
		j.At, j.Kind = p.At, k.Title
		j.Tension = p.Tension
		p.R.Timber.Cuts = append(p.R.Timber.Cuts, res.R...)
		p.E.Timber.Cuts = append(p.E.Timber.Cuts, res.E...)
		for _, h := range res.Bores {
			h.On.Bores = append(h.On.Bores, h.Bore)
		}
		for i := range j.Pegs {
			s.finishPeg(p, &j, &j.Pegs[i])
		}
		s.slip(p, &j, res.Tail)
		for _, w := range res.Warns {
			s.Frame.Notes = append(s.Frame.Notes, finding.Finding{Severity: finding.Warn, Rule: "notch", At: p.At, Text: w.Text, Mend: w.Mend,
				Timbers: []string{p.E.Timber.ID, p.R.Timber.ID}, Joints: []string{p.ID}})
		}
		s.holds(p, &j)
		p.made = &j
		s.Frame.Joints = append(s.Frame.Joints, p.made)
	}
	for _, st := range s.Order {
		s.net(st)
	}
}

// finishPeg gives a peg its length, its window and its reason.
func (s *solver) finishPeg(p *settled, j *geom.Joint, g *geom.Peg) {
	g.Lead, g.Why, g.OffsetAt = p.set.Lead, p.why, p.drawAt
	if g.Exit == 0 {
		g.Lead = 0
		g.Length = peg.BlindLength(g.From.Dist(g.To), g.Head, s.Std.BlindStep)
	} else {
		g.Length = peg.Length(g.From.Dist(g.To), g.Head, g.Lead, s.Std.PegStep)
	}
	m, t := j.Flat(g.Mortise), j.Flat(g.Tenon)
	if dir := g.To.Sub(g.From).Unit(); math.Abs(dir.Dot(j.Axes.W)) > 1e-6 && !j.Broad {
		m.Y, t.Y = 0, 0 // a slanting peg has rules along the receiver alone
	}
	g.Window = peg.Place{Mortise: m, Shift: t.Sub(m), Bore: g.Bore, Rules: g.Rules}.Window()
}

// net lays the net body of a timber and weighs it.
func (s *solver) net(st *scheme.Stick) {
	t := st.Timber
	if st.Plumb {
		s.plumbTail(st)
	}
	t.Net = solid.NewBody(t.Blank)
	for _, c := range t.Cuts {
		t.Net.Subtract(c.Solid, c.Joint)
	}
	v := t.Net.Volume()
	cells := t.Net.Cells()
	var earlier []solid.Bore
	for _, b := range t.Bores {
		v -= solid.BoreVolume(cells, b.From, b.To, b.Diameter, earlier)
		earlier = append(earlier, solid.Bore{From: b.From, To: b.To, Diameter: b.Diameter})
	}
	t.NetVolume = v
	service := s.Frame.Stock.Service
	t.Density = t.Wood.Density(t.Moisture)
	// Weight in service from the same volume as cut, shrunk as the wood shrinks.
	t.DryDensity = t.Wood.Density(service) *
		(1 - t.Wood.Shrinkage(wood.Tangential, t.Moisture, service)) *
		(1 - t.Wood.Shrinkage(wood.Radial, t.Moisture, service))
}

// site is a joint as its kind sees it.
func (p *settled) site() joint.Site {
	return joint.Site{ID: p.ID, R: p.R.Timber, E: p.E.Timber, End: p.End, REnd: p.REnd, Meet: p.meet, Set: p.set}
}

// plumbTail cuts a rafter's tail plumb.
func (s *solver) plumbTail(st *scheme.Stick) {
	t := st.Timber
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
