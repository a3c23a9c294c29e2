package draw

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
	of := map[string][]Item{}
	before, after := painted()
	known := map[string]bool{}
	for _, n := range append(before[:len(before):len(before)], after...) {
		known[n] = true
	}
	order := before
	for _, it := range s.Items {
		n := it.Head().LayerName()
		if !known[n] {
			known[n] = true
			order = append(order, n)
		}
		of[n] = append(of[n], it)
	}
	var out []Layer
	for _, n := range append(order, after...) {
		if len(of[n]) > 0 {
			out = append(out, Layer{n, of[n]})
		}
	}
	return out
}
