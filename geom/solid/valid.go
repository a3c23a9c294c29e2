package solid

import (
	"fmt"
	"math"

	"pegwright/geom/vec"
)

// Flaw says why a body's boundary is not that of a solid, and where (mm, the
// body's axes).
type Flaw struct {
	At vec.V
	// Contact is true when two parts of the wood meet along an edge only: the
	// cells are sound, the timber would not be.
	Contact bool
	Text    string
}

// Error returns the flaw as one sentence.
func (f *Flaw) Error() string {
	return fmt.Sprintf("%s at %.3f, %.3f, %.3f mm", f.Text, f.At.X, f.At.Y, f.At.Z)
}

// looseness is how far (mm), on average over the surface, the volume that the
// boundary encloses may be from that of the cells.
const looseness = 1e-4

// Valid returns nil when the body is a sound solid: cells share no volume; at
// every edge of the boundary exactly two polygons meet, on two planes, whose
// directed edges sum to zero; the edges of every plane close into loops; and
// the boundary encloses the volume of the cells. Otherwise the error is a
// *Flaw; one that is a Contact comes last, so a Contact means that all else is
// sound.
func (b *Body) Valid() error {
	f := b.shape()
	if f.doubled != nil {
		return &Flaw{At: *f.doubled, Text: "cells overlap"}
	}
	if at, ok := f.loose(); ok {
		return &Flaw{At: at, Text: "the boundary is open"}
	}
	contact, flaw := f.corners()
	if flaw != nil {
		return flaw
	}
	lo, hi := b.Bounds()
	mid := lo.Lerp(hi, 0.5)
	var inside, surface float64
	polygons, _ := b.pieces()
	for _, p := range polygons {
		a := p.Area()
		surface += a
		inside -= float64(p.Plane.Height(mid) * a / 3)
	}
	if math.Abs(inside-b.Volume()) > looseness*surface {
		return &Flaw{At: mid, Text: "the boundary does not enclose the wood"}
	}
	if contact != nil {
		return contact
	}
	return nil
}

// loose returns a point where the edges of one flat do not close.
func (f *form) loose() (vec.V, bool) {
	type end struct {
		flat int
		v    int32
	}
	ends := map[end]int{}
	for _, r := range f.rims {
		ends[end{r.flat, r.a}]++
		ends[end{r.flat, r.b}]--
	}
	for _, r := range f.rims {
		for _, v := range [2]int32{r.a, r.b} {
			if ends[end{r.flat, v}] != 0 {
				return f.v[v], true
			}
		}
	}
	return vec.V{}, false
}

// corners looks at what meets along every edge: it returns the first edge at
// which wood only touches, and the first that is wrong.
func (f *form) corners() (contact, wrong *Flaw) {
	type tally struct{ count, sum, plane, planes int }
	at := make([]tally, f.edges)
	for _, r := range f.rims {
		t := &at[r.edge]
		t.count++
		t.sum += sign(float64(r.b - r.a))
		if t.planes == 0 || r.flat/2 != t.plane {
			t.plane = r.flat / 2
			t.planes++
		}
	}
	for _, r := range f.rims {
		t := at[r.edge]
		mid := f.v[r.a].Lerp(f.v[r.b], 0.5)
		switch {
		case t.sum != 0:
			return nil, &Flaw{At: mid, Text: "the boundary is open"}
		case t.count > 2 && contact == nil:
			contact = &Flaw{At: mid, Contact: true, Text: "two parts meet along an edge only"}
		case t.count == 2 && t.planes != 2:
			return nil, &Flaw{At: mid, Text: "an edge does not lie on two planes"}
		}
	}
	return contact, nil
}
