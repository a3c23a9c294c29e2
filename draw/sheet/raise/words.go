package raise

import (
	"fmt"
	"strings"

	"pegwright/draw/setout"
	"pegwright/geom"
)

// roleWord is a timber's role in the trade's word, as it stands on every other
// sheet; the page of words tells what it is.
func roleWord(f *geom.Frame, t *geom.Timber) string {
	if t.Role == "post" {
		if _, bents := setout.BentLines(f); len(bents) > 1 && (t.Bent == bents[0] || t.Bent == bents[len(bents)-1]) && t.Wall != "" {
			return "corner post"
		}
	}
	return t.Role
}

// called names a timber with a plain word and its id, no word twice.
func called(f *geom.Frame, id string) string {
	t := f.Timber(id)
	if t == nil {
		return id
	}
	plain := roleWord(f, t)
	var kept []string
	for _, w := range strings.Fields(plain) {
		if strings.Contains(id, w) && plain == t.Role {
			return id // the id says it
		}
		if !strings.Contains(id, w) {
			kept = append(kept, w)
		}
	}
	return strings.Join(append(kept, id), " ")
}

// calledAll names timbers; where they are many it counts them by their words.
func calledAll(f *geom.Frame, ids []string) string { return calledUpTo(f, ids, 3) }

// calledUpTo names timbers up to a number of them, and counts more by their
// words.
func calledUpTo(f *geom.Frame, ids []string, most int) string {
	if len(ids) <= most {
		var ws []string
		for _, id := range ids {
			ws = append(ws, called(f, id))
		}
		return andList(ws)
	}
	count := map[string]int{}
	var order []string
	for _, id := range ids {
		w := roleWord(f, f.Timber(id))
		if w == "corner post" {
			w = "post"
		}
		if count[w] == 0 {
			order = append(order, w)
		}
		count[w]++
	}
	var ws []string
	for _, w := range order {
		ws = append(ws, counted(count[w], w))
	}
	return andList(ws)
}

// andList joins words with commas and a last "and".
func andList(ws []string) string {
	if len(ws) < 2 {
		return strings.Join(ws, "")
	}
	return strings.Join(ws[:len(ws)-1], ", ") + " and " + ws[len(ws)-1]
}

func counted(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}

// subject names what a step moves.
func (r *raising) subject(s geom.Step) string {
	if len(s.Move) > 2 {
		return s.Name
	}
	return calledAll(r.f, s.Move)
}

// doing tells a step in the words of its motion.
func (r *raising) doing(s geom.Step) string {
	what, onto := r.subject(s), calledAll(r.f, s.Onto)
	switch {
	case len(s.Onto) == 0 && s.Group != "":
		return "Lay " + what + " on level blocks, high enough to swing a mallet under it."
	case s.Motion == geom.Rear:
		return r.rearing(s)
	case len(s.Onto) == 0:
		return "Set " + what + " where it belongs, level and true."
	case s.Motion == geom.Legs:
		return "Move " + what + " in the order of the arrows, onto " + onto + "."
	case s.Group == "" && s.Direction().Z < -0.99:
		return "Lower " + what + " straight down onto " + onto + "."
	}
	way := ""
	if s.Group == "" {
		way = " " + geom.Heading(s.Direction())
	}
	return "Slide " + what + way + " as the arrow shows, to " + onto + "."
}

// rearing tells how something is turned up about its feet.
func (r *raising) rearing(s geom.Step) string {
	var feet, rest []string
	for _, id := range s.Onto {
		if isFootOf(r.f, s, id) {
			feet = append(feet, id)
		} else {
			rest = append(rest, id)
		}
	}
	its, tenons := "feet: feet at their places", "foot tenons"
	if len(s.Move) == 1 {
		its, tenons = "foot: foot at its place", "foot tenon"
	}
	enters := footTenons(r.f, s)
	if len(feet) > 0 && !enters {
		its += " on " + calledUpTo(r.f, feet, 1)
	}
	out := fmt.Sprintf("Turn %s up about its %s, head to the %s; ", r.subject(s), its, geom.Compass(s.Direction().Neg()))
	if enters {
		out += "lead the " + tenons + " into " + calledUpTo(r.f, feet, 1) + " while it leans; "
	}
	out += "bring it upright."
	if s.Drop > 0 && enters {
		out += fmt.Sprintf(" The far edge of the foot comes down %s on the way.", r.f.Units.FormatJoint(s.Drop))
	}
	if len(rest) > 0 {
		out += " As it comes up, lead it onto " + calledUpTo(r.f, rest, 1) + "."
	}
	return out
}

// footTenons reports whether an upright of a step has a tenon at its foot.
func footTenons(f *geom.Frame, s geom.Step) bool {
	for _, n := range s.Joints {
		if j := f.Joint(n); !j.Tenon.Empty() && isFootOf(f, s, standing(j, s).ID) && j.Of.Place.X.Z > 0.99 && j.OfEnd == geom.Start {
			return true
		}
	}
	return false
}

// isFootOf reports whether a timber is what uprights of a step stand on.
func isFootOf(f *geom.Frame, s geom.Step, id string) bool {
	for _, n := range s.Joints {
		j := f.Joint(n)
		if t := moving(j, s); standing(j, s).ID == id && j.Of == t && j.OfEnd == geom.Start && t.Place.X.Z > 0.99 {
			return true
		}
	}
	return false
}
