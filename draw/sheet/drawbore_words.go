package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
)

// boringCautions are the cautions for boring and pegging a joint.
func boringCautions() []string {
	return []string{
		"Clamp or dog the timber and brace the handle for the kick when the bit grabs. Clear the chips often. Back the far face and pack the mortise, so that nothing blows out.",
		"Wear eye protection when you drive. Strike squarely. A peg that kinks or splits is bored out and replaced. Nobody stands under a joint that is being driven.",
	}
}

// cautionHeight returns the height that the caution box takes, with the space
// under it.
func (d *bored) cautionHeight(width float64) float64 {
	s := draw.NewSheet("", "", "", 1000, 1000)
	f := block.Field{X0: 0, Y0: 0, X1: width, Y1: 1000}
	return block.Boxed(s, f, "CAUTION", boringCautions()).Y0
}

// toward says which way the tenon hole is set off, for use in a sentence.
func (d *bored) toward() string {
	if d.p.Words == "" {
		return "toward the shoulder"
	}
	return d.p.Words
}

// pull says what the driven peg does.
func (d *bored) pull() string {
	if d.slanted() {
		return "The driven peg pulls the enterer down its own length: the shoulder into the receiver and the nose home."
	}
	return "The driven peg pulls the tenon in and the shoulder home."
}

// way is one way of working: a heading and numbered steps.
type way struct {
	head  string
	steps []string
}

// ways are the two ways of boring a drawn joint, or the one where the holes
// lie in line.
func (d *bored) ways() []way {
	p, j := d.p, d.j
	entry, exit := d.faceName(p.Entry), d.faceName(p.Exit)
	if p.Offset == 0 {
		return []way{{"Holes in line: not drawn", []string{
			fmt.Sprintf("Close the joint dry, faces flush, and clamp it. Bore through both timbers from %s of %s; stop when the lead screw shows on %s and finish from there.", entry, j.Into.ID, exit),
			"Drive the peg squarely. Trim it after the timbers have dried.",
		}}}
	}
	look := fmt.Sprintf("Close the joint and look through both holes: the tenon's must stand %s of the other by e, clear as the detail shows. Then drive the peg.", d.short())
	return []way{
		{"With the templates", []string{
			fmt.Sprintf("Lay the hole template on %s of %s, prick the centre and bore square through; finish from %s.", entry, j.Into.ID, exit),
			"Lay the tenon template on the cheek, its shoulder line on the shoulder. Prick the only cross on it.",
			"Measure B before boring: shoulder to the mark, square to the shoulder.",
			"Bore the tenon square to its cheek, waste wood behind it.",
			look,
		}},
		{"Prick and shift", []string{
			fmt.Sprintf("Bore %s alone, from %s; stop when the lead screw shows and finish from %s.", j.Into.ID, entry, exit),
			"Put the tenon home dry, the shoulder closed tight. Turn the bit in the hole by hand until its point pricks the cheek.",
			fmt.Sprintf("Draw the tenon. Shift the mark by e %s, prick again, and strike the first mark out.", d.toward()),
			"Bore the tenon at the second mark, square to its cheek, waste wood behind it.",
			look,
		}},
	}
}

// faceName names a face of the receiver in a sentence.
func (d *bored) faceName(n int) string {
	t := d.g.faceTitle(true, n)
	if strings.HasPrefix(t, "face ") {
		return t
	}
	return "face " + t
}

// short says in two or three words on which side the tenon hole stands.
func (d *bored) short() string {
	if d.slanted() {
		return "up the brace"
	}
	return "on the shoulder's side"
}

// laidWay is a way set in lines for a column.
type laidWay struct {
	way
	lines [][]string
	h     float64 // text height
}

const waysPad = 2.0

// waysHeight sets the ways in columns of a box of the given width and returns
// its height with the space under it.
func (d *bored) waysHeight(width float64) ([]laidWay, float64) {
	var out []laidWay
	ws := d.ways()
	col := d.waysColumn(width, len(ws))
	tall, h := 0, small
	for _, w := range ws {
		for _, t := range w.steps {
			h = max(h, dim.Legible(t, small))
		}
	}
	for _, w := range ws {
		l := laidWay{way: w, h: h}
		n := 0
		for _, t := range w.steps {
			ls := font.Wrap(t, col-5, h)
			l.lines, n = append(l.lines, ls), n+len(ls)
		}
		tall = max(tall, n)
		out = append(out, l)
	}
	return out, 2*waysPad + text*pitch + float64(tall)*h*1.6 + 3
}

