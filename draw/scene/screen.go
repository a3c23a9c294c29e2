package scene

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/view"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// screen is what may stand before a viewer.
type screen struct {
	walls []wall
	all   []int // of the walls
	cam   view.Camera
	last  int // the wall that hid a point last, and may hide the next
}

// wall is a convex cell as it stands before the viewer.
type wall struct {
	cell  solid.Convex
	steep []float64 // of each face, how it looks at the viewer: 1 squarely
	box   draw.Box  // in the picture, a little larger than the cell
	near  float64   // how near it comes to the viewer
}

// screenOf returns the cells as a screen, which must face a camera before it is
// asked.
func screenOf(cells []solid.Convex) *screen {
	s := &screen{walls: make([]wall, len(cells)), all: make([]int, len(cells))}
	for i, c := range cells {
		s.all[i] = i
		s.walls[i] = wall{cell: c, steep: make([]float64, len(c.Faces))}
	}
	return s
}

// face sets the walls before a camera, where they do not stand there already.
func (s *screen) face(c view.Camera) {
	if s.cam == c {
		return
	}
	s.cam = c
	for i := range s.walls {
		w := &s.walls[i]
		for k, f := range w.cell.Faces {
			w.steep[k] = f.Plane.N.Dot(c.Toward)
		}
		w.box, w.near = draw.NoBox(), math.Inf(-1)
		for _, v := range w.cell.V {
			w.box, w.near = w.box.With(c.Project(v)), max(w.near, c.Depth(v))
		}
		w.box.Min, w.box.Max = w.box.Min.Sub(vec.At(1e-3, 1e-3)), w.box.Max.Add(vec.At(1e-3, 1e-3))
	}
}

// clear reports whether nothing stands between p and the viewer. All that can are
// some of the walls.
func (s *screen) clear(p vec.V, some []int) bool {
	if len(some) == 0 {
		return true
	}
	at, depth := s.cam.Project(p), s.cam.Depth(p)
	if s.walls[s.last].hides(p, at, depth) {
		return false
	}
	for _, i := range some {
		if s.walls[i].hides(p, at, depth) {
			s.last = i
			return false
		}
	}
	return true
}

// hides reports whether the way from p, which lies at a place in the picture and
// at a depth, leads through the wall on its way to the viewer.
func (w *wall) hides(p vec.V, at vec.P, depth float64) bool {
	if depth > w.near || at.X < w.box.Min.X || at.X > w.box.Max.X || at.Y < w.box.Min.Y || at.Y > w.box.Max.Y {
		return false
	}
	lo, hi := 1e-3, math.Inf(1)
	for i := range w.cell.Faces {
		h, k := w.cell.Faces[i].Plane.Height(p), w.steep[i]
		switch {
		case math.Abs(k) < 1e-12:
			if h > -1e-6 {
				return false
			}
		case k > 0:
			hi = min(hi, -h/k)
		default:
			lo = max(lo, -h/k)
		}
		if hi-lo <= 1e-6 {
			return false
		}
	}
	return true
}
