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

// items writes all items in painting order. Items that follow each other in one
// layer and one pen share a group.
func (r *renderer) items() {
	layer, drawn, open := "", draw.Pen{}, false
	for _, it := range r.sheet.Items {
		pen, name := it.Head().PenAt(r.sheet.Step), it.Head().LayerName()
		if !open || name != layer || !samePen(pen, drawn) {
			if open {
				r.out.Gend()
			}
			r.out.Group(r.group(it.Head(), pen)...)
			layer, drawn, open = name, pen, true
		}
		r.item(it, pen)
	}
	if open {
		r.out.Gend()
	}
}

// group returns the attributes of the group of a layer and pen.
func (r *renderer) group(m *draw.Meta, pen draw.Pen) []string {
	layer := m.LayerName()
	id := name(layer)
	r.ids[id]++
	if n := r.ids[id]; n > 1 {
		id += "." + strconv.Itoa(n)
	}
	return append([]string{attr("id", id), attr("data-layer", layer), attr("fill", "none")}, stroke(pen)...)
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
	v := int(math.Round(grey * 255))
	return fmt.Sprintf("#%02x%02x%02x", v, v, v)
}

// keys returns the attributes by which an item is found again.
func keys(m *draw.Meta) []string {
	var out []string
	for _, f := range [][2]string{{"data-class", string(m.Class)}, {"data-owner", m.Owner}, {"data-mark", m.Mark}} {
		if f[1] != "" {
			out = append(out, attr(f[0], f[1]))
		}
	}
	return out
}

func (r *renderer) item(it draw.Item, pen draw.Pen) {
	at := keys(it.Head())
	switch t := it.(type) {
	case *draw.Path:
		if len(t.Pts) > 0 {
			r.out.Path(r.pathData(t), append(at, filling(t.Filled, t.Grey)...)...)
		}
	case *draw.Circle:
		r.out.Circle(r.x(t.C.X), r.y(t.C.Y), r.x(t.R), append(at, filling(t.Filled, t.Grey)...)...)
	case *draw.Arc:
		r.ellipse(t.Ellipse(), at)
	case *draw.Ellipse:
		r.ellipse(t, append(at, filling(t.Filled, t.Grey)...))
	case *draw.Text:
		r.text(t, pen, at)
	}
}

func filling(filled bool, grey float64) []string {
	if !filled {
		return nil
	}
	return []string{attr("fill", colour(grey)), attr("fill-rule", "evenodd")}
}

func (r *renderer) pt(p vec.P) string { return string(r.appendPt(nil, p)) }

func (r *renderer) appendPt(b []byte, p vec.P) []byte {
	b = append(draw.AppendNumber(b, p.X, r.sheet.Places()), ' ')
	return draw.AppendNumber(b, r.sheet.H-p.Y, r.sheet.Places())
}

func (r *renderer) pathData(t *draw.Path) string {
	d := r.loop(t.Pts, t.Closed || len(t.Holes) > 0)
	for _, h := range t.Holes {
		if len(h) > 0 {
			d += " " + r.loop(h, true)
		}
	}
	return d
}

func (r *renderer) loop(pts []vec.P, closed bool) string {
	d := make([]byte, 0, 20*len(pts)+2)
	for i, p := range pts {
		switch i {
		case 0:
			d = append(d, 'M')
		default:
			d = append(d, " L"...)
		}
		d = r.appendPt(d, p)
	}
	if closed {
		d = append(d, " Z"...)
	}
	return string(d)
}

// ellipse writes an arc of an ellipse as elliptical arcs (SVG 1.1, 8.3.8) of a
// third of a turn at most. A half turn would not do: its centre is found from a
// chord that is a diameter, where the least rounding of the ends moves it by
// the square root of that rounding. The paper's y is turned over, and with it
// the turn and the sweep.
func (r *renderer) ellipse(e *draw.Ellipse, at []string) {
	from, to, whole := e.Span()
	n := max(1, int(math.Ceil((to-from)/(2*math.Pi/3)-1e-9)))
	head := fmt.Sprintf(" A%s %s %s 0 0 ", r.num(e.RX), r.num(e.RY), draw.Number(-e.Rot*180/math.Pi, 6))
	d := "M" + r.pt(e.At(from))
	for i := 1; i <= n; i++ {
		d += head + r.pt(e.At(from+(to-from)*float64(i)/float64(n)))
	}
	if whole {
		d += " Z"
	}
	r.out.Path(d, at...)
}

// text writes a line of text, a <text> with a place of its own for each run.
func (r *renderer) text(t *draw.Text, pen draw.Pen, at []string) {
	runs := font.Layout(t.S, t.Height, t.Bold)
	if len(runs) == 0 {
		return
	}
	origin, turned := t.At, t.Rot != 0
	if turned {
		r.out.Gtransform(fmt.Sprintf("translate(%s %s) rotate(%s)",
			r.num(t.At.X), draw.Number(r.sheet.H-t.At.Y, r.sheet.Places()), draw.Number(-t.Rot*180/math.Pi, 6)))
		origin = vec.P{Y: r.sheet.H} // the place that y() carries to 0
	}
	if t.Halo {
		b := font.Box(&draw.Text{At: origin, Height: t.Height, S: t.S, Bold: t.Bold, Anchor: t.Anchor})
		r.out.Rect(r.x(b.Min.X), r.y(b.Max.Y), r.x(b.W()), r.x(b.H()), attr("fill", "#fff"), attr("stroke", "none"), attr("data-class", "halo"))
	}
	shift := font.Shift(t)
	at = append(at, attr("fill", colour(pen.Grey)), attr("stroke", "none"),
		attr("font-family", family), attr("font-weight", weight(t.Bold)))
	for _, run := range runs {
		a := append(at[:len(at):len(at)], attr("font-size", draw.Number(font.Size(run.Height, run.Bold), 4)))
		r.out.Text(r.x(origin.X-shift+run.X), r.y(origin.Y+run.Y), run.S, strings.Join(a, " "))
	}
	if turned {
		r.out.Gend()
	}
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
		r.out.Rect(r.x(l.Rect.Min.X), r.y(l.Rect.Max.Y), r.x(l.Rect.W()), r.x(l.Rect.H()),
			attr("fill", "#fff"), attr("fill-opacity", "0"), attr("data-class", "link"))
		r.out.LinkEnd()
	}
}
