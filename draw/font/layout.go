package font

import (
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// Run is a piece of a line of text that is set in one size. X and Y are the
// start of its base line from the start of the whole line, millimetres, y up.
type Run struct {
	S      string
	X, Y   float64
	Height float64
	Bold   bool
}

// Proportions of a fraction. Figures of 2.5 mm go with text of 3.5 mm, one step
// of ISO 3098 apart; the rest is by eye, in parts of the text height.
const (
	figures    = 2.5 / 3.5 // height of the figures
	raise      = 0.40      // base line of the upper figures
	lower      = -0.12     // base line of the lower figures
	beforeFrac = 0.16      // gap after a whole number
	afterFrac  = 0.08      // gap after the lower figures
	overlap    = 0.02      // how far the slash reaches under either figure
)

// Layout sets s at the given height (mm) and returns its runs, in reading
// order. The text is normalised first. A fraction is set with smaller figures,
// raised and lowered about a fraction slash; what counts as one is described at
// fractionAt. The runs joined give the normalised text again with every
// fraction's stroke turned into U+2044.
func Layout(s string, height float64, bold bool) []Run { return AppendLayout(nil, s, height, bold) }

// AppendLayout appends what Layout returns to runs.
func AppendLayout(runs []Run, s string, height float64, bold bool) []Run {
	s, stroke := normalised(s)
	switch {
	case s == "":
		return runs
	case !stroke:
		return append(runs, Run{S: s, Height: height, Bold: bold})
	}
	l := line{f: faceOf(bold), s: s, height: height, bold: bold, keep: true, runs: runs}
	l.set()
	return append(l.runs, l.last)
}

// Measure returns the width of s as Layout sets it, millimetres.
func Measure(s string, height float64, bold bool) float64 {
	f := faceOf(bold)
	if units, ok := f.plain(s); ok {
		return f.mm(units, height)
	}
	s, stroke := normalised(s)
	if !stroke {
		return f.width(s, height)
	}
	l := line{f: f, s: s, height: height, bold: bold}
	l.set()
	return l.x
}

// Fractured reports whether Layout sets a fraction in s.
func Fractured(s string) bool {
	if _, ok := faceOf(false).plain(s); ok {
		return false
	}
	_, _, _, end := nextFraction(Normalise(s), 0)
	return end > 0
}

// line is a normalised text that is being set.
type line struct {
	f      *face
	s      string
	height float64
	bold   bool
	keep   bool // all runs, not only the last
	x      float64
	last   Run // "" before the first
	runs   []Run
}

// set sets the whole text.
func (l *line) set() {
	from := 0
	for {
		at, n, d, end := nextFraction(l.s, from)
		if end == 0 {
			break
		}
		l.plain(from, at)
		l.fraction(n, d)
		from = end
	}
	l.plain(from, len(l.s))
}

func (l *line) put(s string, height, y float64) {
	if l.keep && l.last.S != "" {
		l.runs = append(l.runs, l.last)
	}
	l.last = Run{S: s, X: l.x, Y: y, Height: height, Bold: l.bold}
	l.x += l.f.width(s, height)
}

// plain sets a part of the text in full size. The space between a whole number
// and its fraction is kept in the text but takes only a small gap (fraction sees
// to it).
func (l *line) plain(from, to int) {
	if from == to {
		return
	}
	if den := l.last.S; den != "" {
		word := to - len(strings.TrimLeft(l.s[from:to], " "))
		l.last.S = l.s[from-len(den) : word] // no run begins with a space, which SVG readers drop
		l.x += afterFrac*l.height + l.f.width(l.s[from:word], l.height)
		if from = word; from == to {
			return
		}
	}
	l.put(l.s[from:to], l.height, 0)
}

func (l *line) fraction(num, den string) {
	if s := l.last.S; l.last.Y == 0 && strings.HasSuffix(s, " ") && endsInDigit(s[:len(s)-1]) {
		l.x = l.last.X + l.f.width(s[:len(s)-1], l.height) + beforeFrac*l.height
	}
	l.put(num, figures*l.height, raise*l.height)
	l.x -= overlap * l.height
	l.put(string(slash), l.height, 0)
	l.x -= overlap * l.height
	l.put(den, figures*l.height, lower*l.height)
}

// Clear room about a text, in parts of its height: room for the descenders below
// and for raised figures above, and a little air at the sides.
const (
	below = 0.35
	above = 1.2
	side  = 0.15
)

// Box returns the box of a text as it is set, with clear room about it, before
// its rotation about At: a renderer's halo and a checker of overlaps both ask
// here. Millimetres.
func Box(t *draw.Text) draw.Box { return BoxOf(t, Measure(t.S, t.Height, t.Bold)) }

// BoxOf is Box for a text that is known to be w mm wide, as one is that is tried
// at many places.
func BoxOf(t *draw.Text, w float64) draw.Box {
	x := t.At.X - Before(t.Anchor, w)
	return draw.Box{
		Min: vec.P{X: x - side*t.Height, Y: t.At.Y - below*t.Height},
		Max: vec.P{X: x + w + side*t.Height, Y: t.At.Y + above*t.Height},
	}
}

// Turned returns the smallest upright box on paper round Box, turned with the text.
func Turned(t *draw.Text) draw.Box {
	b := Box(t)
	if t.Rot == 0 {
		return b
	}
	sin, cos := math.Sincos(t.Rot)
	out := draw.NoBox()
	for _, p := range []vec.P{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}} {
		d := p.Sub(t.At)
		out = out.With(t.At.Add(vec.P{X: d.X*cos - d.Y*sin, Y: d.X*sin + d.Y*cos}))
	}
	return out
}

// Before returns how much of a width lies left of an anchor; same unit out as in.
func Before(a draw.Anchor, w float64) float64 {
	switch a {
	case draw.Middle:
		return w / 2
	case draw.End:
		return w
	}
	return 0
}
