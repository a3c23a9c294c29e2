package draw

import (
	"fmt"
	"math"
	"strconv"

	"pegwright/geom/vec"
)

// Dump returns the sheet as readable text, one item a line, in painting order:
// the same for the same sheet, whatever the machine. Coordinates are rounded as
// the renderers round them; angles are degrees.
func (s *Sheet) Dump() string {
	d := dump{places: s.Places()}
	d.add("sheet ", s.Kind, " ")
	d.quoted(s.ID)
	d.add(" ")
	d.quoted(s.Title)
	d.number(" ", s.W)
	d.number(" x ", s.H)
	d.add(" step ", strconv.Itoa(s.Step))
	if s.FullScale {
		d.add(" full-scale")
	}
	d.add("\n")
	for _, it := range s.Items {
		d.item(it)
		d.add("\n")
	}
	for _, l := range s.Links {
		d.point("link ", l.Rect.Min)
		d.point(" ", l.Rect.Max)
		d.add(" -> ")
		d.quoted(l.To)
		d.add("\n")
	}
	return string(d.text)
}

// dump is the text so far, and the places that coordinates have in it.
type dump struct {
	text   []byte
	places int
}

func (d *dump) add(parts ...string) {
	for _, p := range parts {
		d.text = append(d.text, p...)
	}
}

func (d *dump) quoted(s string) { d.text = strconv.AppendQuote(d.text, s) }

// number adds a word and a coordinate.
func (d *dump) number(word string, x float64) {
	d.text = AppendNumber(append(d.text, word...), x, d.places)
}

// tone adds a word and a grey.
func (d *dump) tone(word string, grey float64) {
	d.text = AppendNumber(append(d.text, word...), grey, 3)
}

// angle adds a word and an angle in degrees.
func (d *dump) angle(word string, rad float64) {
	d.text = AppendNumber(append(d.text, word...), rad*180/math.Pi, 4)
}

func (d *dump) point(word string, p vec.P) {
	d.number(word, p.X)
	d.number(",", p.Y)
}

func (d *dump) filling(filled bool, grey float64) {
	if filled {
		d.tone(" grey ", grey)
	}
}

func (d *dump) item(it Item) {
	m := it.Head()
	d.add(string(m.Class))
	for _, f := range [...]struct{ name, value string }{{" owner=", m.Owner}, {" layer=", m.Layer}, {" mark=", m.Mark}} {
		if f.value != "" {
			d.add(f.name)
			d.quoted(f.value)
		}
	}
	if m.Pen != nil {
		d.tone(" pen=", m.Pen.Width)
		d.add(fmt.Sprintf("/%v", m.Pen.Dash))
		d.tone("/", m.Pen.Grey)
	}
	d.shape(it)
}

func (d *dump) shape(it Item) {
	switch t := it.(type) {
	case *Path:
		d.path(t)
	case *Circle:
		d.point(" circle ", t.C)
		d.number(" r ", t.R)
		d.filling(t.Filled, t.Grey)
	case *Arc:
		d.point(" arc ", t.C)
		d.number(" r ", t.R)
		d.angle(" ", t.From)
		d.angle("..", t.To)
	case *Ellipse:
		d.point(" ellipse ", t.C)
		d.number(" r ", t.RX)
		d.number(" ", t.RY)
		d.angle(" rot ", t.Rot)
		d.angle(" ", t.From)
		d.angle("..", t.To)
		d.filling(t.Filled, t.Grey)
	case *Text:
		d.line(t)
	default:
		d.add(fmt.Sprintf(" unknown %T", it))
	}
}

func (d *dump) path(t *Path) {
	kind := " path"
	if t.Closed {
		kind = " loop"
	}
	d.loop(kind, t.Pts)
	for _, h := range t.Holes {
		d.loop(" hole", h)
	}
	d.filling(t.Filled, t.Grey)
}

func (d *dump) loop(kind string, pts []vec.P) {
	d.add(kind)
	for _, p := range pts {
		d.point(" ", p)
	}
	if len(pts) == 0 {
		d.add(" ")
	}
}

func (d *dump) line(t *Text) {
	d.point(" text ", t.At)
	d.number(" h ", t.Height)
	d.add(" ", [...]string{"start", "middle", "end"}[max(0, min(int(t.Anchor), 2))])
	if t.Rot != 0 {
		d.angle(" rot ", t.Rot)
	}
	if t.Bold {
		d.add(" bold")
	}
	if t.Halo {
		d.add(" halo")
	}
	d.add(" ")
	d.quoted(t.S)
}
