package solve

import (
	"fmt"
	"math"

	"pegwright/geom/finding"
	"pegwright/geom/spec"
)

// Limits of one frame. They lie far above any frame that is cut by hand, and
// keep a slip of the pen from asking for a million sticks.
const (
	maxLength = 30000.0   // of one timber, mm
	maxExtent = 1e6       // of a building, along its bays, mm
	maxSticks = 5000      // of a frame
	maxOfOne  = 400       // joints of one timber
	leastSide = 18 * inch // of a building, between bents or of an eave, mm
)

// sized refuses a building that would need longer timbers than there may be, or
// is too small to stand in: most often a number that was meant in feet or metres.
func (p *plan) sized() {
	for i, l := range append([]spec.Length{p.b.Span, p.b.Eave}, p.b.Bays...) {
		show := p.s.f.Units.Format
		meant := ""
		if i >= 2 {
			meant = "; bays takes the width of each bay, as in [10', 10']"
		}
		switch {
		case l.MM > maxLength:
			p.s.fault(l.At, l.Src, "no timber may be longer than "+show(maxLength)+", and this length needs one", "check the unit, or divide the length")
		case l.Set && l.MM < leastSide:
			p.s.fault(l.At, l.Src, "this makes "+show(l.MM)+" of building, and the least is "+show(leastSide),
				"check the unit: a bare number takes the file's, "+p.s.d.Unit.Plural()+"; write 8' for feet, 2.4 m for metres"+meant)
		}
	}
	if p.extent() > maxExtent {
		last := p.b.Bays[len(p.b.Bays)-1]
		p.s.fault(last.At, last.Src, "the bays make a building of more than "+p.s.f.Units.Format(maxExtent), "divide the building into several descriptions")
	}
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

func (p *plan) spreads() []spread {
	s, b, bays := p.s, p.b, float64(len(p.b.Bays))
	slopes := float64(2 + len(b.LeanTos))
	floor := max(b.Span.MM*(bays+1), p.extent())
	rafter, _ := s.size("rafter")
	purlin, _ := s.size("purlin")
	joist, _ := s.joistSize(b.Floor.Joists)
	loft, _ := s.joistSize(b.Loft.Joists)
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
		case r.along/l.MM > maxSticks:
			p.s.fault(l.At, l.Src, fmt.Sprintf("this spacing makes about %s %s, and a frame has %d timbers at most", about(r.along/l.MM), r.what, maxSticks),
				"check the unit, or write a larger spacing")
		case l.MM < r.width/2:
			p.s.fault(l.At, l.Src, fmt.Sprintf("%s are %s wide, and at this spacing would stand more than half in each other", r.what, p.s.f.Units.Format(r.width)),
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

// crowded refuses a frame of more sticks than there may be, and a stick of more
// joints. The fault is at the last one.
func (s *solver) crowded() {
	if n := len(s.order); n > maxSticks {
		s.fault(s.order[n-1].t.At, "", fmt.Sprintf("the frame has %d timbers, and may have %d at most", n, maxSticks), "divide the frame into several descriptions")
	}
	joints := map[*stick]int{}
	for _, p := range s.pacts {
		for _, st := range []*stick{p.r, p.e} {
			if joints[st]++; joints[st] == maxOfOne+1 {
				s.fault(p.at, p.id, fmt.Sprintf("%s has more than %d joints", st.t.ID, maxOfOne), "divide the timber, or leave joints out")
			}
		}
	}
}

// long faults a timber that is longer than there may be.
func (s *solver) long(at finding.Pos, id string, mm float64) {
	s.fault(at, id, fmt.Sprintf("%s would be %s long", id, s.f.Units.Format(mm)),
		fmt.Sprintf("no timber may be longer than %s; divide it", s.f.Units.Format(maxLength)))
}