func (d *bored) waysColumn(width float64, n int) float64 {
	return (width - 2*waysPad - float64(n-1)*5) / float64(n)
}

// drawWays draws the box of the ways at the foot of the field and returns what
// is left above it.
func (d *bored) drawWays(s *draw.Sheet, f block.Field, ws []laidWay) block.Field {
	_, h := d.waysHeight(f.W())
	h -= 3
	s.Rect(draw.FrameLine, draw.Box{Min: at(f.X0, f.Y0), Max: at(f.X1, f.Y0+h)})
	col := d.waysColumn(f.W(), len(ws))
	for i, w := range ws {
		x, y := f.X0+waysPad+float64(i)*(col+5), f.Y0+h-waysPad
		if i > 0 {
			s.Line(draw.Dimension, at(x-2.5, f.Y0), at(x-2.5, f.Y0+h))
		}
		s.Text(at(x, y-text), text, w.head).Bold = true
		y -= text * pitch
		for n, ls := range w.lines {
			s.Text(at(x, y-w.h), w.h, strconv.Itoa(n+1)).Bold = true
			for _, l := range ls {
				s.Text(at(x+5, y-w.h), w.h, l)
				y -= w.h * 1.6
			}
		}
	}
	f.Y0 += h + 3
	return f
}

// besideSection fills the room left of the receiver: above the peg which way
// and why it matters, below it the letters and the joints served.
func (d *bored) besideSection(c *cut, f block.Field) {
	x1 := c.paper(c.left, 0).X
	if d.p.Offset != 0 {
		dim.Broad(c.s, at(x1-9, c.paper(0, c.top).Y-4), at(0, -1), 16).Mark = "pull"
		w := pen{s: c.s, x: f.X0, y: f.Y1, w: x1 - 18 - f.X0}
		w.head(fmt.Sprintf("Tenon hole %s %s", d.say(d.p.Offset), d.toward()))
		w.para(d.pull() + " The broad arrow shows the pull. Bored the other way, the peg opens the joint.")
	} else {
		w := pen{s: c.s, x: f.X0, y: f.Y1, w: x1 - 18 - f.X0}
		w.head("Not drawn: holes in line")
	}
	d.pegWords(c)
	w := pen{s: c.s, x: f.X0, y: c.paper(0, -d.p.Bore/2).Y - dim.First - dim.Pitch - 5, w: x1 - 8 - f.X0}
	for _, l := range d.legend() {
		w.para(l)
	}
	w.skip(1.5)
	w.para(d.served())
}

// pegWords names the diameters at the peg.
func (d *bored) pegWords(c *cut) {
	tip := c.paper(c.left+entersBy, d.lead.Tip/2)
	mouth := c.paper(c.left, d.p.Bore/2)
	words := []string{"lead's tip Ø " + d.say(d.lead.Tip), "bore Ø " + d.say(d.p.Bore) + ", peg the same"}
	for i, to := range []struct{ x, y float64 }{{tip.X, tip.Y}, {mouth.X, mouth.Y}} {
		h := dim.Legible(words[i], small)
		y := mouth.Y + 4 + float64(i)*6
		x := mouth.X - 9
		t := c.s.Text(at(x-1, y-h/2), h, words[i])
		t.Anchor = draw.End
		dim.Leader(c.s, at(x, y), at(to.x, to.y), false)
	}
}

// legend says what the letters of the section are.
func (d *bored) legend() []string {
	var out []string
	p := d.p
	if p.Offset != 0 && !d.slanted() {
		out = append(out, "A bearing plane to mortise hole. B shoulder to tenon hole.")
	}
	if p.Offset != 0 {
		out = append(out, "e offset of the two holes. R relish: tenon hole to the first free surface behind it, along the grain.")
	}
	if d.slanted() && p.Offset != 0 {
		out = append(out, "The cut runs along the brace, so the receiver is cut aslant.")
	}
	over := p.Length - p.Head - p.From.Dist(p.To)
	out = append(out, fmt.Sprintf("Peg: %s proud of the entry face, %s beyond the far face when driven.", d.say(p.Head), d.say(over)))
	return out
}

// served names the joints that the sheet serves with their marks.
func (d *bored) served() string {
	var ms []string
	for _, j := range d.g.Joints {
		ms = append(ms, j.Mark+" "+j.ID)
	}
	n := len(d.pegs)
	pegs := "1 peg each"
	if n > 1 {
		pegs = fmt.Sprintf("%d pegs each, bored alike", n)
	}
	return "Joints served: " + strings.Join(ms, ", ") + "; " + pegs + "."
}
