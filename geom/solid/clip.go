package solid

import (
	"math"

	"pegwright/geom/vec"
)

// Side is one plane of a cut with the role of the face that it makes.
type Side struct {
	Plane Plane
	Role  string
}

// Inside returns the part of c behind every side. Faces made by a side carry
// its role; faces of c keep theirs.
func (c Convex) Inside(sides ...Side) Convex {
	for _, s := range sides {
		c = c.Clip(s.Plane, s.Role)
		if c.Empty() {
			return c
		}
	}
	return c
}

// Clip returns the part of c behind pl; the new face, if any, carries role. A
// face of c that already lies on pl takes the role when it had none.
func (c Convex) Clip(pl Plane, role string) Convex {
	return c.behind(Face{Plane: pl, Role: role})
}

// behind is Clip by the plane of a face: the new face is like that one.
func (c Convex) behind(by Face) Convex {
	var room [64]float64
	h, in, out := c.heights(by.Plane, room[:0])
	switch {
	case in <= 0:
		return Convex{}
	case out <= 0:
		return c.named(by.Plane, by.Role, h)
	}
	r, ok := clipped(c, h, by)
	if !ok {
		// The plane is within rounding of only touching c: keep the greater side.
		if in > out {
			return c
		}
		return Convex{}
	}
	return r
}

// heights appends the signed heights of the vertices over pl to h, those within
// Snap set to 0, and returns how far c reaches behind (in) and in front of (out)
// pl.
func (c Convex) heights(pl Plane, h []float64) (heights []float64, in, out float64) {
	for _, p := range c.V {
		d := pl.Height(p)
		if math.Abs(d) <= Snap {
			d = 0
		}
		h = append(h, d)
		in, out = max(in, 0-d), max(out, d)
	}
	return h, in, out
}

// named gives the face of c that lies wholly on pl its role.
func (c Convex) named(pl Plane, role string, h []float64) Convex {
	if role == "" {
		return c
	}
	for i, f := range c.Faces {
		on := f.Plane.N.Dot(pl.N) > 0 && f.Role == ""
		for _, v := range f.Loop {
			on = on && h[v] == 0
		}
		if on {
			faces := append([]Face(nil), c.Faces...)
			faces[i].Role = role
			return Convex{c.V, faces}
		}
	}
	return c
}

// clipper splits one convex volume by a plane. What it works with is dropped when
// that is done and can live on the stack: that is why its slices have their length
// from the start.
type clipper struct {
	src   Convex
	h     []float64 // heights of the vertices of src
	remap []int     // vertex of src -> vertex of v, -1 when not kept
	made  [][3]int  // edges of src that cross: lesser end, greater end, new vertex
	cross int       // how many there are of them
	v     []vec.V   // vertices of what is kept
	on    []bool    // per vertex of v: lies on the plane
	n     int       // and how many of them
	lost  bool      // some of v belong to no face that is kept
}

// room returns n zeros, in the place given where that is large enough.
func room[T any](place []T, n int) []T {
	if n <= len(place) {
		return place[:n]
	}
	return make([]T, n)
}

// clipped returns the part of c behind the plane of a face, h being the heights
// of its vertices, or false when rounding leaves its rim open.
func clipped(c Convex, h []float64, by Face) (Convex, bool) {
	sides, corners, level, crossings := c.count(h)
	var remap, next [64]int
	var made [48][3]int
	var on [96]bool
	v := make([]vec.V, corners+crossings)
	k := clipper{src: c, h: h, remap: room(remap[:], len(c.V)), made: room(made[:], crossings),
		v: v, on: room(on[:], corners+crossings)}
	for i := range k.remap {
		k.remap[i] = -1
	}
	// The rim has no more corners than there are on the plane.
	loops, faces := make([]int, 0, sides+level+crossings), make([]Face, 0, len(c.Faces)+1)
	for _, f := range c.Faces {
		from, keep := len(loops), false
		loops, keep = k.face(f.Loop, loops)
		switch {
		case keep:
			faces = append(faces, Face{loops[from:len(loops):len(loops)], f.Plane, f.Role, f.flat})
		case len(loops) > from:
			loops, k.lost = loops[:from], true
		}
	}
	rim := walk(k.rim(faces, next[:0]), loops[len(loops):])
	if len(rim) < 3 || len(faces) < 3 {
		return Convex{}, false
	}
	r := Convex{v[:k.n], append(faces, Face{rim, by.Plane, by.Role, by.flat})}
	if k.lost {
		return compact(r), true
	}
	return r, true
}

