package templates

import (
	"fmt"

	"pegwright/geom/measure"
)

// words returns what stands beside the template, in reading order.
func (p plan) words(u measure.Units) words {
	var w words
	j, v := p.joint, p.v
	switch p.kind {
	case "near":
		w.add(7, true, "NEAR FACE")
	case "far":
		w.add(12, true, "FAR FACE")
	case "through":
		w.add(7, true, "PEG FROM ABOVE")
	case "mate":
		w.add(7, true, "OTHER TIMBER")
	case "flap":
		w.add(7, true, "FLAP")
	case "end":
		w.add(7, true, "END PATTERN")
	default:
		if j.Broad {
			w.add(7, true, "LAP")
			break
		}
		w.add(7, true, "TENON")
	}
	w.add(5, true, v.t.ID+", "+p.faceName(v.face))
	w.add(lettering, true, "mark "+j.Mark+", joint "+j.ID)
	switch p.kind {
	case "tenon":
		p.tenonWords(&w, u)
	case "through":
		p.throughWords(&w, u)
	case "mate":
		p.mateWords(&w, u)
	case "flap":
		p.flapWords(&w, u)
	case "end":
		p.endWords(&w, u)
	default:
		p.holeWords(&w, u)
	}
	return w
}

// holeWords are the words of the near and the far face.
func (p plan) holeWords(w *words, u measure.Units) {
	p.registerWords(w)
	w.add(lettering, true, p.positionWords(u))
	p.partWords(w, u)
	w.add(lettering, false, p.scribedWords()+"; never put the stock on\u00a03\u00a0or\u00a04.")
	if p.housed {
		w.add(lettering, true, "Prick and bore before cutting the housing.")
	}
	first, second := "1.\u00a0Near face: stop when the lead screw shows on the far face.", "2.\u00a0Turn the stick, finish from the far face."
	if p.kind == "far" {
		first, second = "1.\u00a0Near face first: stop when the lead screw shows here.", "2.\u00a0Turn the stick, finish from this face."
	}
	w.add(lettering, false, first+" "+second+p.packWords())
	for _, h := range p.holes {
		if h.peg.Flush {
			w.add(lettering, true, "Saw the peg flush on both faces before the next timber stands there.")
			break
		}
	}
}

// scribedWords say what line J is laid on.
func (p plan) scribedWords() string {
	on := " on its scribed line"
	if p.atEnd() {
		on = " on the finished end"
	}
	return "Line " + p.line() + on + ", squared round from faces\u00a01\u00a0and\u00a02"
}

// packWords say what holds the wood up under the bit.
func (p plan) packWords() string {
	if p.joint.Broad {
		return " Lay waste wood under the notch before boring."
	}
	return " Pack the mortise with a scrap block before boring."
}

// throughWords are the words of a blind peg's sheet.
func (p plan) throughWords(w *words, u measure.Units) {
	j := p.joint
	p.registerWords(w)
	w.add(lettering, true, p.positionWords(u))
	into := p.agreed(func(q plan) string { return q.joint.Into.ID })
	if into == "" {
		into = "the " + j.Into.Role
	}
	w.add(lettering, false, "Line "+p.line()+" on the line of its name, squared round from it, up the reference face.",
		"Bore square to this face, right through. Then set the timber in its seat and bore on into "+into+" through the hole.")
	w.add(lettering, false, fmt.Sprintf("The bore ends %s below the ideal face of the %s.", unbroken(u.FormatJoint(p.deep())), j.Into.Role))
}

// deep returns how far a blind peg's bore goes in below the receiver's ideal
// face that it enters, mm.
func (p plan) deep() float64 {
	g := p.holes[0].peg
	t := p.joint.Into
	return -t.IdealPlane(g.Entry).Height(t.Place.In(g.To))
}

// tenonWords are the words of a tenon's sheet.
func (p plan) tenonWords(w *words, u measure.Units) {
	v := p.v
	lay := "Lay on the cheek toward face\u00a0%d. Fold the paper up along the shoulder line and push the crease home against the shoulder."
	if p.joint.Broad {
		lay = "Lay on the lap, on the side of face\u00a0%d, the shoulder line on the shoulder; on the uncut side square the shoulder round first."
	}
	w.add(lettering, false, fmt.Sprintf(lay+" The reference edge is the line of %s.", v.face, p.faceName(v.side())))
	p.crossWords(w, u)
	h := p.holes[len(p.holes)-1]
	if p.arrow == nil {
		w.add(lettering, true, "Not offset: the holes of both timbers lie in line. Close the joint and bore through both at once where that can be done.")
		return
	}
	w.add(lettering, true, fmt.Sprintf("Bore at the cross only: set %s %s.", unbroken(u.FormatJoint(h.c.Dist(h.other))), h.peg.Words))
	w.add(lettering, false, "Or close the joint, prick through the bored mortise, and shift the mark with the mover.")
}

// crossWords say how far each cross lies from the reference edge.
func (p plan) crossWords(w *words, u measure.Units) {
	var bored []hole
	for _, h := range p.holes {
		if !h.shadow {
			bored = append(bored, h)
		}
	}
	for _, h := range bored {
		cross := "Cross"
		if len(bored) > 1 {
			cross = fmt.Sprint("Cross of hole\u00a0", h.n)
		}
		w.add(lettering, false, fmt.Sprintf("%s: %s from the reference edge.", cross, unbroken(u.FormatJoint(abs(h.c.Y)))))
	}
}
