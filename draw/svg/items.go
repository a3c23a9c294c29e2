package svg

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// items writes all items in painting order: a group for each layer, and in it a
// group for every run of items in one pen.
func (r *renderer) items() {
	for _, l := range r.sheet.Layers() {
		r.out.Group(attr("id", r.id(l.Name)), attr("data-layer", l.Name), attr("fill", "none"))
		var drawn draw.Pen
		for i, it := range l.Items {
			pen := it.Head().PenAt(r.sheet.Step)
			if i > 0 && !samePen(pen, drawn) {
				r.out.Gend()
			}
			if i == 0 || !samePen(pen, drawn) {
				r.out.Group(stroke(pen)...)
			}
			drawn = pen
			r.item(it, pen)
		}
		r.out.Gend()
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

func samePen(p, q draw.Pen) bool {
	return p.Width == q.Width && p.Grey == q.Grey && slices.Equal(p.Dash, q.Dash)
}

// stroke returns the attributes of a pen.
func stroke(p draw.Pen) []string {
	if p.Width == 0 {
		return []string{attr("stroke", "none")}
	}
	out := []string{attr("stroke", colour(p.Grey)), attr("stroke-width", draw.Number(p.Width, 4)),
		attr("stroke-linejoin", "round")}
	if len(p.Dash) == 0 {
		return append(out, attr("stroke-linecap", "round"))
	}
	dash := make([]string, len(p.Dash))
	for i, d := range p.Dash {
		dash[i] = draw.Number(d, 4)
	}
	return append(out, attr("stroke-dasharray", strings.Join(dash, " ")))
}

// colour returns a grey (0 black to 1 white) as a colour.
func colour(grey float64) string {
	if grey == 0 {
		return "#000"
	}
	v := int(math.Round(grey * 255))
	return fmt.Sprintf("#%02x%02x%02x", v, v, v)
}

// with appends an attribute.
func (r *renderer) with(name, value string) {
	r.text = append(append(append(r.text, ' '), name...), `="`...)
	r.text = append(append(r.text, escape(value)...), '"')
}

// at appends an attribute that is a length or a coordinate.
func (r *renderer) at(name string, x float64) {
	r.text = append(append(append(r.text, ' '), name...), `="`...)
	r.text = append(draw.AppendNumber(r.text, x, r.sheet.Places()), '"')
}

// open begins an element that shows an item, with the keys by which the item is
// found again.
func (r *renderer) open(element string, m *draw.Meta) {
	r.text = append(append(r.text, '<'), element...)
	for _, k := range [...]struct{ name, value string }{{"data-class", string(m.Class)}, {"data-owner", m.Owner}, {"data-mark", m.Mark}} {
		if k.value != "" {
			r.with(k.name, k.value)
		}
	}
}

// end ends an element with nothing in it.
func (r *renderer) end() { r.text = append(r.text, "/>\n"...) }

func (r *renderer) item(it draw.Item, pen draw.Pen) {
	switch t := it.(type) {
	case *draw.Path:
		if len(t.Pts) > 0 {
			r.open("path", it.Head())
			r.filling(t.Filled, t.Grey)
			r.path(t)
			r.end()
		}
	case *draw.Circle:
		r.open("circle", it.Head())
		r.filling(t.Filled, t.Grey)
		r.at("cx", t.C.X)
		r.at("cy", r.sheet.H-t.C.Y)
		r.at("r", t.R)
		r.end()
	case *draw.Arc:
		r.open("path", it.Head())
		r.ellipse(t.Ellipse())
		r.end()
	case *draw.Ellipse:
		r.open("path", it.Head())
		r.filling(t.Filled, t.Grey)
		r.ellipse(t)
		r.end()
	case *draw.Text:
		r.line(t, pen)
	}
}

func (r *renderer) filling(filled bool, grey float64) {
	if filled {
		r.with("fill", colour(grey))
		r.with("fill-rule", "evenodd")
	}
}

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
			r.text = append(r.text, ' ')
			r.loop(h, true)
		}
	}
	r.text = append(r.text, '"')
}

func (r *renderer) loop(pts []vec.P, closed bool) {
	for i, p := range pts {
		if i == 0 {
			r.text = append(r.text, 'M')
		} else {
			r.text = append(r.text, " L"...)
		}
		r.point(p)
	}
	if closed {
		r.text = append(r.text, " Z"...)
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
		r.text = append(r.text, " A"...)
		r.text = append(draw.AppendNumber(r.text, e.RX, r.sheet.Places()), ' ')
		r.text = append(draw.AppendNumber(r.text, e.RY, r.sheet.Places()), ' ')
		r.text = append(draw.AppendNumber(r.text, -e.Rot*180/math.Pi, 6), " 0 0 "...)
		r.point(e.At(from + (to-from)*float64(i)/float64(n)))
	}
	if whole {
		r.text = append(r.text, " Z"...)
	}
	r.text = append(r.text, '"')
}

// line writes a line of text, a <text> with a place of its own for each run.
func (r *renderer) line(t *draw.Text, pen draw.Pen) {
	runs := font.Layout(t.S, t.Height, t.Bold)
	if len(runs) == 0 {
		return
	}
	origin, turned := t.At, t.Rot != 0
	if turned {
		r.out.Gtransform(fmt.Sprintf("translate(%s %s) rotate(%s)",
			r.num(t.At.X), r.num(r.sheet.H-t.At.Y), draw.Number(-t.Rot*180/math.Pi, 6)))
		origin = vec.P{Y: r.sheet.H} // the place that comes out as 0
	}
	if t.Halo {
		r.open("rect", &draw.Meta{Class: "halo"})
		r.box(font.Box(&draw.Text{At: origin, Height: t.Height, S: t.S, Bold: t.Bold, Anchor: t.Anchor}))
		r.text = append(r.text, ` fill="#fff" stroke="none"`...)
		r.end()
	}
	shift := font.Shift(t)
	for _, run := range runs {
		r.open("text", t.Head())
		r.at("x", origin.X-shift+run.X)
		r.at("y", r.sheet.H-(origin.Y+run.Y))
		r.with("fill", colour(pen.Grey))
		r.text = append(r.text, ` stroke="none" font-size="`...)
		r.text = append(draw.AppendNumber(r.text, font.Size(run.Height, run.Bold), 4), '"')
		if run.Bold {
			r.with("font-weight", weight(true))
		}
		r.text = append(append(append(r.text, '>'), escape(run.S)...), "</text>\n"...)
	}
	if turned {
		r.out.Gend()
	}
}

// box appends the place and size of a rectangle.
func (r *renderer) box(b draw.Box) {
	r.at("x", b.Min.X)
	r.at("y", r.sheet.H-b.Max.Y)
	r.at("width", b.W())
	r.at("height", b.H())
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
		r.out.Link(escape(to), clean(l.To))
		r.open("rect", &draw.Meta{Class: "link"})
		r.box(l.Rect)
		r.text = append(r.text, ` fill="#fff" fill-opacity="0"`...)
		r.end()
		r.out.LinkEnd()
	}
}
