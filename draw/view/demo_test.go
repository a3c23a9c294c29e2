package view

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

func at(x, y, z float64) vec.V { return vec.V{X: x, Y: y, Z: z} }

func box(x0, y0, z0, x1, y1, z1 float64) solid.Convex {
	return solid.Box(at(x0, y0, z0), at(x1, y1, z1))
}

// post is an upright 150 x 150 stick with a housing and a mortise in its face
// x = 150, and a bore across the mortise.
func post() Part {
	b := solid.NewBody(box(0, 0, 0, 150, 150, 1200))
	b.Subtract(box(138, -10, 600, 160, 160, 780), "J1")
	b.Subtract(box(40, 50, 600, 160, 90, 780), "J1")
	return Part{Owner: "post", Body: b, Bores: []Bore{{From: at(100, -8, 650), To: at(100, 158, 650), Diameter: 25.4}}}
}

// tie is a level 150 x 180 stick that enters the post, with its tenon's bore
// 3 mm nearer the shoulder.
func tie() Part {
	b := solid.NewBody(box(42, 0, 600, 1200, 150, 780))
	b.Subtract(box(30, -10, 590, 138, 50, 790), "J1")
	b.Subtract(box(30, 90, 590, 138, 160, 790), "J1")
	return Part{Owner: "tie", Body: b, Bores: []Bore{{From: at(103, -8, 650), To: at(103, 158, 650), Diameter: 25.4}}}
}

// writeSVG writes the items as a plain picture into the folder named by the
// variable PEGWRIGHT_PICTURES, for the eye; without it nothing is written.
func writeSVG(t *testing.T, name string, items []draw.Item) {
	t.Helper()
	if len(items) == 0 {
		t.Errorf("%s: nothing drawn", name)
	}
	dir := os.Getenv("PEGWRIGHT_PICTURES")
	if dir == "" {
		return
	}
	b := draw.NoBox()
	for _, it := range items {
		o := draw.ItemBounds(it)
		b = b.With(o.Min, o.Max)
	}
	var s strings.Builder
	fmt.Fprintf(&s, `<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="%g %g %g %g"><rect x="-9999" y="-9999" width="29999" height="29999" fill="white"/>`,
		b.W()+10, b.H()+10, b.Min.X-5, -b.Max.Y-5, b.W()+10, b.H()+10)
	for _, it := range items {
		pen := it.Head().PenAt(0)
		var dash []string
		for _, d := range pen.Dash {
			dash = append(dash, fmt.Sprint(d))
		}
		fmt.Fprintf(&s, `<path fill="none" stroke="black" stroke-linecap="round" stroke-linejoin="round" stroke-width="%g" stroke-dasharray="%s" d="%s"/>`+"\n",
			pen.Width, strings.Join(dash, " "), outline(it))
	}
	s.WriteString("</svg>\n")
	if err := os.WriteFile(filepath.Join(dir, name+".svg"), []byte(s.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

func outline(it draw.Item) string {
	var pts []vec.P
	closed := false
	sample := func(e *draw.Ellipse) {
		from, to, _ := e.Span()
		for i := range 65 {
			pts = append(pts, e.At(from+(to-from)*float64(i)/64))
		}
	}
	switch x := it.(type) {
	case *draw.Path:
		pts, closed = x.Pts, x.Closed
	case *draw.Circle:
		sample(&draw.Ellipse{C: x.C, RX: x.R, RY: x.R})
	case *draw.Arc:
		sample(x.Ellipse())
	case *draw.Ellipse:
		sample(x)
	}
	d := "M"
	for _, p := range pts {
		d += fmt.Sprintf(" %.3f %.3f", p.X, -p.Y)
	}
	if closed {
		d += "Z"
	}
	return d
}

// TestPictures draws a joint for the eye; it fails only where nothing is drawn.
func TestPictures(t *testing.T) {
	p, q := post(), tie()
	peg := PegPart("peg", at(101, -20, 650), at(101, 200, 650), 25.4, 14, 70)
	o := Options{Scale: 0.2}
	writeSVG(t, "iso", Render(Isometric(), []Part{p, q, peg}, o))
	out := q
	out.Shift = at(260, 0, 0)
	out.Body = Clipped(q.Body, solid.PlaneAt(at(420, 0, 0), at(1, 0, 0)))
	stub := p
	stub.Body = Clipped(p.Body, solid.PlaneAt(at(0, 0, 950), at(0, 0, 1)), solid.PlaneAt(at(0, 0, 430), at(0, 0, -1)))
	drawn := peg
	drawn.Shift = at(0, -330, 0)
	o.Scale = 0.25
	exploded := []Part{stub, out, drawn}
	writeSVG(t, "exploded", Render(IsometricFrom(1, -1), exploded, o))
	o.ShowHidden = true
	writeSVG(t, "hidden", Render(IsometricFrom(1, -1), []Part{stub, out}, o))
	writeSVG(t, "front", Render(Front(), []Part{stub, out}, o))
	writeSVG(t, "right", Render(Right(), []Part{stub}, o))
	o.ShowHidden = false
	whole := out
	whole.Shift = vec.V{}
	pl := solid.PlaneAt(at(0, 70, 0), at(0, -1, 0))
	parts := []Part{stub, whole, peg}
	var items []draw.Item
	for i, f := range Section(parts, pl, Front(), o) {
		items = append(items, f.Outline()...)
		for _, h := range f.Hatch([]float64{45, 135, 20}[i], []float64{3, 3, 1}[i]) {
			items = append(items, h)
		}
	}
	writeSVG(t, "section", items)
	pl = solid.PlaneAt(at(0, 0, 650), at(0, 0, 1))
	o.Scale = 0.5
	items = nil
	for i, f := range Section(parts, pl, Top(), o) {
		items = append(items, f.Outline()...)
		for _, h := range f.Hatch([]float64{45, 135, 20}[i], []float64{3, 3, 1}[i]) {
			items = append(items, h)
		}
	}
	writeSVG(t, "plan", items)
}
