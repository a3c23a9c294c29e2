package sheet

import (
	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// Lettering and line pitch, paper millimetres.
const (
	small = dim.Small
	text  = dim.Text
	big   = 5.0
	pitch = 1.65 // base line to base line over text height
)

func at(x, y float64) vec.P { return vec.P{X: x, Y: y} }

// pen is a place on a sheet where text is set line after line, downward.
type pen struct {
	s    *draw.Sheet
	x, y float64 // left edge and top of the next line
	w    float64
	// letters is the group of the running texts that stand together; where it has
	// no height each text is a group of its own.
	letters dim.Group
}

// together makes one group of the running texts that follow, which are these or
// as these.
func (p *pen) together(name string, texts ...string) { p.letters = dim.Together(name, texts...) }

// group returns the group in which running texts are set.
func (p *pen) group(texts ...string) dim.Group {
	if p.letters.Height > 0 {
		return p.letters
	}
	return dim.Together("", texts...)
}

// line sets one line that is known to fit and moves down.
func (p *pen) line(t string, height float64, bold bool) {
	g := dim.Together("", t)
	g.Height = max(g.Height, height)
	p.set(g, t).Bold = bold
}

// set sets one line of a group and moves down.
func (p *pen) set(g dim.Group, t string) *draw.Text {
	x := g.Text(p.s, at(p.x, p.y-g.Height), t)
	p.y -= g.Height * pitch
	return x
}

// head sets a heading.
func (p *pen) head(t string) {
	for _, l := range font.WrapFace(t, p.w, text, true) {
		p.line(l, text, true)
	}
}

// para sets wrapped text.
func (p *pen) para(t string) {
	g := p.group(t)
	for _, l := range font.Wrap(t, p.w, g.Height) {
		p.set(g, l)
	}
}

// paraHeight is the height that para will take.
func (p *pen) paraHeight(t string) float64 {
	h := p.group(t).Height
	return float64(len(font.Wrap(t, p.w, h))) * h * pitch
}

// skip leaves a space.
func (p *pen) skip(h float64) { p.y -= h }

// pair sets a name and its value, the value from a share of the width on.
func (p *pen) pair(name, value string, share float64) {
	g := p.group(name, value)
	names := wrap(name, p.w*share-1.5, g.Height)
	values := wrap(value, p.w*(1-share), g.Height)
	for i := range max(len(names), len(values)) {
		if i < len(names) {
			g.Text(p.s, at(p.x, p.y-g.Height), names[i])
		}
		if i < len(values) {
			g.Text(p.s, at(p.x+p.w*share, p.y-g.Height), values[i])
		}
		p.y -= g.Height * pitch
	}
}

// pairHeight is the height that pair will take.
func (p *pen) pairHeight(name, value string, share float64) float64 {
	h := p.group(name, value).Height
	n := max(len(wrap(name, p.w*share-1.5, h)), len(wrap(value, p.w*(1-share), h)))
	return float64(n) * h * pitch
}

// wrap is font.Wrap that also breaks a word that is too long, such as an id,
// after a hyphen, or anywhere if it must.
func wrap(t string, width, height float64) []string {
	var out []string
	for _, l := range font.Wrap(t, width, height) {
		for font.Measure(l, height, false) > width {
			cut := breakAt(l, width, height)
			if cut <= 0 || cut >= len(l) {
				break
			}
			out = append(out, l[:cut])
			l = l[cut:]
		}
		out = append(out, l)
	}
	return out
}

// breakAt returns the byte at which a long word is broken.
func breakAt(l string, width, height float64) int {
	best, any := 0, 0
	for i, r := range l {
		if i > 0 && font.Measure(l[:i], height, false) > width {
			break
		}
		any = i
		if i > 0 && l[i-1] == '-' && r != '-' {
			best = i
		}
	}
	if best == 0 {
		return any
	}
	return best
}

// split parts a field at x into a left and a right one with a gap between.
func split(f block.Field, x, gap float64) (left, right block.Field) {
	left, right = f, f
	left.X1, right.X0 = x-gap/2, x+gap/2
	return left, right
}
