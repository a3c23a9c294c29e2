// Package measured reads finished sheets back, for tests: PDF through PDFium, a
// renderer of its own, and SVG through encoding/xml. What comes out is what is
// on the paper, in millimetres with y up, to be held against the numbers that
// were meant.
//
// It imports nothing of the renderers.
package measured

import (
	"math"
	"strings"

	"pegwright/geom/vec"
)

// Page is one page as it was read. All lengths are millimetres on paper, y up,
// origin lower left. The lists keep the painting order.
type Page struct {
	W, H    float64
	Paths   []Path   // everything drawn that is not a full circle
	Circles []Circle // full circles
	Texts   []Text
}

// Keys are the keys of an item; PDF has none of them, SVG those that were set.
type Keys struct{ Mark, Owner, Class, Layer string }

// Stroke is how a shape was painted: StrokeWidth 0 means not stroked, Dash nil
// a continuous line.
type Stroke struct {
	StrokeWidth float64
	Dash        []float64
	Filled      bool
}

// Seg is one piece of a path: to P by a move ('M'), a line ('L'), or a curve
// ('C', with control points C1 and C2).
type Seg struct {
	Op     byte
	P      vec.P
	C1, C2 vec.P
}

// Path is a shape of lines and curves.
type Path struct {
	Keys
	Stroke
	Segs   []Seg
	Closed bool
}

// Points returns the end points of all segments in order.
func (p Path) Points() []vec.P {
	out := make([]vec.P, len(p.Segs))
	for i, s := range p.Segs {
		out[i] = s.P
	}
	return out
}

// Circle is a full circle. Off is how far the curve that was read leaves it.
type Circle struct {
	Keys
	Stroke
	C      vec.P
	R, Off float64
}

// Text is a run of text: its start on the base line, its em size and its turn
// (radians). W and H are the box of its ink along the paper's sides, 0 where it
// is not known (SVG).
type Text struct {
	Keys
	S          string
	X, Y       float64
	Size, Turn float64
	W, H       float64
}

// Line is a straight piece of a path.
type Line struct {
	Keys
	Stroke
	A, B vec.P
}

// Lines returns all straight pieces of all paths that are stroked, closing
// pieces included.
func (p Page) Lines() []Line {
	var out []Line
	for _, path := range p.Paths {
		if path.StrokeWidth == 0 {
			continue
		}
		var at, start vec.P
		add := func(to vec.P) {
			if to != at {
				out = append(out, Line{path.Keys, path.Stroke, at, to})
			}
		}
		for _, s := range path.Segs {
			switch s.Op {
			case 'M':
				start = s.P
			case 'L':
				add(s.P)
			}
			at = s.P
		}
		if path.Closed {
			add(start)
		}
	}
	return out
}

// Near returns the distance from c to the nearest circle centre with a radius
// within 0.02 mm of r, and that circle; +Inf if there is none.
func (p Page) Near(c vec.P, r float64) (float64, Circle) {
	best, which := math.Inf(1), Circle{}
	for _, k := range p.Circles {
		if d := k.C.Dist(c); math.Abs(k.R-r) <= 0.02 && d < best {
			best, which = d, k
		}
	}
	return best, which
}

// Marked returns the circles and paths that carry the mark.
func (p Page) Marked(mark string) (circles []Circle, paths []Path) {
	for _, c := range p.Circles {
		if c.Mark == mark {
			circles = append(circles, c)
		}
	}
	for _, q := range p.Paths {
		if q.Mark == mark {
			paths = append(paths, q)
		}
	}
	return circles, paths
}

// Text returns all text of the page in painting order, runs joined by nothing.
func (p Page) Text() string {
	var b strings.Builder
	for _, t := range p.Texts {
		b.WriteString(t.S)
	}
	return b.String()
}

// Says reports whether the page's text has s in it, white space apart and with
// every fraction slash read as a plain stroke.
func (p Page) Says(s string) bool { return strings.Contains(squeeze(p.Text()), squeeze(s)) }

func squeeze(s string) string {
	return strings.ReplaceAll(strings.Join(strings.Fields(s), ""), "⁄", "/")
}
