package list

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// pieceRow is one size of wedge or key and the joints that want it.
type pieceRow struct {
	kind        string
	length      float64
	head, point [2]float64 // greatest and least size across, at the driven end and at the other
	count       int
	marks       []string
}

// Wedges returns the wedges and keys to make, one row a size: by kind, then by
// length. Sizes are as driven home, lengths in millimetres; a wedge driven
// farther than that must be made longer.
func Wedges(f *geom.Frame) Table {
	t := Table{Name: "wedges", Title: "Wedges and keys", Units: f.Units, Columns: []Column{
		{Name: "kind"},
		{Name: "length home", Unit: lengthUnit(f.Units), kind: fine},
		{Name: "head", Unit: smallUnit(f.Units), kind: section},
		{Name: "point", Unit: smallUnit(f.Units), kind: section},
		{Name: "make", kind: count},
		{Name: "joints"},
	}}
	all := 0
	for _, r := range wedgeRows(f) {
		all += r.count
		t.add(r.kind, r.length, r.head, r.point, r.count, joined(r.marks...))
	}
	t.Totals = []string{plural(all, "wedge or key")}
	if all > 1 {
		t.Totals = []string{fmt.Sprintf("%d wedges and keys", all)}
	}
	return t
}

func wedgeRows(f *geom.Frame) []pieceRow {
	var rows []pieceRow
	for _, j := range f.Joints {
		for _, p := range j.Pieces {
			r := sized(j, p)
			i := slices.IndexFunc(rows, r.like)
			if i < 0 {
				i = len(rows)
				rows = append(rows, r)
			}
			rows[i].count++
			if !slices.Contains(rows[i].marks, j.Mark) {
				rows[i].marks = append(rows[i].marks, j.Mark)
			}
		}
	}
	slices.SortStableFunc(rows, func(a, b pieceRow) int {
		return cmp.Or(cmp.Compare(a.kind, b.kind), cmp.Compare(a.length, b.length))
	})
	return rows
}

// like reports whether two pieces are made alike, to 0.01 mm.
func (r pieceRow) like(o pieceRow) bool {
	near := func(a, b float64) bool { return math.Abs(a-b) < 0.01 }
	return r.kind == o.kind && near(r.length, o.length) && near(r.head[0], o.head[0]) && near(r.head[1], o.head[1]) &&
		near(r.point[0], o.point[0]) && near(r.point[1], o.point[1])
}

// sized measures a piece along the way it is driven and across it at both ends,
// along the two axes of its joint that lie square to that way.
func sized(j *geom.Joint, p geom.Piece) pieceRow {
	r := pieceRow{kind: p.Kind}
	if len(p.Moves) == 0 {
		return r
	}
	d := p.Moves[len(p.Moves)-1].Direction
	lo, hi := p.Solid.Extent(d)
	r.length = hi - lo
	axes := []vec.V{j.Axes.U, j.Axes.V, j.Axes.W}
	slices.SortStableFunc(axes, func(a, b vec.V) int {
		return cmp.Compare(math.Round(1e6*math.Abs(a.Dot(d))), math.Round(1e6*math.Abs(b.Dot(d))))
	})
	for i, a := range axes[:2] {
		r.head[i], r.point[i] = acrossAt(p.Solid, d, lo, a), acrossAt(p.Solid, d, hi, a)
	}
	return r
}

// acrossAt is the size along a of the corners of c that lie at the end of c
// nearer to x along d.
func acrossAt(c solid.Convex, d vec.V, x float64, a vec.V) float64 {
	nearest := math.Inf(1)
	for _, v := range c.V {
		nearest = min(nearest, math.Abs(d.Dot(v)-x))
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range c.V {
		if math.Abs(d.Dot(v)-x) < nearest+1 {
			lo, hi = min(lo, a.Dot(v)), max(hi, a.Dot(v))
		}
	}
	return hi - lo
}
