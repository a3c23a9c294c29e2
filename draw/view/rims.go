package view

import (
	"math"
	"sort"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// onPaper returns a turn of an ellipse in space as a part of an ellipse on
// paper by its half axes (Rytz: the conjugate half diameters are turned until
// they are at right angles).
func (r *renderer) onPaper(i, rank int, e ellipse, t turn) rim {
	c := r.o.paper(r.cam, e.C)
	k := r.o.scale()
	u, v := r.cam.Project(e.U).Mul(k), r.cam.Project(e.V).Mul(k)
	phi := math.Atan2(2*u.Dot(v), u.Dot(u)-v.Dot(v)) / 2
	s, q := math.Sincos(phi)
	a := u.Mul(q).Add(v.Mul(s)) // the longer half axis
	b := v.Mul(q).Sub(u.Mul(s))
	el := draw.Ellipse{C: c, RX: a.Len(), RY: b.Len(), Rot: math.Atan2(a.Y, a.X)}
	from, to := t.from-phi, t.to-phi
	if a.Cross(b) < 0 {
		from, to = -to, -from
	}
	if el.RX-el.RY < same/10 { // a circle: angles from the x axis
		from, to, el.Rot = from+el.Rot, to+el.Rot, 0
	} else if el.Rot < -1e-9 || el.Rot > math.Pi-1e-9 {
		el.Rot -= math.Copysign(math.Pi, el.Rot)
		from, to = from+math.Pi, to+math.Pi
	}
	el.From, el.To = from, to
	return rim{el, i, rank}
}

// arcs returns the rims of a rank. Of rims that fall on each other one is
// drawn, visible before hidden.
func (r *renderer) arcs(rank int) []draw.Item {
	if r.near == nil {
		r.near = map[[2]int][]int{}
		for n, m := range r.rims {
			k := square(m.C)
			r.near[k] = append(r.near[k], n)
		}
	}
	var out []draw.Item
	for n, m := range r.rims {
		if m.rank != rank {
			continue
		}
		left := []turn{{m.From, m.To}}
		for _, k := range r.beside(m.C) {
			o := r.rims[k]
			first := o.rank < m.rank || o.rank == m.rank && k < n
			if first && alike(o.Ellipse, m.Ellipse) {
				left = without(left, turn{o.From, o.To})
			}
		}
		for _, t := range left {
			e := m.Ellipse
			e.Meta, e.From, e.To = r.meta(m.owner, m.rank), t.from, t.to
			out = append(out, curve(e))
		}
	}
	return out
}

// square returns the millimetre square of the paper that holds p.
func square(p vec.P) [2]int { return [2]int{int(math.Floor(p.X)), int(math.Floor(p.Y))} }

// beside returns the rims with centres in the squares about p.
func (r *renderer) beside(p vec.P) []int {
	var out []int
	k := square(p)
	for dx := -1; dx <= 1; dx++ {
		for dy := -1; dy <= 1; dy++ {
			out = append(out, r.near[[2]int{k[0] + dx, k[1] + dy}]...)
		}
	}
	return out
}

// alike reports whether two ellipses are the same on paper.
func alike(a, b draw.Ellipse) bool {
	return a.C.Dist(b.C) < same && math.Abs(a.RX-b.RX) < same && math.Abs(a.RY-b.RY) < same &&
		math.Abs(math.Remainder(a.Rot-b.Rot, math.Pi))*a.RX < same
}

// without takes a turn, and the same turn a full turn on or back, out of a
// list. Parts shorter than 1e-6 of a turn are dropped.
func without(list []turn, cut turn) []turn {
	for _, k := range []float64{-2, -1, 0, 1, 2} {
		c := turn{cut.from + k*full, cut.to + k*full}
		var out []turn
		for _, t := range list {
			if p := (turn{t.from, min(t.to, c.from)}); p.to-p.from > full*1e-6 {
				out = append(out, p)
			}
			if p := (turn{max(t.from, c.to), t.to}); p.to-p.from > full*1e-6 {
				out = append(out, p)
			}
		}
		list = out
	}
	sort.Slice(list, func(i, j int) bool { return list[i].from < list[j].from })
	return list
}

// curve returns the simplest item that draws e.
func curve(e draw.Ellipse) draw.Item {
	whole := e.To-e.From > full*(1-1e-9)
	switch {
	case e.RX-e.RY >= same/10:
		if whole {
			e.From, e.To = 0, 0
		}
		return &e
	case whole:
		return &draw.Circle{Meta: e.Meta, C: e.C, R: e.RX}
	}
	return &draw.Arc{Meta: e.Meta, C: vec.P(e.C), R: e.RX, From: e.From, To: e.To}
}
