package svg

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// items writes all items in painting order.
func (r *renderer) items() {
	for _, l := range r.sheet.Layers() {
		r.out.Group(attr("id", r.id(l.Name)), attr("data-layer", l.Name))
		for items := l.Items; len(items) > 0; {
			n := span(items, alike)
			r.drawnAlike(items[:n])
			items = items[n:]
		}
		r.out.Gend()
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

// alike reports whether two items are of one class and drawn with one pen, or in
// one size of one face.
func alike(a, b draw.Item) bool {
	m, n := a.Head(), b.Head()
	if m.Class != n.Class || !samePen(m.Pen, n.Pen) {
		return false
	}
	t, isText := a.(*draw.Text)
	u, isText2 := b.(*draw.Text)
	return isText == isText2 && (!isText || t.Height == u.Height && t.Bold == u.Bold)
}

func samePen(p, q *draw.Pen) bool {
	if p == nil || q == nil {
		return p == q
	}
	return p.Width == q.Width && p.Grey == q.Grey && slices.Equal(p.Dash, q.Dash)
}

func sameOwner(a, b draw.Item) bool { return a.Head().Owner == b.Head().Owner }

// drawnAlike writes items that are alike, in a group that says how they are drawn,
// and in one for each owner where there are several.
func (r *renderer) drawnAlike(items []draw.Item) {
	m := items[0].Head()
	r.text = append(r.text, "<g"...)
	if t, ok := items[0].(*draw.Text); ok {
		r.typeface(t, m.PenAt(r.sheet.Step))
	} else {
		r.stroke(m.PenAt(r.sheet.Step))
	}
	r.with("data-class", string(m.Class))
	one := span(items, sameOwner) == len(items)
	if one {
		r.with("data-owner", m.Owner)
	}
	r.text = append(r.text, ">\n"...)
	for len(items) > 0 {
		n := span(items, sameOwner)
		owner := items[0].Head().Owner
		if one {
			owner = ""
		}
		r.owned(items[:n], owner)
		items = items[n:]
	}
	r.text = append(r.text, "</g>\n"...)
}

// owned writes items in a group that names their owner, or in none for "".
func (r *renderer) owned(items []draw.Item, owner string) {
	if owner != "" {
		r.text = append(r.text, "<g"...)
		r.with("data-owner", owner)
		r.text = append(r.text, ">\n"...)
	}
	for _, it := range items {
		r.item(it)
	}
	if owner != "" {
		r.text = append(r.text, "</g>\n"...)
	}
}

// stroke appends the attributes of a pen.
func (r *renderer) stroke(p draw.Pen) {
	if p.Width == 0 {
		r.with("stroke", "none")
		return
	}
	r.with("stroke", colour(p.Grey))
	r.text = append(r.text, ` stroke-width="`...)
	r.text = append(draw.AppendNumber(r.text, p.Width, 4), '"')
	if len(p.Dash) == 0 {
		return
	}
	r.text = append(r.text, ` stroke-linecap="butt" stroke-dasharray="`...)
	for i, d := range p.Dash {
		if i > 0 {
			r.text = append(r.text, ' ')
		}
		r.text = draw.AppendNumber(r.text, d, 4)
	}
	r.text = append(r.text, '"')
}

// typeface appends the attributes of lettering.
func (r *renderer) typeface(t *draw.Text, pen draw.Pen) {
	r.text = append(r.text, ` stroke="none"`...)
	r.with("fill", colour(pen.Grey))
	r.size(t.Height, t.Bold)
	if t.Bold {
		r.with("font-weight", weight(true))
	}
}

// colour returns a grey (0 black to 1 white) as a colour.
func colour(grey float64) string {
	if grey == 0 {
		return "#000"
	}
	v := int(math.Round(grey * 255))
	return fmt.Sprintf("#%02x%02x%02x", v, v, v)
}

// with appends an attribute, unless its value is empty.
func (r *renderer) with(name, value string) {
	if value != "" {
		r.text = append(append(append(r.text, ' '), name...), `="`...)
		r.text = append(appendValue(r.text, value), '"')
	}
}

// at appends an attribute that is a length or a coordinate: the text that comes
// before it, and the number.
func (r *renderer) at(before string, x float64) {
	r.text = draw.AppendNumber(append(r.text, before...), x, r.sheet.Places())
	r.text = append(r.text, '"')
}

// mark appends the key by which an item is found again.
func (r *renderer) mark(m string) { r.with("data-mark", m) }

func (r *renderer) item(it draw.Item) {
	switch t := it.(type) {
	case *draw.Path:
		if len(t.Pts) > 0 {
			r.begin("<path", it.Head(), t.Filled, t.Grey)
			r.path(t)
			r.end()
		}
	case *draw.Circle:
		r.begin("<circle", it.Head(), t.Filled, t.Grey)
		r.at(` cx="`, t.C.X)
		r.at(` cy="`, r.sheet.H-t.C.Y)
		r.at(` r="`, t.R)
		r.end()
	case *draw.Arc:
		r.begin("<path", it.Head(), false, 0)
		r.ellipse(t.Ellipse())
		r.end()
	case *draw.Ellipse:
		r.begin("<path", it.Head(), t.Filled, t.Grey)
		r.ellipse(t)
		r.end()
	case *draw.Text:
		r.line(t)
	}
}

// begin begins an element that shows an item.
func (r *renderer) begin(element string, m *draw.Meta, filled bool, grey float64) {
	r.text = append(r.text, element...)
	r.mark(m.Mark)
	if filled {
		r.with("fill", colour(grey))
	}
}

// end ends an element with nothing in it.
func (r *renderer) end() { r.text = append(r.text, "/>\n"...) }

// point appends the two coordinates of a point.
func (r *renderer) point(p vec.P) {
	r.text = append(draw.AppendNumber(r.text, p.X, r.sheet.Places()), ' ')
	r.text = draw.AppendNumber(r.text, r.sheet.H-p.Y, r.sheet.Places())
}

// path appends the data of a path.
func (r *renderer) path(t *draw.Path) {
	r.text = append(r.text, ` d="`...)
	r.loop(t.Pts, t.Closed || len(t.Holes) > 0)
	for _, h := range t.Holes {
		if len(h) > 0 {
			r.loop(h, true)
		}
	}
	r.text = append(r.text, '"')
}

// loop appends a chain of lines. One along a side of the paper needs only one
// number.
func (r *renderer) loop(pts []vec.P, closed bool) {
	r.text = append(r.text, 'M')
	r.point(pts[0])
	at := pts[0]
	for _, p := range pts[1:] {
		switch {
		case p.Y == at.Y:
			r.text = draw.AppendNumber(append(r.text, 'H'), p.X, r.sheet.Places())
		case p.X == at.X:
			r.text = draw.AppendNumber(append(r.text, 'V'), r.sheet.H-p.Y, r.sheet.Places())
		default:
			r.text = append(r.text, 'L')
			r.point(p)
		}
		at = p
	}
	if closed {
		r.text = append(r.text, 'Z')
	}
}

// ellipse appends an arc of an ellipse as elliptical arcs (SVG 1.1, 8.3.8) of a
// third of a turn at most. A half turn would not do: its centre is found from a
// chord that is a diameter, where the least rounding of the ends moves it by
// the square root of that rounding. The paper's y is turned over, and with it
// the turn and the sweep.
func (r *renderer) ellipse(e *draw.Ellipse) {
	from, to, whole := e.Span()
	n := max(1, int(math.Ceil((to-from)/(2*math.Pi/3)-1e-9)))
	r.text = append(r.text, ` d="M`...)
	r.point(e.At(from))
	for i := 1; i <= n; i++ {
		r.text = append(r.text, 'A')
		r.text = append(draw.AppendNumber(r.text, e.RX, r.sheet.Places()), ' ')
		r.text = append(draw.AppendNumber(r.text, e.RY, r.sheet.Places()), ' ')
		r.text = append(draw.AppendNumber(r.text, -e.Rot*180/math.Pi, 6), " 0 0 "...)
		r.point(e.At(from + (to-from)*float64(i)/float64(n)))
	}
	if whole {
		r.text = append(r.text, 'Z')
	}
	r.text = append(r.text, '"')
}

// box appends the place and size of a rectangle.
func (r *renderer) box(b draw.Box) {
	r.at(` x="`, b.Min.X)
	r.at(` y="`, r.sheet.H-b.Max.Y)
	r.at(` width="`, b.W())
	r.at(` height="`, b.H())
}

// links writes the areas that lead elsewhere.
func (r *renderer) links(o Options) {
	for _, l := range r.sheet.Links {
		to := l.To
		if !strings.HasPrefix(to, "https://") && !strings.HasPrefix(to, "http://") {
			if o.Href == nil {
				continue
			}
			if to = o.Href(to); to == "" || strings.Contains(strings.ToLower(to), "script:") {
				continue
			}
		}
		r.out.Link(string(appendValue(nil, to)), l.To)
		r.text = append(r.text, `<rect data-class="link"`...)
		r.box(l.Rect)
		r.text = append(r.text, ` fill="#fff" fill-opacity="0"`...)
		r.end()
		r.out.LinkEnd()
	}
}
