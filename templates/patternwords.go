package templates

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/measure"
)

// flapWords are the words of the entered face's sheet.
func (p plan) flapWords(w *words, u measure.Units) {
	p.registerWords(w)
	w.add(lettering, true, p.positionWords(u))
	deep := "The outlines are true on this face."
	if d := p.joint.LetIn; d > 0.1 {
		deep = "The outlines are those at the bearing, " + unbroken(u.FormatJoint(d)) + " below this face."
	}
	w.add(lettering, false, deep+" Lay the sheet on before cutting and see that every scribed line runs under its own on paper; where they do not agree, find out why before a chisel is lifted.",
		"The sheets of the near and the far face fold round the same stick: line J must meet line J at the arris.")
	if p.housed {
		w.add(lettering, true, "Prick and bore before cutting the housing.")
	}
}

// endWords are the words of an end pattern.
func (p plan) endWords(w *words, u measure.Units) {
	v := p.v
	p.registerWords(w)
	w.add(lettering, true, p.positionWords(u))
	over := geom.Opposite(v.face)
	w.add(lettering, false, "Full lines are seen from this face, dashed ones lie behind it. Prick the corners through, join them with a straightedge, and square them round.",
		fmt.Sprintf("Turned over, the sheet fits face\u00a0%d, its heavy line on arris\u00a0%d/%d.", over, min(over, v.side()), max(over, v.side())),
		"It shows the outline only: the thickness of the tenon is on the timber's sheet, the holes on theirs.")
}
