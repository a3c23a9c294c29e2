package naming

import (
	"math"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// squares divide a picture, so that a point in it is asked about only where it
// lies: each has the numbers of the cells whose boxes reach into it, in order.
type squares struct {
	whole  draw.Box
	step   float64
	nx, ny int
	in     [][]int32
}

// mostSquares bounds the room that cells take that lie across all the picture.
const mostSquares = 2048

// squaresOf lays about as many squares as there are cells.
func squaresOf(cells []sightCell) squares {
	g := squares{whole: draw.NoBox()}
	for _, c := range cells {
		g.whole = g.whole.With(c.box.Min, c.box.Max)
	}
	w, h := g.whole.W(), g.whole.H()
	n := float64(min(len(cells), mostSquares))
	if g.step = max(math.Sqrt(w*h/n), max(w, h)/n); !(g.step > 0) {
		return g // no cells, or none that shows
	}
	g.nx, g.ny = int(w/g.step)+1, int(h/g.step)+1
	g.in = make([][]int32, g.nx*g.ny)
	for i, c := range cells {
		x0, y0 := g.place(c.box.Min)
		x1, y1 := g.place(c.box.Max)
		for y := y0; y <= y1; y++ {
			for x := x0; x <= x1; x++ {
				g.in[y*g.nx+x] = append(g.in[y*g.nx+x], int32(i))
			}
		}
	}
	return g
}

// place returns the column and the row of a point of the picture.
func (g *squares) place(p vec.P) (x, y int) {
	p = p.Sub(g.whole.Min).Mul(1 / g.step)
	return min(int(p.X), g.nx-1), min(int(p.Y), g.ny-1)
}

// at returns the numbers of the cells that may cover a point.
func (g *squares) at(p vec.P) []int32 {
	if len(g.in) == 0 || !covers(g.whole, p) {
		return nil
	}
	x, y := g.place(p)
	return g.in[y*g.nx+x]
}
