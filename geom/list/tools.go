package list

import (
	"math"
	"sort"

	"pegwright/geom"
)

// tool is one tool or one setting of a gauge and how often it serves.
type tool struct {
	kind   string // "bit", "chisel", "gauge"
	size   float64
	length float64 // least length, 0: none
	uses   int
	use    string
}

// Tools returns the bits by diameter with the depth that each must reach, the
// chisel widths that the mortises ask for, and the gauge settings from the
// reference face of the receivers to the mortises' two sides.
func Tools(f *geom.Frame) Table {
	length := lengthUnit(f.Units)
	t := Table{Name: "tools", Title: "Bits, chisels, gauges", Units: f.Units, Columns: []Column{
		{Name: "tool"},
		{Name: "size", Unit: length, kind: fine},
		{Name: "least length", Unit: length, kind: fine},
		{Name: "times used", kind: count},
		{Name: "for"},
	}}
	tools := append(bits(f), edges(f)...)
	for _, x := range tools {
		var least any
		if x.length > 0 {
			least = x.length
		}
		t.add(x.kind, x.size, least, x.uses, x.use)
	}
	t.Totals = []string{
		"a bit's least length is the deepest hole of its size along the bit, chuck and lead screw not counted; bored from both faces half of it serves",
		"a chisel is as wide as the mortise or narrower; gauges are set from the receiver's reference face to the two sides of the mortise",
	}
	return t
}

// bits returns one bit for each diameter, the largest first.
func bits(f *geom.Frame) []tool {
	var out []tool
	for _, t := range f.Timbers {
		for _, b := range t.Bores {
			depth := Locate(t, b).Depth
			if h := holeOf(f, t, b); h.thickness > 0 {
				depth = h.thickness
			}
			out = merge(out, tool{"bit", b.Diameter, depth, 1, "bores"})
		}
	}
	return out
}

// edges returns the chisels and the gauge settings of the mortises and slots
// that have two walls across from each other.
func edges(f *geom.Frame) []tool {
	var chisels, gauges []tool
	for _, j := range f.Joints {
		near, far, ok := walls(j)
		if !ok {
			continue
		}
		chisels = merge(chisels, tool{"chisel", far - near, 0, 1, "mortises of this width"})
		gauges = merge(gauges, tool{"gauge", near, 0, 1, "near side of mortises"})
		gauges = merge(gauges, tool{"gauge", far, 0, 1, "far side of mortises"})
	}
	return append(chisels, gauges...)
}

// walls returns how far the walls of a joint's mortise lie from the receiver's
// reference face, mm; ok is false where it has not two of them.
func walls(j *geom.Joint) (near, far float64, ok bool) {
	near, far = math.Inf(1), math.Inf(-1)
	for _, w := range j.Mortise.Faces {
		along := w.Plane.N.Dot(j.Axes.V)
		if w.Role != geom.RoleWall || math.Abs(along) < 1-1e-9 {
			continue
		}
		at := along*w.Plane.D - j.Axes.V.Dot(j.Axes.O)
		near, far = min(near, at), max(far, at)
	}
	return near, far, far > near
}

// merge counts a tool with those of its kind, size and use, and keeps them by
// size, the largest first.
func merge(all []tool, x tool) []tool {
	if !(x.size > 0) {
		return all
	}
	for i := range all {
		if near(all[i].size, x.size) && all[i].use == x.use {
			all[i].uses += x.uses
			all[i].length = math.Max(all[i].length, x.length)
			return all
		}
	}
	all = append(all, x)
	sort.SliceStable(all, func(i, j int) bool { return all[i].size > all[j].size+0.01 })
	return all
}
