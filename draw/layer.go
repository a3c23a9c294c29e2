package draw

import "slices"

// Layer is a layer of a sheet: its name and its items.
type Layer struct {
	Name  string
	Items []Item
}

// LayerUnder is the layer of what lies under all of a sheet.
const LayerUnder = "under"

// painted returns the names of the layers that are painted before and after
// those with names of their own: lettering may back itself with white, so that
// all lines come before all lettering, and tones come before the lines.
func painted() (before, after []string) {
	before = []string{LayerUnder}
	for _, c := range Classes() {
		if c != TextClass {
			before = append(before, string(c))
		}
	}
	return before, []string{string(TextClass), "title"}
}

// Layers returns the layers of the sheet in the order in which they are painted,
// each name once; within a layer items keep their order. Layers are ordered as
// Classes are, under all of them LayerUnder, over all lines the lettering and
// last that of the title block; layers with other names come after the lines in
// the order in which the sheet has them. Every renderer paints in this order,
// and so all show one picture.
func (s *Sheet) Layers() []Layer {
	before, after := painted()
	names := append(before, after...)
	lines, usual := len(before), len(names)
	size := make([]int, usual, 2*usual) // how many items each layer has
	of := make([]int, len(s.Items))     // the layer of each item
	k := 0
	for i, it := range s.Items {
		if n := it.Head().LayerName(); n != names[k] { // most follow one of their own layer
			if k = slices.Index(names, n); k < 0 {
				k, names, size = len(names), append(names, n), append(size, 0)
			}
		}
		of[i] = k
		size[k]++
	}
	all := make([]Layer, len(names))
	room := make([]Item, len(s.Items))
	for k, n := range names {
		all[k], room = Layer{n, room[:0:size[k]]}, room[size[k]:]
	}
	for i, it := range s.Items {
		l := &all[of[i]]
		l.Items = append(l.Items, it)
	}
	ordered := slices.Concat(all[:lines], all[usual:], all[lines:usual])
	return slices.DeleteFunc(ordered, func(l Layer) bool { return len(l.Items) == 0 })
}
