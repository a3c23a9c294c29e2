package drawbore

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/geom/vec"
)

// boringCautions are the cautions for boring and pegging a joint.
func boringCautions() []string {
	return []string{
		"Clamp or dog the timber and brace the handle for the kick when the bit grabs. Clear the chips often. Back the far face.",
		"Pegging: eye protection. Strike squarely; a peg that kinks or splits is bored out. Nobody stands under a joint being driven.",
	}
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

// besideSection fills the room left of the receiver: above the peg which way
// and why it matters, below it the letters and the joints served.
func (d *bored) besideSection(c *cut, f block.Field) {
	x1 := c.paper(c.west, 0).X
	low := c.paper(0, d.p.Bore/2).Y + 4
	key := block.Field{X0: f.X0, Y0: low, X1: f.X0 + keyWide, Y1: f.Y1}
	block.KeyView(c.s, key, d.f, map[string]bool{d.j.Into.ID: true, d.j.Of.ID: true})
	w := page.Pen{S: c.s, X: key.X1 + 5, Y: f.Y1, W: x1 - 6 - key.X1 - 5}
	d.wayWords(&w)
	d.pegWords(c)
	w = page.Pen{S: c.s, X: f.X0, Y: c.paper(0, -d.p.Bore/2).Y - underPeg, W: x1 - 8 - f.X0, Letters: d.legendGroup()}
	for _, l := range d.legend() {
		w.Para(l)
	}
}

const keyWide = 42.0 // of the key view, paper mm

// wayWords writes which way the tenon hole is set off and why it matters.
func (d *bored) wayWords(w *page.Pen) {
	if d.p.Offset == 0 {
		w.Head("No draw: the two holes line up")
		return
	}
	w.Head(fmt.Sprintf("Tenon hole %s %s", d.say(d.p.Offset), d.toward()))
	w.Para(d.pull() + " The broad arrow shows the pull. Bored the other way, the peg opens the joint.")
}

// pegWords names the diameters at the peg.
func (d *bored) pegWords(c *cut) {
	tip := c.paper(c.tip(), d.lead.Tip/2)
	mouth := c.paper(c.left, d.p.Bore/2)
	lead := "lead's tip Ø " + d.say(d.lead.Tip)
	if _, fits := c.taper(); !fits {
		lead += ", taper " + d.say(d.lead.Length)
	}
	words := []string{lead, "bore Ø " + d.say(d.p.Bore) + ", peg the same"}
	letters := dim.Together("peg", words...)
	for i, to := range []struct{ x, y float64 }{{tip.X, tip.Y}, {mouth.X, mouth.Y}} {
		y := mouth.Y + 4 + float64(i)*6
		x := mouth.X - 9
		letters.Text(c.s, vec.At(x-1, y-letters.Height/2), words[i]).Anchor = draw.End
		dim.Leader(c.s, vec.At(x, y), vec.At(to.x, to.y), false)
	}
}

// legendHeight returns the height of the legend at a width.
func (d *bored) legendHeight(width float64) float64 {
	p := page.Pen{W: width, Letters: d.legendGroup()}
	high := 0.0
	for _, l := range d.legend() {
		high += p.ParaHeight(l)
	}
	return high
}

// legendGroup is the lettering of the legend and of the joints served under it.
func (d *bored) legendGroup() dim.Group {
	return dim.Together("legend", append(d.legend(), d.served())...)
}

// legend says what the letters of the section are.
func (d *bored) legend() []string {
	var out []string
	p := d.p
	if p.Offset != 0 && !d.slanted() {
		out = append(out, "A bearing plane to mortise hole. B shoulder to tenon hole.")
	}
	relish := "R relish: tenon hole to the first free surface behind it, along the grain."
	if p.Offset != 0 {
		relish = "e offset of the two holes. " + relish
	}
	out = append(out, relish)
	if d.slanted() && p.Offset != 0 {
		out = append(out, "The cut runs along the "+d.j.Of.Name()+", so the "+d.j.Into.Name()+" is cut aslant.")
	}
	if p.Flush {
		return append(out, "Peg: "+scene.FlushWords(p)+".")
	}
	over := p.Length - p.Head - p.From.Dist(p.To)
	out = append(out, fmt.Sprintf("Peg: %s proud of the entry face, %s beyond the far face when driven.", d.say(p.Head), d.say(over)))
	return out
}

// drawServed names the joints that the sheet serves at the foot of the field
// and returns what is left above.
func (d *bored) drawServed(s *draw.Sheet, f block.Field) block.Field {
	p := page.Pen{S: s, X: f.X0, W: f.W(), Letters: d.legendGroup()}
	top := f.Y0 + p.ParaHeight(d.served())
	p.Y = top
	p.Para(d.served())
	f.Y0 = top + 1
	return f
}

// served names the joints that the sheet serves with their marks.
func (d *bored) served() string {
	same, mirror := d.g.Hands()
	joints := d.j.Mark + " " + d.j.ID
	if len(same) > 1 {
		joints += "; cut alike: " + scene.JoinersMarks(same[1:])
	}
	if len(mirror) > 0 {
		joints += "; of opposite hand: " + scene.JoinersMarks(mirror)
	}
	n := len(d.pegs)
	pegs := "1 peg each"
	if n > 1 {
		pegs = fmt.Sprintf("%d pegs each, bored alike", n)
	}
	return "Joints served: " + joints + "; " + pegs + "."
}
