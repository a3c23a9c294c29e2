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
	k := sorter{make([]entry, len(all)), make([]placed, len(all))}
	k.sort(all, func(p *placed) float64 { return p.angle })
	out := make([]Line, 0, len(all))
	for len(all) > 0 {
		n := run(all, func(p *placed) float64 { return p.angle }, parallel)
		sheaf := all[:n]
		all = all[n:]
		d := longest(sheaf)
		for i := range sheaf {
			p := &sheaf[i]
			p.lo, p.hi = d.Dot(p.A), d.Dot(p.B)
			p.off = d.Cross(p.A.Lerp(p.B, 0.5))
		}
		k.sort(sheaf, func(p *placed) float64 { return p.off })
		for len(sheaf) > 0 {
			n := run(sheaf, func(p *placed) float64 { return p.off }, tol)
			out = sweep(out, sheaf[:n], tol)
			sheaf = sheaf[n:]
		}
	}
	return out
}

// sorter sorts lines. Its lists are room for as many as it is given.
type sorter struct {
	order []entry
	lines []placed
}

// entry is where a line stood, and what it is sorted by.
type entry struct {
	key float64
	i   int
}

// sort sorts the lines by key, equal ones as they stood.
func (k *sorter) sort(all []placed, key func(*placed) float64) {
	order, done := k.order[:len(all)], true
	for i := range all {
		order[i] = entry{key(&all[i]), i}
		done = done && (i == 0 || order[i-1].key <= order[i].key)
	}
	if done {
		return
	}
	slices.SortFunc(order, func(a, b entry) int {
		if c := cmp.Compare(a.key, b.key); c != 0 {
			return c
		}
		return a.i - b.i
	})
	stood := k.lines[:len(all)]
	copy(stood, all)
	for i, e := range order {
		all[i] = stood[e.i]
	}
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

// run returns how many lines of a sorted list, one or more, come before two
// neighbours that differ by more than tol.
func run(all []placed, key func(*placed) float64, tol float64) int {
	n := 1
	for n < len(all) && !(key(&all[n])-key(&all[n-1]) > tol) {
		n++
	}
	return n
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

// piece is a line of a row between two of its stops, the lesser first.
type piece struct{ from, to, rank, owner int }

// sweep appends the merged lines of one row to out.
func sweep(out []Line, row []placed, tol float64) []Line {
	if len(row) == 1 {
		if p := &row[0]; p.hi-p.lo > tol {
			out = append(out, p.Line)
		}
		return out
	}
	stops := stopsOf(row, tol)
	var active []piece
	open := false // the last line of out ends at this stop
	coming := piecesOf(row, stops, tol)
	for k := 0; k+1 < len(stops); k++ {
		active = slices.DeleteFunc(active, func(p piece) bool { return p.to == k })
		for len(coming) > 0 && coming[0].from == k {
			active, coming = append(active, coming[0]), coming[1:]
		}
		if len(active) == 0 {
			open = false
			continue
		}
		b := slices.MinFunc(active, func(p, q piece) int { return cmp.Or(p.rank-q.rank, p.owner-q.owner) })
		if n := len(out); open && out[n-1].Rank == b.rank && out[n-1].Owner == b.owner {
			out[n-1].B = stops[k+1].p
		} else {
			out = append(out, Line{stops[k].p, stops[k+1].p, b.rank, b.owner})
		}
		open = true
	}
	return out
}

// piecesOf returns the lines of a row that reach over a stop, in the order in
// which they begin.
func piecesOf(row []placed, stops []stop, tol float64) []piece {
	find := func(x float64) int { // the stop nearest to x
		i := sort.Search(len(stops), func(i int) bool { return stops[i].at > x+tol })
		return max(i-1, 0)
	}
	out := make([]piece, 0, len(row))
	for i := range row {
		p := &row[i]
		if a, b := find(p.lo), find(p.hi); a < b {
			out = append(out, piece{a, b, p.Rank, p.Owner})
		}
	}
	slices.SortFunc(out, func(p, q piece) int { return p.from - q.from })
	return out
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
