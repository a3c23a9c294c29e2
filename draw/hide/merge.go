package hide

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"pegwright/geom/vec"
)

// Line is a straight piece on paper. Where lines lie on each other the one
// with the least Rank is kept (0 for visible lines, a greater number for
// hidden ones), and of equal ranks the one with the least Owner.
type Line struct {
	A, B        vec.P // its ends, paper mm
	Rank, Owner int
}

// parallel is the angle in radians under which two lines have one direction:
// over the length of a sheet that is less than the rounding of a drawing.
const parallel = 1e-6

// Merge returns the lines with overlapping collinear pieces drawn once and
// pieces of one rank and owner that follow each other joined into one line.
// Lines nearer than tol (millimetres) beside each other are collinear, ends
// nearer than tol are one, and pieces shorter than tol are left out; 1e-3 mm,
// the rounding of a drawing, serves. The order of the result depends on the
// lines alone: by direction, then across, then along.
func Merge(lines []Line, tol float64) []Line {
	all := make([]placed, 0, len(lines))
	for _, l := range lines {
		if l.A.Dist(l.B) > tol {
			all = append(all, turned(l))
		}
	}
	all = sorted(all, func(p *placed) float64 { return p.angle })
	var out []Line
	for _, sheaf := range runs(all, func(p placed) float64 { return p.angle }, parallel) {
		d := longest(sheaf)
		for i := range sheaf {
			p := &sheaf[i]
			p.lo, p.hi = d.Dot(p.A), d.Dot(p.B)
			p.off = d.Cross(p.A.Lerp(p.B, 0.5))
		}
		sheaf = sorted(sheaf, func(p *placed) float64 { return p.off })
		for _, row := range runs(sheaf, func(p placed) float64 { return p.off }, tol) {
			out = append(out, sweep(row, tol)...)
		}
	}
	return out
}

// sorted returns the lines by key, equal ones as they stood.
func sorted(all []placed, key func(*placed) float64) []placed {
	type entry struct {
		key float64
		i   int
	}
	order := make([]entry, len(all))
	for i := range all {
		order[i] = entry{key(&all[i]), i}
	}
	slices.SortFunc(order, func(a, b entry) int {
		if c := cmp.Compare(a.key, b.key); c != 0 {
			return c
		}
		return a.i - b.i
	})
	out := make([]placed, len(all))
	for k, e := range order {
		out[k] = all[e.i]
	}
	return out
}

// placed is a line turned so that its direction lies in the half circle from
// seam, with its place across and along the direction of its sheaf.
type placed struct {
	Line
	angle, off, lo, hi float64
}

// seam is where the half circle of directions is cut open: an angle that lines
// of a building hardly ever have.
const seam = -0.01234

func turned(l Line) placed {
	d := l.B.Sub(l.A)
	a := math.Atan2(d.Y, d.X)
	if a < seam || a >= seam+math.Pi {
		l.A, l.B = l.B, l.A
		if a < seam {
			a += math.Pi
		} else {
			a -= math.Pi
		}
	}
	return placed{Line: l, angle: a}
}

// runs cuts a sorted list where neighbours differ by more than tol.
func runs(all []placed, key func(placed) float64, tol float64) [][]placed {
	var out [][]placed
	from := 0
	for i := 1; i <= len(all); i++ {
		if i == len(all) || key(all[i])-key(all[i-1]) > tol {
			out = append(out, all[from:i])
			from = i
		}
	}
	return out
}

// longest returns the direction of the longest line.
func longest(sheaf []placed) vec.P {
	var d vec.P
	for _, p := range sheaf {
		if e := p.B.Sub(p.A); e.Len() > d.Len()+1e-9 {
			d = e
		}
	}
	return d.Unit()
}

// stop is an end of a piece along its row.
type stop struct {
	at float64
	p  vec.P
}

// sweep merges the lines of one row.
func sweep(row []placed, tol float64) []Line {
	stops := stopsOf(row, tol)
	find := func(x float64) int { // the stop nearest to x
		i := sort.Search(len(stops), func(i int) bool { return stops[i].at > x+tol })
		return max(i-1, 0)
	}
	starts, ends := make([][]int, len(stops)), make([][]int, len(stops))
	for i, p := range row {
		if a, b := find(p.lo), find(p.hi); a < b {
			starts[a] = append(starts[a], i)
			ends[b] = append(ends[b], i)
		}
	}
	var out []Line
	var active []int
	open := false // the last line of out ends at this stop
	for k := 0; k+1 < len(stops); k++ {
		active = slices.DeleteFunc(active, func(i int) bool { return slices.Contains(ends[k], i) })
		active = append(active, starts[k]...)
		if len(active) == 0 {
			open = false
			continue
		}
		b := row[best(row, active)]
		if n := len(out); open && out[n-1].Rank == b.Rank && out[n-1].Owner == b.Owner {
			out[n-1].B = stops[k+1].p
		} else {
			out = append(out, Line{stops[k].p, stops[k+1].p, b.Rank, b.Owner})
		}
		open = true
	}
	return out
}

// best returns the active line that is drawn.
func best(row []placed, active []int) int {
	b := active[0]
	for _, i := range active[1:] {
		if row[i].Rank < row[b].Rank || row[i].Rank == row[b].Rank && row[i].Owner < row[b].Owner {
			b = i
		}
	}
	return b
}

// stopsOf returns the different ends of the lines of a row, in order.
func stopsOf(row []placed, tol float64) []stop {
	ends := make([]stop, 0, 2*len(row))
	for _, p := range row {
		ends = append(ends, stop{p.lo, p.A}, stop{p.hi, p.B})
	}
	slices.SortStableFunc(ends, func(a, b stop) int { return cmp.Compare(a.at, b.at) })
	out := ends[:1]
	for _, e := range ends[1:] {
		if e.at-out[len(out)-1].at > tol {
			out = append(out, e)
		}
	}
	return out
}
