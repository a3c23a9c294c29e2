package building

import (
	"fmt"
	"math"

	"pegwright/geom/finding"
	"pegwright/geom/measure"
	"pegwright/geom/scheme"
	"pegwright/geom/spec"
)

// Limits of a building.
const (
	maxExtent = 1e6       // along its bays, mm
	leastSide = 18 * inch // between bents or of an eave, mm
)

// sized refuses a building that would need longer timbers than there may be, or
// is too small to stand in: most often a number that was meant in feet or metres.
func (p *plan) sized() {
	for i, l := range append([]spec.Length{p.b.Span, p.b.Eave}, p.b.Bays...) {
		show := p.s.Frame.Units.Format
		meant := ""
		if i >= 2 {
			meant = "; bays takes the width of each bay, as in [10', 10']"
		}
		switch {
		case l.MM > scheme.MaxLength:
			p.s.Fault(l.At, l.Src, "no timber may be longer than "+show(scheme.MaxLength)+", and this length needs one", p.meant(l.MM, "check the unit, or divide the length"))
		case l.Set && l.MM < leastSide:
			p.s.Fault(l.At, l.Src, "this makes "+show(l.MM)+" of building, and the least is "+show(leastSide),
				"check the unit: a bare number takes the file's, "+p.s.Description.Unit.Plural()+"; write 8' for feet, 2.4 m for metres"+meant)
		}
	}
	if p.extent() > maxExtent {
		last := p.b.Bays[len(p.b.Bays)-1]
		p.s.Fault(last.At, last.Src, "the bays make a building of more than "+p.s.Frame.Units.Format(maxExtent), "divide the building into several descriptions")
	}
}

// asked warns of a span, a bay or an eave that is far above what is cut by hand:
// most often a figure too many, or feet that were meant as inches.
func (p *plan) asked() {
	show := p.s.Frame.Units.Format
	for i, l := range append([]spec.Length{p.b.Span, p.b.Eave}, p.b.Bays...) {
		if l.MM <= p.std.widest {
			continue
		}
		what := "a bay"
		if i < 2 {
			what = []string{"a span", "an eave"}[i]
		}
		p.s.Frame.Notes = append(p.s.Frame.Notes, finding.Finding{Severity: finding.Warn, Rule: "size", At: l.At,
			Text: fmt.Sprintf("%s of %s: frames of this kind seldom have more than %s", what, show(l.MM), show(p.std.widest)),
			Mend: p.meant(l.MM, "check the unit, and leave members as long as this to an engineer")})
	}
}

// meant asks about the length of 5 ft or more that a slip would have made so
// long: ten times by a figure too many or, where the description is in feet and
// inches, twelve times by the wrong mark. Where neither is likely it says
// otherwise.
func (p *plan) meant(mm float64, otherwise string) string {
	unit, factors := 10.0, []float64{10}
	if p.s.Frame.Units == measure.Imperial {
		unit, factors = inch, []float64{10, 12}
	}
	for _, by := range factors {
		n := mm / by / unit
		if math.Abs(n-math.Round(n)) < 1e-6 && mm/by >= 60*inch {
			return "did you mean " + p.s.Frame.Units.Format(mm/by) + "? If not, " + otherwise
		}
	}
	return otherwise
}

// extent is the length of the building over all bays.
func (p *plan) extent() float64 {
	sum := 0.0
	for _, l := range p.b.Bays {
		sum += l.MM
	}
	return sum
}

// spread is one kind of stick that a spacing makes many of.
type spread struct {
	what    string
	spacing spec.Length
	along   float64 // what is divided by the spacing, over the whole building
	width   float64 // of one stick, across the row
	asked   bool
}

// spreads are all kinds of stick that a building makes by a spacing.
func (p *plan) spreads() []spread {
	s, b, bays := p.s, p.b, float64(len(p.b.Bays))
	slopes := float64(2 + len(b.LeanTos))
	floor := max(b.Span.MM*(bays+1), p.extent())
	rafter, _ := s.Size("rafter")
	purlin, _ := s.Size("purlin")
	joist, _ := p.joistSize(b.Floor.Joists)
	loft, _ := p.joistSize(b.Loft.Joists)
	return []spread{
		{"rafters", b.Roof.RafterSpacing, slopes * p.extent(), rafter, b.Roof.Set},
		{"purlins", b.Roof.PurlinSpacing, bays * b.Span.MM / p.cos, purlin, b.Roof.Set},
		{"joists", b.Floor.Spacing, floor, joist, b.Floor.Set},
		{"loft joists", b.Loft.Spacing, bays * b.Span.MM, loft, b.Loft.Set},
		{"piers", b.Piers.Spacing, 2*p.extent() + (bays+1)*b.Span.MM, b.Piers.Size.A, b.Piers.Set},
	}
}

// counted refuses spacings that would make more sticks than a frame may have,
// or hardly anything but sticks in each other, before any of them is laid.
// Sticks that overlap a little are laid, and the proof names them.
func (p *plan) counted() {
	for _, r := range p.spreads() {
		l := r.spacing
		switch {
		case !r.asked || !l.Set:
		case r.along/l.MM > scheme.MaxSticks:
			p.s.Fault(l.At, l.Src, fmt.Sprintf("this spacing makes about %s %s, and a frame has %d timbers at most", about(r.along/l.MM), r.what, scheme.MaxSticks),
				"check the unit, or write a larger spacing")
		case l.MM < r.width/2:
			p.s.Fault(l.At, l.Src, fmt.Sprintf("%s are %s wide, and at this spacing would stand more than half in each other", r.what, p.s.Frame.Units.Format(r.width)),
				"check the unit, or write a larger spacing")
		}
	}
}

// about names a count to two figures.
func about(n float64) string {
	if n >= 1e9 {
		return "a thousand million or more"
	}
	unit := math.Pow(10, math.Floor(math.Log10(n))-1)
	return fmt.Sprintf("%.0f", math.Round(n/unit)*unit)
}
