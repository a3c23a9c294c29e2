package drawbore

import (
	"fmt"
	"strconv"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/geom/vec"
)

// way is one way of working: a heading and numbered steps.
type way struct {
	head  string
	steps []string
}

// ways are the two ways of boring a drawn joint, or the one where the holes
// lie in line.
func (d *bored) ways() []way {
	p := d.p
	entry, exit := d.faceName(p.Entry), d.faceName(p.Exit)
	if p.Offset == 0 {
		last := "Drive the peg squarely. Trim it after the timbers have dried."
		if p.Flush {
			last = "Peg: " + scene.FlushWords(p) + "."
		}
		each := fmt.Sprintf("Each from its template: prick through it, bore the receiver from %s with a block in the mortise, and the tenon square to its cheek with waste wood behind it. Stop when the lead screw shows and finish from the other side.", entry)
		if d.j.Broad {
			each = fmt.Sprintf("Each from its template: prick through it and bore both timbers square to the lap, the receiver from %s, with waste wood behind. Stop when the lead screw shows and finish from the other side.", entry)
		}
		return []way{{"No draw: bore each from its template, or close the joint and bore both at once", []string{
			each,
			fmt.Sprintf("Or both at once: close the joint dry, faces flush, and clamp it. Bore through both timbers from %s of %s; stop when the lead screw shows on %s and finish from there.", entry, d.receiver(), exit),
			last,
		}}}
	}
	bore := fmt.Sprintf("from %s of %s till the lead screw shows; finish from %s.", entry, d.receiver(), exit)
	tenon := "Bore the tenon square to its cheek, waste wood behind it."
	return []way{
		{"With the templates", []string{
			"Prick through the hole template. With a block in the mortise, bore " + bore,
			"Lay the tenon template on the cheek, shoulder line on the shoulder. Prick its only cross. " + d.measureFirst(),
			tenon,
		}},
		{"Prick and shift", []string{
			"With a block in the mortise, bore the receiver alone " + bore,
			"Put the tenon home dry, shoulder closed. Turn the bit in the hole by hand until it pricks the cheek.",
			fmt.Sprintf("Draw the tenon. Shift the mark by e %s, prick again, strike the first mark out.", d.toward()),
			tenon,
		}},
	}
}

// receiver names the receiver in a sentence that holds for the whole group.
func (d *bored) receiver() string {
	if len(d.g.Joints) > 1 {
		return "the receiver"
	}
	return d.j.Into.ID
}

// measureFirst names what to measure before the tenon is bored.
func (d *bored) measureFirst() string {
	if d.slanted() {
		return "Measure B and N (next sheet) before boring."
	}
	return "Measure B before boring."
}

// look is the last step of both ways.
func (d *bored) look() string {
	if d.p.Offset == 0 {
		return ""
	}
	return fmt.Sprintf("Both ways: close the joint and look through before the peg goes in. The tenon's hole must stand %s than the other, by e. If it stands the other way, stop.", d.short())
}

// faceName names a face of the receiver in a sentence.
func (d *bored) faceName(n int) string {
	t := d.g.FaceTitle(true, n)
	if strings.HasPrefix(t, "face ") || strings.HasPrefix(t, "a ") {
		return t
	}
	return "face " + t
}

// short says in two or three words on which side the tenon hole stands.
func (d *bored) short() string {
	if d.slanted() {
		return "farther up the " + d.j.Of.Name()
	}
	return "nearer the shoulder"
}

const waysPad = 2.0

// drawWays draws the box of the ways of working at the foot of the field, side
// by side, and returns what is left above it.
func (d *bored) drawWays(s *draw.Sheet, f block.Field) block.Field {
	ws := d.ways()
	col := (f.W() - 2*waysPad - float64(len(ws)-1)*5) / float64(len(ws))
	look := font.Wrap(d.look(), f.W()-2*waysPad, dim.Small)
	lines := 0
	for _, w := range ws {
		n := 0
		for _, t := range w.steps {
			n += len(font.Wrap(t, col-5, dim.Small))
		}
		lines = max(lines, n)
	}
	base := f.Y0 + waysPad/2 + float64(len(look))*dim.Small*page.Pitch + 0.6
	top := base + dim.Text*page.Pitch + float64(lines)*dim.Small*page.Pitch + waysPad
	s.Rect(draw.FrameLine, draw.Box{Min: vec.At(f.X0, f.Y0), Max: vec.At(f.X1, top)})
	for i, w := range ws {
		p := page.Pen{S: s, X: f.X0 + waysPad + float64(i)*(col+5), Y: top - waysPad, W: col}
		if i > 0 {
			s.Line(draw.Dimension, vec.At(p.X-2.5, base), vec.At(p.X-2.5, top))
		}
		p.Head(w.head)
		for n, t := range w.steps {
			s.Text(vec.At(p.X, p.Y-dim.Small), dim.Small, strconv.Itoa(n+1)).Bold = true
			step := page.Pen{S: s, X: p.X + 5, Y: p.Y, W: col - 5}
			step.Para(t)
			p.Y = step.Y
		}
	}
	if len(look) > 0 {
		s.Line(draw.Dimension, vec.At(f.X0, base), vec.At(f.X1, base))
		p := page.Pen{S: s, X: f.X0 + waysPad, Y: base - 1, W: f.W() - 2*waysPad}
		p.Para(d.look())
	}
	f.Y0 = top + 3
	return f
}
