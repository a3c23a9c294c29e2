package scene

import (
	"math"

	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Near is a joint with its two timbers broken off around it, in frame axes.
type Near struct {
	// Receiver and Enterer are what is left of the timbers, with their bores.
	Receiver, Enterer view.Part
	j                 *geom.Joint
}

// NearOf breaks the timbers of a joint off at a share of their size past what
// the joint takes from them.
func NearOf(j *geom.Joint, share float64) Near {
	n := Near{j: j}
	n.Receiver = brokenOff(j.Into, j, share)
	n.Enterer = brokenOff(j.Of, j, share)
	return n
}

// brokenOff returns the part of t around the cuts of joint j. An end that lies
// within the margin and a hand's breadth is kept.
func brokenOff(t *geom.Timber, j *geom.Joint, share float64) view.Part {
	p := view.Part{Owner: t.ID, Body: t.NetInFrame(), Bores: bores(t)}
	lo, hi := reach(t, j)
	m := share * max(t.Section[0], t.Section[1])
	const hand = 60
	var planes []solid.Plane
	if hi+m+hand < t.Length {
		planes = append(planes, solid.Plane{N: vec.V{X: 1}, D: hi + m}.Moved(t.Place))
	}
	if lo-m-hand > 0 {
		planes = append(planes, solid.Plane{N: vec.V{X: -1}, D: -(lo - m)}.Moved(t.Place))
	}
	if len(planes) > 0 {
		p.Body = view.Clipped(p.Body, planes...)
	}
	return p
}

func bores(t *geom.Timber) []view.Bore {
	out := make([]view.Bore, len(t.Bores))
	for i, b := range t.Bores {
		out[i] = view.Bore{From: t.Place.Out(b.From), To: t.Place.Out(b.To), Diameter: b.Diameter}
	}
	return out
}

// reach returns the stretch of t that joint j touches: its cuts, its peg holes
// and its scribed lines, within the timber.
func reach(t *geom.Timber, j *geom.Joint) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	add := func(x float64) {
		x = min(max(x, 0), t.Length)
		lo, hi = min(lo, x), max(hi, x)
	}
	for _, c := range t.Cuts {
		if c.Joint == j.ID {
			a, b := c.Solid.Extent(vec.V{X: 1})
			add(a)
			add(b)
		}
	}
	for _, p := range j.Pegs {
		add(t.Place.In(p.Mortise).X)
	}
	if t == j.Into {
		for _, l := range j.Lines {
			add(l.X)
		}
	}
	if lo > hi {
		x := t.Place.In(j.Axes.O).X
		if j.OfEnd == geom.Finish {
			x = t.Length
		}
		add(x)
	}
	return lo, hi
}

// direction returns the unit direction in which a peg is driven.
func direction(p geom.Peg) vec.V { return p.To.Sub(p.From).Unit() }

// flats is what a peg measures across its flats, over its bore: the middle of
// the range that the peg list gives.
func flats(bore float64) float64 {
	o := peg.OctagonFor(bore)
	return (o.LeastFlats + o.MostFlats) / 2
}

// pegPart returns the peg as it stands when driven home, its lead as the lists
// and the peg pattern give it.
func pegPart(p geom.Peg) view.Part {
	d := direction(p)
	from := p.From.Sub(d.Mul(p.Head))
	tip, l := flats(p.Bore), 0.0
	if lead, ok := p.Taper(); ok {
		tip, l = min(lead.Tip, tip), lead.Length
	}
	return view.PegPart(p.ID, from, from.Add(d.Mul(p.Length)), flats(p.Bore), tip, l)
}

// apartBy returns how far the enterer is carried for the exploded view: back
// along its moves and a gap more along the first of them.
func apartBy(j *geom.Joint, gap float64) vec.V {
	var out vec.V
	for i := len(j.Moves) - 1; i >= 0; i-- {
		out = out.Sub(j.Moves[i].Direction.Mul(j.Moves[i].Distance))
	}
	if len(j.Moves) > 0 {
		out = out.Sub(j.Moves[0].Direction.Mul(gap))
	}
	return out
}

// entersFirst reports whether the peg enters through the receiver's face; else
// it goes through the enterer first. Where both have a face there, as in a lap,
// it is the one whose wood lies under it.
func entersFirst(j *geom.Joint, p geom.Peg) bool {
	if p.Entry < 1 || p.Entry > 4 {
		return false
	}
	const under = 4.0
	if at := p.From.Add(direction(p).Mul(under)); j.Of.WoodAt(at) && !j.Into.WoodAt(at) {
		return false
	}
	pl := j.Into.BlankPlane(p.Entry).Moved(j.Into.Place)
	return math.Abs(pl.Height(p.From)) < 1
}
