package timber

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// figures says how a feature is laid out across its face and how deep it goes,
// then the same shorter and shorter; the table tells the rest.
func (f *feature) figures(u measure.Units) []string {
	n := fmt.Sprintf("%d", f.n)
	if f.face == 0 {
		return []string{n + ": end", n}
	}
	if f.bore == nil {
		across := n + ": " + f.acrossWords(u)
		return []string{across + ", " + f.deepWords(u), across + cutShort, n + cutShort}
	}
	short := fmt.Sprintf("%s: Ø %s", n, u.PlainJoint(f.bore.Diameter))
	at := short + " at " + u.PlainJoint(f.lo)
	lean := ""
	if f.leans != "" {
		lean = ", leans " + f.leanWords()
	}
	if f.through {
		if lean == "" {
			return []string{at, short + cutShort}
		}
		return []string{at + lean, short + cutShort, n + cutShort}
	}
	if lean != "" {
		return []string{at + ", " + u.PlainJoint(f.deep) + " along the bit" + lean, short + cutShort, n + cutShort}
	}
	return []string{at + ", " + u.PlainJoint(f.deep) + " deep", at + cutShort, short + cutShort}
}

// cutShort ends a label whose last figures are left to the table.
const cutShort = " ..."

// leanWords says how far a bore leans from the square, and where it goes.
func (f *feature) leanWords() string {
	return draw.Number(f.lean, 1) + "° to " + f.leans
}

// acrossWords says where a cut lies across its face.
func (f *feature) acrossWords(u measure.Units) string {
	const tol = 0.05
	switch lo, hi := f.lo <= tol, f.hi >= f.across-tol; {
	case lo && hi:
		return "full width"
	case lo:
		return "to " + u.PlainJoint(f.hi)
	case hi:
		return u.PlainJoint(f.lo) + " and on"
	}
	return u.PlainJoint(f.lo) + " to " + u.PlainJoint(f.hi)
}

func (f *feature) deepWords(u measure.Units) string {
	if f.through {
		return "through"
	}
	return u.PlainJoint(f.deep) + " deep"
}

// id is the owner of a feature's lines and words.
func (f *feature) id() string {
	if f.bore != nil {
		return f.bore.Peg
	}
	if f.joint != nil {
		return f.joint.ID
	}
	return ""
}

// target returns the point on paper that a feature's leader leads to: in its
// mouth, near the upper edge; for a bore on the rim.
func (p *facePage) target(r faceRow, f *feature) (vec.P, bool) {
	if f.bore != nil {
		x, ok := p.x(f.from)
		return vec.At(x, p.y(r, f.lo)+f.bore.Diameter/2*p.k), ok
	}
	if f.face == 0 {
		x, ok := p.x((f.from + f.to) / 2)
		return vec.At(x, r.top-1.5), ok
	}
	for _, share := range p.shares(f) {
		along := f.from + (f.to-f.from)*share
		lo, hi, any := f.chord(along)
		if x, ok := p.x(along); ok && any {
			y := max(p.y(r, lo), p.y(r, hi))
			return vec.At(x, y-min(1.5, math.Abs(p.y(r, lo)-p.y(r, hi))/2)), true
		}
	}
	return vec.P{}, false
}

// shares are the places along a cut that its leader may lead to, those wished for
// first. What is cut away to the end of the stick is shown by the line that it leaves:
// a point in its middle would hang in the air.
func (p *facePage) shares(f *feature) []float64 {
	inside := []float64{0.5, 0.3, 0.7, 0.05, 0.95}
	switch {
	case f.into || f.from <= 0.3 && f.to >= p.t.Length-0.3:
		return inside
	case f.from <= 0.3:
		return append([]float64{0.999}, inside...)
	case f.to >= p.t.Length-0.3:
		return append([]float64{0.001}, inside...)
	}
	return inside
}

// chord returns where a line across the face at a place along it meets the
// mouth.
func (f *feature) chord(along float64) (lo, hi float64, ok bool) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for i, a := range f.mouth {
		b := f.mouth[(i+1)%len(f.mouth)]
		if (a.X <= along) != (b.X <= along) {
			y := a.Y + (b.Y-a.Y)*(along-a.X)/(b.X-a.X)
			lo, hi, ok = min(lo, y), max(hi, y), true
		}
	}
	if !ok {
		return f.lo, f.hi, len(f.mouth) == 0
	}
	return lo, hi, ok
}
