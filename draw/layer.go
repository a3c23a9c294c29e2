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
	type run struct{ layer, end int }   // items of one layer, up to the one before end
	var runs []run
	for from := 0; from < len(s.Items); {
		name := s.Items[from].Head().LayerName()
		k := slices.Index(names, name)
		if k < 0 {
			k, names, size = len(names), append(names, name), append(size, 0)
		}
		end := from + 1
		for end < len(s.Items) && s.Items[end].Head().LayerName() == name {
			end++
		}
		size[k] += end - from
		runs = append(runs, run{k, end})
		from = end
	}
	all, room := make([]Layer, len(names)), make([]Item, len(s.Items))
	for k, n := range names {
		all[k], room = Layer{n, room[:0:size[k]]}, room[size[k]:]
	}
	from := 0
	for _, r := range runs {
		l := &all[r.layer]
		l.Items = append(l.Items, s.Items[from:r.end]...)
		from = r.end
	}
	ordered := slices.Concat(all[:lines], all[usual:], all[lines:usual])
	return slices.DeleteFunc(ordered, func(l Layer) bool { return len(l.Items) == 0 })
}
