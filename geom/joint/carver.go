package joint

import (
	"math"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// half is the half-space of frame points p with s·(dir·(p-O)) <= s·at, as a
// side with a role. s is +1 or -1.
func half(a geom.Axes, dir vec.V, s, at float64, role string) solid.Side {
	n := dir.Mul(s)
	return solid.Side{Plane: solid.Plane{N: n, D: n.Dot(a.O) + s*at}, Role: role}
}

// carver makes cuts on one timber from frame half-spaces.
type carver struct {
	t    *geom.Timber
	id   string
	cuts []geom.Cut
	room *solid.Convex // the blank grown by open, once it was asked for
}

// take removes what lies inside all sides (frame axes). Open sides are closed
// against the blank grown by 10 mm. A volume that misses the blank is no cut.
func (c *carver) take(name string, sides ...solid.Side) solid.Convex {
	inv := c.t.Place.Inverse()
	local := make([]solid.Side, len(sides))
	for i, s := range sides {
		local[i] = solid.Side{Plane: tidy(s.Plane.Moved(inv)), Role: s.Role}
	}
	blank := c.t.Blank
	if blank.Inside(local...).Thickness() < 1e-3 {
		return solid.Convex{}
	}
	if c.room == nil {
		big := blank.Grow(open)
		for i := range big.Faces {
			big.Faces[i].Role = ""
		}
		c.room = &big
	}
	v := c.room.Inside(local...)
	c.cuts = append(c.cuts, geom.Cut{Joint: c.id, Name: name, Solid: v})
	return v
}

// tidy removes the dust that rotations leave on axis-aligned planes.
func tidy(p solid.Plane) solid.Plane {
	dust := func(x float64) float64 {
		if r := math.Round(x); math.Abs(x-r) < 1e-12 {
			return r + 0
		}
		return x
	}
	p.N = vec.V{X: dust(p.N.X), Y: dust(p.N.Y), Z: dust(p.N.Z)}
	if r := math.Round(p.D*1e7) / 1e7; math.Abs(p.D-r) < 1e-9 {
		p.D = r + 0
	}
	return p
}

// frameBlock returns the volume inside all sides near the site, in frame axes.
func frameBlock(around vec.V, sides ...solid.Side) solid.Convex {
	const r = 3000
	b := solid.Box(around.Sub(vec.V{X: r, Y: r, Z: r}), around.Add(vec.V{X: r, Y: r, Z: r}))
	return b.Inside(sides...)
}

// bring brings the enterer's end to its ideal section on its two
// non-reference faces, in front of the plane w = upto.
func bring(c *carver, a geom.Axes, upto float64) {
	for _, n := range []int{3, 4} {
		c.take("reduction",
			solid.Side{Plane: ideal(c.t, n).Flip(), Role: geom.RoleReduced},
			half(a, a.W, 1, upto, geom.RoleReduced))
	}
}