// count returns how many corners the loops of what is left of c at most have,
// how many of the vertices of c are kept, how many of them lie on the plane, and
// how many vertices at most come new.
func (c Convex) count(h []float64) (sides, corners, level, crossings int) {
	for _, x := range h {
		if x <= 0 {
			corners++
		}
		if x == 0 {
			level++
		}
	}
	for _, f := range c.Faces {
		last := h[f.Loop[len(f.Loop)-1]]
		for _, v := range f.Loop {
			x := h[v]
			if x <= 0 {
				sides++
			}
			if last < 0 && x > 0 || last > 0 && x < 0 {
				crossings++
			}
			last = x
		}
	}
	return sides + crossings, corners, level, crossings
}

// face appends what is left of a face to loop, and reports whether that is a
// face still: at least three vertices, not all of them on the plane.
func (k *clipper) face(src, loop []int) ([]int, bool) {
	n, all := len(loop), true
	for i, a := range src {
		b := src[0]
		if i+1 < len(src) {
			b = src[i+1]
		}
		ha, hb := k.h[a], k.h[b]
		if ha <= 0 {
			loop = append(loop, k.keep(a))
			all = all && ha == 0
		}
		if (ha < 0 && hb > 0) || (ha > 0 && hb < 0) {
			loop = append(loop, k.crossing(min(a, b), max(a, b)))
		}
	}
	return loop, len(loop)-n >= 3 && !all
}

// keep returns the vertex of v that stands for vertex a of src.
func (k *clipper) keep(a int) int {
	if k.remap[a] < 0 {
		k.remap[a] = k.add(k.src.V[a], k.h[a] == 0)
	}
	return k.remap[a]
}

// crossing returns the vertex of v where the edge a-b of src meets the plane.
func (k *clipper) crossing(a, b int) int {
	for _, m := range k.made[:k.cross] {
		if m[0] == a && m[1] == b {
			return m[2]
		}
	}
	v := k.add(k.src.V[a].Lerp(k.src.V[b], k.h[a]/(k.h[a]-k.h[b])), true)
	k.made[k.cross] = [3]int{a, b, v}
	k.cross++
	return v
}

func (k *clipper) add(p vec.V, on bool) int {
	k.v[k.n], k.on[k.n] = p, on
	k.n++
	return k.n - 1
}

// rim returns, for each vertex of v, the next in the loop of the new face, -1
// for none: the edges on the plane of the faces that are left, the other way
// round. next is room to work in.
func (k *clipper) rim(faces []Face, next []int) []int {
	for range k.n {
		next = append(next, -1)
	}
	for _, f := range faces {
		a := f.Loop[len(f.Loop)-1]
		for _, b := range f.Loop {
			if k.on[a] && k.on[b] {
				if next[a] == b { // both faces at this edge are behind the plane
					next[a] = -1
				} else {
					next[b] = a
				}
			}
			a = b
		}
	}
	return next
}

// walk appends to loop, which is empty, the members of next, from the lowest
// round to where it began. It returns nil when they do not close.
func walk(next, loop []int) []int {
	for start := range next {
		if next[start] < 0 {
			continue
		}
		for v := start; len(loop) <= len(next); {
			loop = append(loop, v)
			if v = next[v]; v < 0 {
				return nil
			}
			if v == start {
				return loop
			}
		}
		return nil
	}
	return nil
}

// compact returns c less the vertices that none of its faces uses; the others are
// numbered in the order in which the faces come to them. It changes the loops of
// the faces.
func compact(c Convex) Convex {
	var place [64]int
	used := room(place[:], len(c.V))
	v := make([]vec.V, 0, len(c.V))
	for _, f := range c.Faces {
		for i, k := range f.Loop {
			if used[k] == 0 {
				v = append(v, c.V[k])
				used[k] = len(v)
			}
			f.Loop[i] = used[k] - 1
		}
	}
	return Convex{v, c.Faces}
}

// Common returns the volume that a and b share.
func Common(a, b Convex) Convex {
	if b.Empty() {
		return b
	}
	for _, f := range b.Faces {
		a = a.Clip(f.Plane, f.Role)
		if a.Empty() {
			return a
		}
	}
	return a
}
