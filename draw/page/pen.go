package page

import (
	"slices"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/geom/vec"
)

// Big is the height of what must be read first on a sheet, mm.
const Big = 5.0

// Pitch is the distance from base line to base line in text heights.
const Pitch = 1.65

// Pen is a place on a sheet where text is set line after line, downward, paper
// millimetres.
type Pen struct {
	S    *draw.Sheet // set on
	X, Y float64     // left edge and top of the next line
	W    float64     // width of the column
	// Letters is the group of the running texts that stand together; where it has
	// no height each text is a group of its own.
	Letters dim.Group
}

// Together makes one group of the running texts that follow, which are these or
// as these.
func (p *Pen) Together(name string, texts ...string) { p.Letters = dim.Together(name, texts...) }

// Group returns the group in which running texts are set.
func (p *Pen) Group(texts ...string) dim.Group {
	if p.Letters.Height > 0 {
		return p.Letters
	}
	return dim.Together("", texts...)
}

// Line sets one line that is known to fit and moves down.
func (p *Pen) Line(t string, height float64, bold bool) {
	g := dim.Together("", t)
	g.Height = max(g.Height, height)
	p.Set(g, t).Bold = bold
}

// Set sets one line of a group and moves down.
func (p *Pen) Set(g dim.Group, t string) *draw.Text {
	x := g.Text(p.S, vec.At(p.X, p.Y-g.Height), t)
	p.Y -= g.Height * Pitch
	return x
}

// Head sets a heading.
func (p *Pen) Head(t string) {
	for _, l := range font.WrapFace(t, p.W, dim.Text, true) {
		p.Line(l, dim.Text, true)
	}
}

// Para sets wrapped text.
func (p *Pen) Para(t string) {
	g := p.Group(t)
	for _, l := range font.Wrap(t, p.W, g.Height) {
		p.Set(g, l)
	}
}

// ParaHeight is the height that para will take.
func (p *Pen) ParaHeight(t string) float64 {
	h := p.Group(t).Height
	return float64(len(font.Wrap(t, p.W, h))) * h * Pitch
}

// Skip leaves a space.
func (p *Pen) Skip(h float64) { p.Y -= h }

// Pair sets a name and its value, the value from a share of the width on.
func (p *Pen) Pair(name, value string, share float64) {
	g := p.Group(name, value)
	names := Wrap(name, p.W*share-1.5, g.Height)
	values := Wrap(value, p.W*(1-share), g.Height)
	for i := range max(len(names), len(values)) {
		if i < len(names) {
			g.Text(p.S, vec.At(p.X, p.Y-g.Height), names[i])
		}
		if i < len(values) {
			g.Text(p.S, vec.At(p.X+p.W*share, p.Y-g.Height), values[i])
		}
		p.Y -= g.Height * Pitch
	}
}

// pairHeight is the height that pair will take.
func (p *Pen) pairHeight(name, value string, share float64) float64 {
	h := p.Group(name, value).Height
	n := max(len(Wrap(name, p.W*share-1.5, h)), len(Wrap(value, p.W*(1-share), h)))
	return float64(n) * h * Pitch
}

// Wrap is font.Wrap that also breaks a word that is too long, such as an id,
// after a hyphen, or anywhere if it must.
func Wrap(t string, width, height float64) []string {
	lines := font.Wrap(t, width, height)
	if !slices.ContainsFunc(lines, func(l string) bool { return font.Measure(l, height, false) > width }) {
		return lines
	}
	var out []string
	for _, l := range lines {
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

// Split parts a field at x into a left and a right one with a gap between.
func Split(f block.Field, x, gap float64) (left, right block.Field) {
	left, right = f, f
	left.X1, right.X0 = x-gap/2, x+gap/2
	return left, right
}

// Scale writes the scale of a drawing that is n times smaller than the thing.
func Scale(n float64) string { return "1:" + draw.Number(n, 1) }
