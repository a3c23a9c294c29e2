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
	h, in, out := c.heights(pl)
	switch {
	case in <= 0:
		return Convex{}
	case out <= 0:
		return c.named(pl, role, h)
	}
	k := clipper{src: c, h: h}
	r, ok := k.clip(pl, role)
	if !ok {
		// The plane is within rounding of only touching c: keep the greater side.
		if in > out {
			return c
		}
		return Convex{}
	}
	return r
}

// heights returns the signed heights of the vertices over pl, those within
// Snap set to 0, and how far c reaches behind (in) and in front of (out) pl.
func (c Convex) heights(pl Plane) (h []float64, in, out float64) {
	h = make([]float64, len(c.V))
	for i, p := range c.V {
		d := pl.Height(p)
		if math.Abs(d) <= Snap {
			d = 0
		}
		h[i] = d
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

// clipper splits one convex volume by a plane and keeps the part behind.
type clipper struct {
	src   Convex
	h     []float64 // heights of the vertices of src
	remap []int     // vertex of src -> vertex of out, -1 when not kept
	made  [][3]int  // edges of src that cross: lesser end, greater end, new vertex
	on    []bool    // per vertex of out: lies on the plane
	out   Convex
}

// clip returns the part behind pl, or false when rounding leaves its rim open.
func (k *clipper) clip(pl Plane, role string) (Convex, bool) {
	k.remap = make([]int, len(k.src.V))
	for i := range k.remap {
		k.remap[i] = -1
	}
	for _, f := range k.src.Faces {
		if loop, keep := k.face(f.Loop); keep {
			k.out.Faces = append(k.out.Faces, Face{loop, f.Plane, f.Role})
		}
	}
	rim := k.rim()
	if len(rim) < 3 || len(k.out.Faces) < 3 {
		return Convex{}, false
	}
	k.out.Faces = append(k.out.Faces, Face{rim, pl, role})
	return k.out.compact(), true
}

// face returns what is left of a face, and whether it is a face still: at
// least three vertices, not all of them on the plane.
func (k *clipper) face(src []int) ([]int, bool) {
	loop := make([]int, 0, len(src)+1)
	all := true
	for i, a := range src {
		b := src[(i+1)%len(src)]
		if k.h[a] <= 0 {
			loop = append(loop, k.keep(a))
			all = all && k.h[a] == 0
		}
		if (k.h[a] < 0 && k.h[b] > 0) || (k.h[a] > 0 && k.h[b] < 0) {
			loop = append(loop, k.crossing(min(a, b), max(a, b)))
		}
	}
	return loop, len(loop) >= 3 && !all
}

// keep returns the vertex of out that stands for vertex a of src.
func (k *clipper) keep(a int) int {
	if k.remap[a] < 0 {
		k.remap[a] = k.add(k.src.V[a], k.h[a] == 0)
	}
	return k.remap[a]
}

// crossing returns the vertex of out where the edge a-b of src meets the plane.
func (k *clipper) crossing(a, b int) int {
	for _, m := range k.made {
		if m[0] == a && m[1] == b {
			return m[2]
		}
	}
	v := k.add(k.src.V[a].Lerp(k.src.V[b], k.h[a]/(k.h[a]-k.h[b])), true)
	k.made = append(k.made, [3]int{a, b, v})
	return v
}

func (k *clipper) add(p vec.V, on bool) int {
	k.out.V = append(k.out.V, p)
	k.on = append(k.on, on)
	return len(k.out.V) - 1
}

// rim returns the loop of the new face: the edges on the plane of the faces
// that are left, the other way round. It is nil when they do not close.
func (k *clipper) rim() []int {
	next := make([]int, len(k.out.V))
	for i := range next {
		next[i] = -1
	}
	for _, f := range k.out.Faces {
		for i, a := range f.Loop {
			b := f.Loop[(i+1)%len(f.Loop)]
			if !k.on[a] || !k.on[b] {
				continue
			}
			if next[a] == b { // both faces at this edge are behind the plane
				next[a] = -1
			} else {
				next[b] = a
			}
		}
	}
	return walk(next)
}

// walk follows next from its lowest member round to where it began.
func walk(next []int) []int {
	var loop []int
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

// compact drops vertices that no face uses.
func (c Convex) compact() Convex {
	used := make([]int, len(c.V))
	for i := range used {
		used[i] = -1
	}
	r := Convex{V: make([]vec.V, 0, len(c.V)), Faces: make([]Face, 0, len(c.Faces))}
	for _, f := range c.Faces {
		for i, v := range f.Loop {
			if used[v] < 0 {
				used[v] = len(r.V)
				r.V = append(r.V, c.V[v])
			}
			f.Loop[i] = used[v]
		}
		r.Faces = append(r.Faces, f)
	}
	return r
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
