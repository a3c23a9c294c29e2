package joint

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/vec"
)

// hole is one peg hole about to be bored: the mortise hole's place in joint
// coordinates (v is the middle of the tenon) and the shift of the tenon hole.
type hole struct {
	s       Site
	a       geom.Axes
	n       int
	u, v, w float64
	shift   vec.V
}

// bore fills in the peg's geometry and adds the bores of both timbers to the
// result. The peg runs along V from the reference side unless the settings
// name the other face.
func (h hole) bore(p *geom.Peg, i int, res *Result) {
	s, set := h.s, h.s.Set
	low, high := sideFaces(h.n)
	dir := h.a.V
	p.Entry, p.Exit = low, high
	if set.FromFace == high {
		p.Entry, p.Exit, dir = high, low, dir.Neg()
	}
	p.ID, p.Bore, p.Head, p.Lead = pegID(s.ID, i), set.Bore, set.Head, set.Lead
	p.Offset, p.Flush = set.Offset, set.Flush
	p.Mortise = h.a.Point(h.u, h.v, h.w)
	p.Tenon = p.Mortise.Add(h.shift)
	p.From = onPlane(s.R, p.Entry, p.Mortise, dir)
	p.To = onPlane(s.R, p.Exit, p.Mortise, dir)
	if p.Offset == 0 {
		p.Draw = vec.V{}
	}
	inR, inE := s.R.Place.In, s.E.Place.In
	res.Bores = append(res.Bores, Hole{s.R, geom.Bore{
		Joint: s.ID, Peg: p.ID, Diameter: set.Bore, Entry: p.Entry, Exit: p.Exit,
		From: inR(p.From.Sub(dir.Mul(past))), To: inR(p.To.Add(dir.Mul(past))),
	}})
	ef, et := s.E.FaceToward(dir.Neg()), s.E.FaceToward(dir)
	res.Bores = append(res.Bores, Hole{s.E, geom.Bore{
		Joint: s.ID, Peg: p.ID, Diameter: set.Bore, Entry: ef, Exit: et,
		From: inE(onPlane(s.E, ef, p.Tenon, dir).Sub(dir.Mul(past))),
		To:   inE(onPlane(s.E, et, p.Tenon, dir).Add(dir.Mul(past))),
	}})
}

// onPlane returns where the line through p along dir meets face n of the
// timber's blank, in frame axes.
func onPlane(t *geom.Timber, n int, p, dir vec.V) vec.V {
	pl := t.BlankPlane(n).Moved(t.Place)
	return p.Add(dir.Mul(-pl.Height(p) / pl.N.Dot(dir)))
}

// bottom returns where a blind bore ends that goes into the receiver at p along
// dir: as deep as asked, but with peg.BlindWood left between its rim and each
// face that it bores toward. So much as half its bore it goes in always.
func bottom(s Site, p, dir vec.V) vec.V {
	depth, r := s.Set.BlindDepth, s.Set.Bore/2
	for n := 1; n <= 4; n++ {
		pl := ideal(s.R, n)
		if slope := pl.N.Dot(dir); slope > 0.1 {
			rim := r * math.Sqrt(max(1-slope*slope, 0))
			depth = min(depth, (-pl.Height(p)-rim-peg.BlindWood)/slope)
		}
	}
	return p.Add(dir.Mul(max(depth, r)))
}

// receiverRules are the boundary lines of the receiver round a hole, in the
// joint's u, w plane, with a bearing that runs along the receiver. depth is the
// receiver's ideal size along W.
func receiverRules(s Site, depth float64) []peg.Rule {
	return append([]peg.Rule{rule(s.R, s.Set, "bearing face", peg.Edge, vec.P{Y: 1}, -s.Set.Housing)}, farRules(s, depth)...)
}

// farRules are receiverRules without the bearing.
func farRules(s Site, depth float64) []peg.Rule {
	return []peg.Rule{
		rule(s.R, s.Set, "far face", peg.Edge, vec.P{Y: -1}, depth),
		rule(s.R, s.Set, "start end", peg.End, vec.P{X: -1}, 0),
		rule(s.R, s.Set, "finish end", peg.End, vec.P{X: 1}, s.R.Length),
	}
}

// rule is one boundary of timber t. Rules of the receiver hold for the mortise
// hole, those of the enterer for the tenon hole.
func rule(t *geom.Timber, set Settings, name string, k peg.Kind, n vec.P, d float64) peg.Rule {
	h := peg.TenonHole
	if name == "bearing face" || name == "far face" || name == "start end" || name == "finish end" {
		h = peg.MortiseHole
	}
	r := peg.NewRule(k, h, n, d, set.Bore, t.Wood)
	r.Name, r.Timber = name, t.ID
	return r
}

// dimmer collects dimension requests on one timber.
type dimmer struct {
	j      *geom.Joint
	a      geom.Axes
	t      *geom.Timber
	reader geom.Reader
}

func (d *dimmer) on(t *geom.Timber, r geom.Reader) { d.t, d.reader = t, r }

// reduced asks, on the enterer, for how far past the shoulder at p it is brought
// to its ideal section: by d, square to the receiver's face n.
func (d *dimmer) reduced(p, n vec.V, by float64) {
	d.add("reduced past the shoulder", n, p, p.Add(n.Mul(by)))
}

// housed asks, on the receiver, for the sides of a housing from v0 to v1 across
// a face that is wide: nothing where it runs out. p is a point at v = 0.
func (d *dimmer) housed(p vec.V, v0, v1, wide float64) {
	if v0 < tol && v1 > wide-tol {
		return
	}
	at := func(v float64) vec.V { return p.Add(d.a.V.Mul(v)) }
	if v0 > tol {
		d.add("housing from reference face", d.a.V, at(0), at(v0))
	}
	d.add("housing width", d.a.V, at(max(v0, 0)), at(min(v1, wide)))
}

// add asks for the distance between two frame points along a frame axis.
func (d *dimmer) add(label string, axis, from, to vec.V) {
	in := d.t.Place
	r := geom.Dim{Timber: d.t, From: in.In(from), To: in.In(to), Axis: in.InDir(axis), Label: label, Reader: d.reader}
	if r.Value() > 1e-3 {
		d.j.Dims = append(d.j.Dims, r)
	}
}
