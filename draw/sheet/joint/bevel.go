package joint

import (
	"math"
	"slices"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// bevel is the angle between an arris and the line of a cut that runs askew to
// it, to which a bevel gauge is set, in a view at full size: in the wood, or over
// the mouth of a notch.
type bevel struct {
	apex vec.P
	a, b vec.P // from the apex to where the lines end
	deg  float64
}

// bevels gives every bevel of the joint's cuts to the first view of its timber
// that shows it.
func bevels(j *geom.Joint, views []*ortho) {
	said := map[string][]float64{}
	for _, v := range views {
		id := v.timber.ID
		for _, deg := range bevelsAt(j, v.timber) {
			if holdsAngle(said[id], deg) {
				continue
			}
			if b, ok := v.bevelOf(j, deg); ok {
				v.bevels = append(v.bevels, b)
				said[id] = append(said[id], deg)
			}
		}
	}
}

// bevelOf returns where a view shows a bevel of the joint's cuts best: with the
// longest lines.
func (v *ortho) bevelOf(j *geom.Joint, deg float64) (best bevel, ok bool) {
	along := v.cam.Project(v.timber.Place.OutDir(vec.V{X: 1}))
	if math.Abs(along.Len()-1) > 1e-6 {
		return bevel{}, false // seen from its end
	}
	cuts, arrises := v.lines(draw.Part, draw.Register, draw.Hidden), v.lines(draw.Part, draw.Register)
	long := 0.0
	for i := range v.timber.Cuts {
		c := &v.timber.Cuts[i]
		if c.Joint != j.ID || c.Solid.HasRole(geom.RoleReduced) {
			continue
		}
		for _, s := range cuts {
			if !v.onCut(c, s) {
				continue
			}
			for _, arris := range arrises {
				b, meets := corner(s, arris, along)
				if l := min(b.a.Len(), b.b.Len()); meets && math.Abs(b.deg-deg) < 0.05 && l > long+1e-6 {
					best, ok, long = b, true, l
				}
			}
		}
	}
	return best, ok
}

// lines returns the straight lines of some classes in a view, at full size.
func (v *ortho) lines(classes ...draw.Class) [][2]vec.P {
	var out [][2]vec.P
	for _, it := range v.items {
		p, ok := it.(*draw.Path)
		if !ok || !slices.Contains(classes, p.Class) {
			continue
		}
		for i := 1; i < len(p.Pts); i++ {
			out = append(out, [2]vec.P{p.Pts[i-1], p.Pts[i]})
		}
	}
	return out
}

// onCut reports whether a line of the view lies on a plane of the cut that is
// seen from its edge.
func (v *ortho) onCut(c *geom.Cut, s [2]vec.P) bool {
	for _, face := range c.Solid.Faces {
		var q [3]vec.P
		flat := true
		for i := range face.Loop {
			p := v.cam.Project(v.timber.Place.Out(c.Solid.V[face.Loop[i]]))
			if i < 2 {
				q[i] = p
				continue
			}
			d := q[1].Sub(q[0])
			if d.Len() < 0.1 {
				q[1] = p // the first edge is seen as a point
				continue
			}
			flat = flat && math.Abs(d.Unit().Left().Dot(p.Sub(q[0]))) < 0.01
		}
		d := q[1].Sub(q[0])
		if !flat || d.Len() < 0.1 {
			continue
		}
		n := d.Unit().Left()
		if math.Abs(n.Dot(s[0].Sub(q[0]))) < 0.01 && math.Abs(n.Dot(s[1].Sub(q[0]))) < 0.01 {
			return true
		}
	}
	return false
}

// corner returns the acute angle between a cut's line and an arris that runs
// along the timber where the one ends on the other.
func corner(cut, arris [2]vec.P, along vec.P) (bevel, bool) {
	d := arris[1].Sub(arris[0])
	if d.Len() < 1 || math.Abs(d.Unit().Left().Dot(along)) > 1e-6 {
		return bevel{}, false
	}
	d = d.Unit()
	for i, q := range cut {
		at := d.Dot(q.Sub(arris[0]))
		if math.Abs(d.Left().Dot(q.Sub(arris[0]))) > 0.05 || at < -0.05 || at > arris[1].Sub(arris[0]).Len()+0.05 {
			continue
		}
		b := bevel{apex: q, a: cut[1-i].Sub(q)}
		b.b = arris[1].Sub(q)
		if b.a.Dot(d) < 0 {
			b.b, d = arris[0].Sub(q), d.Mul(-1)
		}
		if b.a.Len() < 1 {
			continue
		}
		if b.b.Len() < 1 {
			b.b = d.Mul(1e-3) // over the mouth of a notch, where the arris is gone
		}
		b.deg = math.Acos(min(1, b.a.Unit().Dot(b.b.Unit()))) * 180 / math.Pi
		return b, b.deg > 0.5 && b.deg < 89.5
	}
	return bevel{}, false
}

// bevelMost is the largest radius of an angle's arc, and bevelAir what its text
// stands off all else, paper mm.
const (
	bevelMost = 40.0
	bevelAir  = 1.4
)

// drawBevels draws the view's bevels at scale k, its origin at o, each with the
// least arc that lies in the room and whose text stands free of all that the sheet
// holds; one that finds no room is left to the table of the joint sheet.
func (v *ortho) drawBevels(s *draw.Sheet, k float64, o vec.P, room draw.Box) {
	for _, b := range v.bevels {
		a := dim.Angle{Apex: o.Add(b.apex.Mul(k)), A: b.a.Mul(k), B: b.b.Mul(k), Text: draw.Number(b.deg, 1) + "°", Owner: v.timber.ID}
		for r := a.Least(7); r <= bevelMost; r++ {
			box := a.Box(r)
			box.Min, box.Max = box.Min.Sub(vec.At(bevelAir, bevelAir)), box.Max.Add(vec.At(bevelAir, bevelAir))
			try := draw.NewSheet("", "", "", s.W, s.H)
			a.Draw(try, r)
			if all := try.Bounds(); a.Clear(r) && !page.AnyHits(s.Items, box) && room.With(all.Min, all.Max) == room {
				s.Add(try.Items...)
				break
			}
		}
	}
}
