package timber

import (
	"fmt"
	"math"
	"sort"

	"pegwright/draw"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// feature is one cut or bore of a timber as it is laid out: all lengths in the
// timber's own axes, so that they are what a framer scribes.
type feature struct {
	n        int // its number in the order of cutting
	stage    int
	what     string
	joint    *geom.Joint
	into     bool    // the timber receives in this joint
	face     int     // that it is cut from, 0 for an end cut
	from, to float64 // along, at the mouth
	lo, hi   float64 // off the arris of that face, at the mouth
	across   float64 // width of the face there
	deep     float64 // below the face, at the deepest; of a bore along the bit
	lean     float64 // of a bore's axis from the square to the face, degrees
	leans    string  // where a bit that leans goes, such as "face 4"
	floor    float64 // depth of the bearing that a mortise is sunk from, 0: the face
	rest     float64 // from the opposite reference face to the bottom; NaN where there is none
	through  bool
	mouth    []vec.P // outline at the mouth: along, off the arris
	bore     *geom.Bore
	bevel    []float64 // degrees to the arris of planes that slant
}

// stages are the steps in which cuts are best made (common practice, no
// source): what is laid out from whole faces first, what takes the layout away
// last.
func stages() []string {
	return []string{
		"bore the peg holes while the faces are whole",
		"chop the mortises",
		"sink the housings and gains",
		"cut seats, notches and slots",
		"saw the shoulders and split off the cheeks",
		"bring the ends to size and trim them",
		"bore the tenon holes",
	}
}

// features returns the cuts and bores of a timber in the order of cutting,
// numbered from 1.
func features(f *geom.Frame, t *geom.Timber) []feature {
	var out []feature
	for i := range t.Cuts {
		out = append(out, cutFeature(f, t, &t.Cuts[i]))
	}
	for i := range t.Bores {
		out = append(out, boreFeature(f, t, &t.Bores[i]))
	}
	sort.SliceStable(out, func(i, k int) bool {
		a, b := out[i], out[k]
		switch {
		case a.stage != b.stage:
			return a.stage < b.stage
		case math.Abs(a.from-b.from) > 0.1:
			return a.from < b.from
		}
		return a.face < b.face
	})
	for i := range out {
		out[i].n = i + 1
	}
	return out
}

// offArris returns how far a point lies off the arris that the layout across
// face n starts from: from face 2 on the faces 1 and 3, from face 1 on the faces
// 2 and 4.
func offArris(n int, p vec.V) float64 {
	if n%2 == 1 {
		return p.Z
	}
	return p.Y
}

// faceWidth returns the width of face n.
func faceWidth(t *geom.Timber, n int) float64 {
	y, z := t.BlankSize()
	if n%2 == 1 {
		return z
	}
	return y
}

// widthAt returns the width of face n at a place along a stick that may taper.
func widthAt(t *geom.Timber, n int, x float64) float64 {
	if n%2 == 1 {
		pl := t.BlankPlane(4)
		return (pl.D - pl.N.X*x) / pl.N.Z
	}
	pl := t.BlankPlane(3)
	return (pl.D - pl.N.X*x) / pl.N.Y
}

func cutFeature(f *geom.Frame, t *geom.Timber, c *geom.Cut) feature {
	j := f.Joint(c.Joint)
	r := feature{what: c.Name, joint: j, into: j != nil && j.Into == t, rest: math.NaN(), bevel: scene.BevelOf(t, c)}
	r.face, r.through = entered(t, c.Solid, j)
	r.stage = stageOf(c.Solid, r)
	// Open sides of a cut are closed beyond the blank: only what is wood is told.
	wood := solid.Common(t.Blank, c.Solid)
	lo, hi := wood.Bounds()
	if r.face == 0 {
		r.from, r.to = lo.X, hi.X
		return r
	}
	pl := t.BlankPlane(r.face)
	for _, v := range wood.V {
		r.deep = max(r.deep, -pl.Height(v))
	}
	if r.through {
		y, z := t.BlankSize()
		r.deep = [2]float64{z, y}[r.face%2]
	} else if r.face > 2 {
		r.rest = [2]float64{lo.Z, lo.Y}[r.face%2]
	}
	if r.into && !c.Solid.HasRole(geom.RoleBearing) && j.LetIn > 0.01 && j.LetIn < r.deep-0.01 && r.face == j.Entered {
		r.floor = j.LetIn
	}
	// At the face, not at the bearing: a mortise is chopped while the face over
	// it is whole, and a side that slants lies elsewhere farther down.
	r.mouth = mouthOf(t, wood, r.face)
	b := draw.NoBox().With(r.mouth...)
	if b.Empty() {
		b = draw.Box{Min: vec.P{X: lo.X, Y: offArris(r.face, lo)}, Max: vec.P{X: hi.X, Y: offArris(r.face, hi)}}
	}
	r.from, r.to, r.lo, r.hi = b.Min.X, b.Max.X, b.Min.Y, b.Max.Y
	r.across = max(widthAt(t, r.face, r.from), widthAt(t, r.face, r.to))
	return r
}

// stageOf returns the stage in which a cut is made.
func stageOf(c solid.Convex, r feature) int {
	switch {
	case c.HasRole(geom.RoleSeat) || c.HasRole(geom.RoleTable) || c.HasRole(geom.RoleButt):
		return 3
	case c.HasRole(geom.RoleReduced) || r.face == 0:
		return 5
	case c.HasRole(geom.RoleShoulder) || c.HasRole(geom.RoleCheek):
		return 4
	case r.into && c.HasRole(geom.RoleBearing):
		return 2
	case r.into && c.HasRole(geom.RoleFloor) && r.deep > 0:
		return 1
	case r.into:
		return 1
	}
	return 4
}

// entered returns the face from which a cut is made: the one that it is open to
// while it stops short of the opposite one; of several the one that the joint
// enters, else the one from which it is shallowest. A cut open to two opposite
// faces goes through. 0 stands for a cut across a whole end.
func entered(t *geom.Timber, c solid.Convex, j *geom.Joint) (face int, through bool) {
	y, z := t.BlankSize()
	lo, hi := c.Bounds()
	const tol = 0.01
	open := [5]bool{false, lo.Y < -tol, lo.Z < -tol, hi.Y > y+tol, hi.Z > z+tol}
	deep := [5]float64{0, hi.Y, hi.Z, y - lo.Y, z - lo.Z}
	for n := 1; n <= 4; n++ {
		if !open[n] || open[geom.Opposite(n)] {
			continue
		}
		mine := j != nil && j.Into == t && j.Entered == n
		if face == 0 || mine || deep[n] < deep[face]-tol && !(j != nil && j.Into == t && j.Entered == face) {
			face = n
		}
	}
	if face > 0 {
		return face, false
	}
	all := open[1] && open[2] && open[3] && open[4]
	for n := 1; n <= 2 && !all; n++ {
		if open[n] && open[n+2] {
			if j != nil && j.Into == t && (j.Entered == n || j.Entered == n+2) {
				return j.Entered, true
			}
			face = n
		}
	}
	return face, face > 0
}

// mouthOf returns the outline of a cut, clipped to the blank, in face n, as
// coordinates along the timber and off the arris.
func mouthOf(t *geom.Timber, wood solid.Convex, n int) []vec.P {
	pl := t.BlankPlane(n)
	var out []vec.P
	for _, f := range wood.Faces {
		if f.Plane.N.Dot(pl.N) < 1-1e-9 || math.Abs(pl.Height(wood.V[f.Loop[0]])) > 1e-3 {
			continue
		}
		for _, a := range f.Loop {
			out = append(out, vec.P{X: wood.V[a].X, Y: offArris(n, wood.V[a])})
		}
	}
	return out
}

func boreFeature(f *geom.Frame, t *geom.Timber, b *geom.Bore) feature {
	j := f.Joint(b.Joint)
	r := feature{what: "bore", joint: j, into: j != nil && j.Into == t, face: b.Entry, bore: b, rest: math.NaN()}
	if !r.into {
		r.stage = 6
	}
	if b.Entry < 1 || b.Entry > 4 {
		r.from, r.to = b.From.X, b.From.X
		return r
	}
	p := piercing(t.BlankPlane(b.Entry), *b)
	r.across = faceWidth(t, b.Entry)
	r.from, r.to = p.X, p.X
	r.lo = offArris(b.Entry, p)
	r.hi = r.lo
	r.through = b.Exit > 0
	w := list.Locate(t, *b)
	r.deep, r.lean = w.Depth, w.Lean
	if r.lean > leaning {
		r.leans = leansTo(t, b)
	}
	return r
}

// leaning is the least lean of a bore that is told, degrees: what a degree's tenth
// shows.
const leaning = 0.05

// leansTo names what a bit that leans goes toward: an end, or another face than the
// one opposite.
func leansTo(t *geom.Timber, b *geom.Bore) string {
	d := b.To.Sub(b.From).Unit()
	best, to := math.Abs(d.X), "the start end"
	if d.X > 0 {
		to = "the other end"
	}
	for n := 1; n <= 4; n++ {
		if h := d.Dot(t.IdealPlane(n).N); n%2 != b.Entry%2 && h > best {
			best, to = h, fmt.Sprintf("face %d", n)
		}
	}
	return to
}

// piercing returns where a bore's axis passes through a plane.
func piercing(pl solid.Plane, b geom.Bore) vec.V {
	h, k := pl.Height(b.From), pl.Height(b.To)
	if math.Abs(h-k) < 1e-9 {
		return b.From
	}
	return b.From.Lerp(b.To, h/(h-k))
}
