package measured

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"pegwright/geom/vec"
)

// SVG returns what is in an SVG document of the kind that the sheets are
// written in: a view box in millimetres equal to the paper, groups with an
// optional translate and rotate, and circles, rectangles, paths of M, L, H, V, A
// and Z, and texts. Anything else is an error, so that nothing goes unmeasured.
// Areas of links and the paper itself are left out.
func SVG(data []byte) (Page, error) {
	r := &svgReader{stack: []state{{scale: affine{a: 1, d: 1}}}}
	dec := xml.NewDecoder(bytes.NewReader(data))
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return r.page, nil
		}
		if err != nil {
			return Page{}, err
		}
		switch t := tok.(type) {
		case xml.StartElement:
			err = r.start(t)
		case xml.EndElement:
			r.end()
		case xml.CharData:
			if r.text != nil {
				r.text.S += string(t)
			}
		}
		if err != nil {
			return Page{}, err
		}
	}
}

// affine is a matrix as SVG writes it: x' = ax + cy + e, y' = bx + dy + f.
type affine struct{ a, b, c, d, e, f float64 }

func (m affine) at(x, y float64) vec.P {
	return vec.P{X: m.a*x + m.c*y + m.e, Y: m.b*x + m.d*y + m.f}
}

// state is what an element hands down to those within it.
type state struct {
	scale affine
	attrs map[string]string
}

type svgReader struct {
	page  Page
	stack []state
	text  *Text
}

// inherited are the attributes that groups hand down.
var inherited = []string{"fill", "stroke", "stroke-width", "stroke-dasharray", "font-size", "data-layer", "data-class", "data-owner"}

func (r *svgReader) start(t xml.StartElement) error {
	up := r.stack[len(r.stack)-1]
	at := map[string]string{}
	for _, k := range inherited {
		if v, ok := up.attrs[k]; ok {
			at[k] = v
		}
	}
	for _, a := range t.Attr {
		at[a.Name.Local] = a.Value
	}
	s := state{scale: up.scale, attrs: at}
	if tr, ok := at["transform"]; ok {
		m, err := transform(tr)
		if err != nil {
			return err
		}
		s.scale = up.scale.then(m)
	}
	r.stack = append(r.stack, s)
	return r.element(t.Name.Local, s)
}

func (r *svgReader) end() {
	if r.text != nil {
		r.page.Texts = append(r.page.Texts, *r.text)
		r.text = nil
	}
	r.stack = r.stack[:len(r.stack)-1]
}

func (r *svgReader) element(name string, s state) error {
	switch name {
	case "svg":
		return r.root(s)
	case "g", "title", "style", "a":
		return nil
	case "circle":
		return r.circle(s)
	case "rect":
		return r.rect(s)
	case "path":
		return r.path(s)
	case "text":
		return r.run(s)
	}
	return fmt.Errorf("element <%s> is not one of ours", name)
}

func (r *svgReader) root(s state) error {
	box, err := numbers(s.attrs["viewBox"], 4)
	if err != nil {
		return err
	}
	w, err1 := strconv.ParseFloat(strings.TrimSuffix(s.attrs["width"], "mm"), 64)
	h, err2 := strconv.ParseFloat(strings.TrimSuffix(s.attrs["height"], "mm"), 64)
	if err := errors.Join(err1, err2); err != nil {
		return err
	}
	if box[0] != 0 || box[1] != 0 || box[2] != w || box[3] != h || !strings.HasSuffix(s.attrs["width"], "mm") {
		return fmt.Errorf("view box %v is not the paper, %v x %v mm", box, w, h)
	}
	r.page.W, r.page.H = w, h
	return nil
}

// paper carries a point of an element onto the paper, y up.
func (r *svgReader) paper(s state, x, y float64) vec.P {
	p := s.scale.at(x, y)
	return vec.P{X: p.X, Y: r.page.H - p.Y}
}

// nums returns the values of attributes that are numbers.
func (s state) nums(names ...string) ([]float64, error) {
	out := make([]float64, len(names))
	for i, n := range names {
		v, err := strconv.ParseFloat(s.attrs[n], 64)
		if err != nil {
			return nil, fmt.Errorf("attribute %s: %w", n, err)
		}
		out[i] = v
	}
	return out, nil
}

func (s state) keys() Keys {
	return Keys{Mark: s.attrs["data-mark"], Owner: s.attrs["data-owner"], Class: s.attrs["data-class"], Layer: s.attrs["data-layer"]}
}

func (s state) stroke() (Stroke, error) {
	out := Stroke{Filled: s.attrs["fill"] != "none" && s.attrs["fill"] != ""}
	if c := s.attrs["stroke"]; c == "none" || c == "" {
		return out, nil
	}
	w, err := s.nums("stroke-width")
	if err != nil {
		return out, err
	}
	out.StrokeWidth = w[0]
	if d := s.attrs["stroke-dasharray"]; d != "" {
		out.Dash, err = numbers(d, -1)
	}
	return out, err
}

func (r *svgReader) circle(s state) error {
	v, err := s.nums("cx", "cy", "r")
	if err != nil {
		return err
	}
	st, err := s.stroke()
	r.page.Circles = append(r.page.Circles, Circle{Keys: s.keys(), Stroke: st, C: r.paper(s, v[0], v[1]), R: v[2]})
	return err
}

func (r *svgReader) rect(s state) error {
	if s.attrs["class"] == "paper" || s.attrs["data-class"] == "link" {
		return nil
	}
	v, err := s.nums("x", "y", "width", "height")
	if err != nil {
		return err
	}
	p := Path{Keys: s.keys(), Closed: true}
	p.Stroke, err = s.stroke()
	for i, c := range [][2]float64{{0, 0}, {1, 0}, {1, 1}, {0, 1}} {
		op := byte('L')
		if i == 0 {
			op = 'M'
		}
		p.Segs = append(p.Segs, Seg{Op: op, P: r.paper(s, v[0]+c[0]*v[2], v[1]+c[1]*v[3])})
	}
	r.page.sort(p)
	return err
}

func (r *svgReader) run(s state) error {
	v, err := s.nums("x", "y", "font-size")
	if err != nil {
		return err
	}
	at := r.paper(s, v[0], v[1])
	r.text = &Text{Keys: s.keys(), X: at.X, Y: at.Y, Size: v[2], Turn: math.Atan2(-s.scale.b, s.scale.a)}
	return nil
}
