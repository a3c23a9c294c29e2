package templates

import (
	"fmt"

	"pegwright/geom"
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
	default:
		w.add(7, true, "TENON")
	}
	w.add(5, true, v.t.ID+", face "+v.t.FaceTitle(v.face))
	w.add(lettering, true, "mark "+j.Mark+", joint "+j.ID)
	switch p.kind {
	case "tenon":
		p.tenonWords(&w, u)
	case "through":
		p.throughWords(&w, u)
	default:
		p.holeWords(&w)
	}
	return w
}

// holeWords are the words of the near and the far face.
func (p plan) holeWords(w *words) {
	v := p.v
	w.add(lettering, true, fmt.Sprintf("Heavy line on %s, on the %s face.", v.arris(), faceWord(v.t, v.side())))
	w.add(lettering, false, "Line J on its scribed line, squared round from faces 1 and 2; never put the stock on 3 or 4.")
	if p.housed {
		w.add(lettering, true, "Prick and bore before cutting the housing.")
	}
	first, second := "1. Near face: stop when the lead screw shows on the far face.", "2. Turn the stick, finish from the far face."
	if p.kind == "far" {
		first, second = "1. Near face first: stop when the lead screw shows here.", "2. Turn the stick, finish from this face."
	}
	w.add(lettering, false, first+" "+second+" Pack the mortise with a scrap block before boring.")
}

// throughWords are the words of a blind peg's sheet.
func (p plan) throughWords(w *words, u measure.Units) {
	v, g := p.v, p.holes[0].peg
	w.add(lettering, true, fmt.Sprintf("Heavy line on %s, on the %s face.", v.arris(), faceWord(v.t, v.side())))
	w.add(lettering, false, "Line J on the line of its name, squared up the reference face.",
		"Bore square to this face, right through. Then set the timber in its seat and bore on into "+p.joint.Into.ID+" through the hole.")
	_, _, deep := p.joint.Axes.Of(g.To)
	w.add(lettering, false, fmt.Sprintf("The bore ends %s below the ideal face of %s.", u.FormatJoint(-deep), role(p.joint, p.joint.Into.Role)))
}

// tenonWords are the words of a tenon's sheet.
func (p plan) tenonWords(w *words, u measure.Units) {
	v := p.v
	w.add(lettering, false, fmt.Sprintf("Lay on the cheek toward face %d. Fold the paper up along the shoulder line and push the crease home "+
		"against the shoulder. The reference edge is the line of face %s.", v.face, v.t.FaceTitle(v.side())))
	h := p.holes[len(p.holes)-1]
	if p.arrow == nil {
		w.add(lettering, true, "Not offset: tenon and mortise hole lie in one place.")
		return
	}
	w.add(lettering, true, fmt.Sprintf("Bore at the cross only: set %s %s.", u.FormatJoint(h.c.Dist(h.other)), h.peg.Words))
	w.add(lettering, false, "Or close the joint, prick through the bored mortise, and shift the mark with the mover.")
}

// faceWord is the word on a face, or its number where it has none.
func faceWord(t *geom.Timber, n int) string {
	if s := t.FaceNames[n-1]; s != "" {
		return s
	}
	return fmt.Sprint("face ", n)
}

// members lists the joints that the template serves, when there are several:
// one paragraph for each face.
func (p plan) members() words {
	if len(p.serves) < 2 {
		return nil
	}
	var w words
	w.add(lettering, true, fmt.Sprintf("Serves %d joints:", len(p.serves)))
	at := map[string]int{}
	for _, q := range p.serves {
		face := "face " + q.v.t.FaceTitle(q.v.face) + ": "
		item := q.v.t.ID
		if q.joint.Mark != "" {
			item += " (" + q.joint.Mark + ")"
		}
		if i, ok := at[face]; ok {
			w[i].text += ", " + item
			continue
		}
		at[face] = len(w)
		w.add(lettering, false, face+item)
	}
	return w
}
