package templates

import (
	"fmt"
	"slices"

	"pegwright/geom"
	"pegwright/geom/measure"
)

// part says which part of an end pattern or of a template of holes a plan is. The
// corners of a long scarf lie far apart, and between them there is nothing but
// straight lines, for which a straightedge is truer than paper that is taped
// together: such a pattern comes in parts, each laid on a line of its own.
type part struct {
	n, of int     // the number of the part, 1 to of; of is 0 for a whole pattern
	from  float64 // how far its line lies from line J, toward the finished end, mm
	own   bool    // it has a line of its own, and not line J
	off   string  // what line J is, in brackets, where no other part shows it
}

// initial is the letter of the line which the plan is laid on. A joint has one line J,
// on the timber that is cut into; what is laid on another line of a stick has
// another letter: E for an end pattern, H for the holes of the half that enters,
// P for a peg that ends in the wood.
func (p plan) initial() string {
	switch p.kind {
	case "end":
		return "E"
	case "mate":
		return "H"
	case "through":
		return "P"
	}
	return "J"
}

// line names the line that the plan is laid on: its letter, and for a part that
// has a line of its own the part's number.
func (p plan) line() string {
	if p.part.own {
		return fmt.Sprint(p.initial(), p.part.n)
	}
	return p.initial()
}

// plainStretch is how long a stretch without a corner is left out of an end
// pattern, mm: less would save no sheet.
const plainStretch = 200.0

// endParts returns an end pattern as it is, or in its parts where it is wider
// than room mm and stretches without a corner are left out.
func endParts(j *geom.Joint, t *geom.Timber, room float64) []plan {
	whole, lo, hi, ok := endPlan(j, t)
	if !ok {
		return nil
	}
	spans := whole.spans(lo, hi)
	if hi-lo <= room || len(spans) < 2 {
		return []plan{whole}
	}
	var out []plan
	for i, s := range spans {
		p := whole
		p.strokes, p.guides, p.dims, p.need, p.most, p.want = nil, nil, nil, nil, nil, nil
		p.part = part{n: i + 1, of: len(spans)}
		if p.v.x0 < s.lo || p.v.x0 > s.hi {
			p.v.x0, p.part.own, p.endName = s.corner, true, "square round"
			p.part.from = s.corner - whole.v.x0
		}
		p.outline(s.lo, s.hi)
		p.endLines(s.lo, s.hi)
		p.endRoom()
		out = append(out, p)
	}
	return out
}

// span is a stretch of a timber with corners close to each other: from lo to
// hi along the timber, plain wood included, and the first of the corners.
type span struct{ lo, hi, corner float64 }

// spans returns the stretches between lo and hi, along the timber, that have
// corners.
func (p plan) spans(lo, hi float64) []span {
	xs := []float64{p.v.x0}
	for _, s := range p.strokes {
		if s.mark != mark("edge:torn", p.joint, nil) {
			xs = append(xs, s.a.X+p.v.x0, s.b.X+p.v.x0)
		}
	}
	for _, g := range p.guides {
		if g.edge() {
			xs = append(xs, g.a.X+p.v.x0, g.b.X+p.v.x0)
		}
	}
	slices.Sort(xs)
	var out []span
	for _, x := range xs {
		if lo > 0 && x < lo+1 || hi < p.v.t.Length && x > hi-1 {
			continue // torn there: no corner
		}
		if n := len(out); n > 0 && x-out[n-1].hi < plainStretch {
			out[n-1].hi = x + plainWood
			continue
		}
		out = append(out, span{max(lo, x-plainWood), x + plainWood, x})
	}
	for i := range out {
		out[i].hi = min(out[i].hi, hi)
	}
	return out
}

// partWords say where the line of a part lies, and what is between the parts.
func (p plan) partWords(w *words, u measure.Units) {
	if p.part.of == 0 {
		return
	}
	if way := "finished"; p.part.own {
		if p.part.from < 0 {
			way = "start"
		}
		w.add(lettering, true, fmt.Sprintf("Line %s: %s from line %s%s, toward the %s end.", p.line(), unbroken(u.FormatJoint(abs(p.part.from))), p.initial(), p.part.off, way))
	}
	if p.part.of < 2 {
		return
	}
	others := "Between the parts all lines run straight: prick the corners of all of them, then join."
	if p.kind != "end" {
		others = "The other holes of the joint are on sheets of their own."
	}
	w.add(lettering, false, fmt.Sprintf("Part %d of %d. %s", p.part.n, p.part.of, others))
}
