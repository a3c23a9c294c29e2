package templates

import (
	"fmt"
	"strings"

	"pegwright/geom"
	"pegwright/geom/measure"
)

// unbroken keeps a figure and what belongs to it on one line.
func unbroken(s string) string { return strings.ReplaceAll(s, " ", "\u00a0") }

// agreed returns the word that all joints of the template have, or nothing
// where theirs differ.
func (p plan) agreed(word func(plan) string) string {
	out := word(p)
	for _, q := range p.serves {
		if word(q) != out {
			return ""
		}
	}
	return out
}

// faceName names a face by its number, and by its word where all the timbers
// that the template serves have the same one.
func (p plan) faceName(n int) string {
	return faceTitle(n, p.agreed(func(q plan) string { return q.v.t.FaceNames[n-1] }))
}

func faceTitle(n int, word string) string {
	return strings.TrimSuffix(fmt.Sprintf("face\u00a0%d %s", n, word), " ")
}

// registerWords say which arris the template is laid on.
func (p plan) registerWords(w *words) {
	v := p.v
	on := fmt.Sprintf("face\u00a0%d, a reference face", v.side())
	if word := p.agreed(func(q plan) string { return q.v.t.FaceNames[v.side()-1] }); word != "" {
		on = "the " + word + " face"
	}
	w.add(lettering, true, fmt.Sprintf("Heavy line on %s, on %s.", unbroken(v.arris()), on))
}

// atEnd reports whether line J is the finished start end itself.
func (p plan) atEnd() bool { return abs(p.v.x0) < same }

// lineName is what line J is, for its label.
func (p plan) lineName(name string) string {
	if p.atEnd() {
		return "LINE " + p.line() + ": the finished end"
	}
	return "LINE " + p.line() + ": " + name
}

// position is where line J lies along its timber, from the start end, as the
// sheets of joint and timber tell it.
func (p plan) position(u measure.Units) string {
	if p.atEnd() {
		return "the finished end"
	}
	return unbroken(u.FormatJoint(p.v.x0))
}

// positionWords say where line J is scribed on the first timber.
func (p plan) positionWords(u measure.Units) string {
	s := "Line " + p.line() + ": " + p.position(u)
	if !p.atEnd() {
		s += " from the start end"
	}
	if at := p.agreed(func(q plan) string { return startPlace(q.v.t) }); at != "" {
		s += " (" + unbroken(at) + ")"
	}
	if p.agreed(func(q plan) string { return q.position(u) }) == "" {
		s += " on " + p.v.t.ID + "; the others as listed"
	}
	return s + "."
}

// startPlace says in a shop word where the start end of a timber lies, where
// there is one.
func startPlace(t *geom.Timber) string {
	switch d := t.Place.X; {
	case d.Z > 0.99:
		return "foot"
	case d.Z > 0.05:
		return "lower end"
	case d.X > 0.7:
		return "west"
	case d.Y > 0.7:
		return "south"
	}
	return ""
}

// members lists the joints that the template serves, when there are several:
// one paragraph for each pair of face words, and for each joint where its line
// J lies.
func (p plan) members(u measure.Units) words {
	if len(p.serves) < 2 {
		return nil
	}
	var w words
	w.add(lettering, true, fmt.Sprintf("Serves %d joints:", len(p.serves)))
	at := map[string]int{}
	mixed := p.agreed(func(q plan) string { return startWords(q.v.t) }) == ""
	for _, q := range p.serves {
		face, item := q.faces(), q.item(u, mixed)
		if i, ok := at[face]; ok {
			w[i].text += ", " + item
			continue
		}
		at[face] = len(w)
		w.add(lettering, false, face+": "+item)
	}
	return w
}

// faces names the face that one joint's template lies on, and the reference
// face beside it.
func (p plan) faces() string {
	v, what := p.v, "heavy line on "
	if p.kind == "tenon" {
		what = "reference edge on "
	}
	return faceTitle(v.face, v.t.FaceNames[v.face-1]) + ", " + what + faceTitle(v.side(), v.t.FaceNames[v.side()-1])
}

// item names one joint's timber, its mark, and the place of its line J, from
// which end where the start ends of the template's timbers have several names.
func (p plan) item(u measure.Units, mixed bool) string {
	s := p.v.t.ID
	if p.joint.Mark != "" {
		s += " (" + p.joint.Mark + ")"
	}
	if p.kind == "tenon" {
		return s
	}
	s += " " + p.line() + "\u00a0" + unbroken(p.position(u))
	if from := startPlace(p.v.t); mixed && !p.atEnd() && from != "" {
		if from != "foot" && from != "lower end" {
			from += " end"
		}
		s += " from the " + unbroken(from)
	}
	return s
}
