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
	if d := flare(p.joint); d > 0.3 {
		deep += " The sloped side meets this face " + unbroken(u.FormatJoint(d)) + " farther out."
	}
	w.add(lettering, false, deep+" Lay it on before cutting: every scribed line must run under its own on paper. Where one does not, find out why first. Sides that leave the paper run on straight.",
		"At the arris line J meets line J of the near and the far face.")
	if p.housed {
		w.add(lettering, true, "Prick and bore before cutting the housing.")
	}
}

// endWords are the words of an end pattern.
func (p plan) endWords(w *words, u measure.Units) {
	v := p.v
	p.registerWords(w)
	w.add(lettering, true, p.positionWords(u))
	p.partWords(w, u)
	if p.tip >= 1 {
		w.add(lettering, false, fmt.Sprintf("From line %s to the tip: %s.", p.line(), unbroken(u.FormatJoint(p.tip))))
	}
	over := geom.Opposite(v.face)
	w.add(lettering, false, "Full lines are seen from this face, dashed ones lie behind. Prick the corners, join them with a straightedge, square them round.",
		fmt.Sprintf("Turned over it fits face\u00a0%d, on arris\u00a0%d/%d.", over, min(over, v.side()), max(over, v.side())),
		"Outline only: tenon thickness and holes are on other sheets.")
}
