package svg

import (
	"slices"
	"strconv"

	"pegwright/draw"
)

// items writes all items in painting order.
func (r *renderer) items() {
	for _, l := range r.sheet.Layers() {
		r.text = appendValue(append(r.text, `<g id="`...), r.id(l.Name))
		r.text = appendValue(append(r.text, `" data-layer="`...), l.Name)
		r.text = append(r.text, "\" >\n"...)
		for items := l.Items; len(items) > 0; {
			n := span(items, alike)
			r.text = r.drawnAlike(r.text, items[:n])
			items = items[n:]
		}
		r.text = append(r.text, "</g>\n"...)
	}
}

// id returns the id of a layer's group: its name as far as an id may have it,
// with a number where another layer has taken that.
func (r *renderer) id(layer string) string {
	id := name(layer)
	r.ids[id]++
	if n := r.ids[id]; n > 1 {
		id += "." + strconv.Itoa(n)
	}
	return id
}

// span returns how many items are, from the first on, the same as the first.
func span(items []draw.Item, same func(a, b draw.Item) bool) int {
	for i, it := range items[1:] {
		if !same(items[0], it) {
			return i + 1
		}
	}
	return len(items)
}

// alike reports whether two items are of one class and drawn with one pen, or set
// in one size of one face.
func alike(a, b draw.Item) bool {
	m, n := a.Head(), b.Head()
	if m.Class != n.Class || !samePen(m.Pen, n.Pen) {
		return false
	}
	t, ok := a.(*draw.Text)
	u, also := b.(*draw.Text)
	return ok == also && (!ok || t.Height == u.Height && t.Bold == u.Bold)
}

func samePen(p, q *draw.Pen) bool {
	if p == nil || q == nil {
		return p == q
	}
	return p.Width == q.Width && p.Grey == q.Grey && slices.Equal(p.Dash, q.Dash)
}

func sameOwner(a, b draw.Item) bool { return a.Head().Owner == b.Head().Owner }

// drawnAlike appends items that are alike, in a group that says how they are drawn
// and whose they are, if all have one owner.
func (r *renderer) drawnAlike(b []byte, items []draw.Item) []byte {
	m := items[0].Head()
	b = append(b, "<g"...)
	if t, ok := items[0].(*draw.Text); ok {
		b = typeface(b, t, m.PenAt(r.sheet.Step))
	} else {
		b = stroke(b, m.PenAt(r.sheet.Step))
	}
	b = key(b, ` data-class="`, string(m.Class))
	if span(items, sameOwner) == len(items) {
		b = append(key(b, ` data-owner="`, m.Owner), ">\n"...)
		b = r.each(b, items)
		return append(b, "</g>\n"...)
	}
	b = append(b, ">\n"...)
	for len(items) > 0 {
		n := span(items, sameOwner)
		b = r.owned(b, items[:n])
		items = items[n:]
	}
	return append(b, "</g>\n"...)
}

// owned appends items of one owner: a single one names it, several stand in a
// group.
func (r *renderer) owned(b []byte, items []draw.Item) []byte {
	owner := items[0].Head().Owner
	switch {
	case owner == "":
		return r.each(b, items)
	case len(items) == 1:
		return r.item(b, items[0], owner)
	}
	b = append(key(append(b, "<g"...), ` data-owner="`, owner), ">\n"...)
	return append(r.each(b, items), "</g>\n"...)
}

// each appends items whose owner need not be named.
func (r *renderer) each(b []byte, items []draw.Item) []byte {
	for _, it := range items {
		b = r.item(b, it, "")
	}
	return b
}

// item appends an item that names its owner, if one is given.
func (r *renderer) item(b []byte, it draw.Item, owner string) []byte {
	switch t := it.(type) {
	case *draw.Path:
		if len(t.Pts) > 0 {
			return r.path(b, t, owner)
		}
	case *draw.Circle:
		return r.circle(b, t, owner)
	case *draw.Arc:
		return r.ellipse(b, t.Ellipse(), owner)
	case *draw.Ellipse:
		return r.ellipse(b, t, owner)
	case *draw.Text:
		return r.line(b, t, owner)
	}
	return b
}

// key appends an attribute, its name as it is written before the value, unless the
// value is empty.
func key(b []byte, name, value string) []byte {
	if value == "" {
		return b
	}
	return append(appendValue(append(b, name...), value), '"')
}

// keys appends the keys by which an item is found again and which it does not
// share with those beside it.
func keys(b []byte, m *draw.Meta, owner string) []byte {
	return key(key(b, ` data-owner="`, owner), ` data-mark="`, m.Mark)
}
