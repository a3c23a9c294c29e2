package assembly

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// text tells one step in plain words: what moves, onto what, which way, which
// joints close, and what is driven then.
func (w *writer) text(l leaving, s geom.Step) string {
	var b strings.Builder
	if s.Group != "" {
		b.WriteString(title(s.Group) + ", on the ground: ")
	}
	what := few(s.Move)
	if len(s.Move) > 1 && l.unit.bent > 0 {
		what = s.Name
	}
	switch {
	case len(s.Onto) == 0 && s.Group != "":
		b.WriteString("lay " + what + " on level blocks")
	case s.Motion == geom.Rear:
		b.WriteString(w.rearing(what, l, s))
	case len(s.Onto) == 0:
		its := "its"
		if len(s.Move) > 1 {
			its = "their"
		}
		b.WriteString("set " + what + " on " + its + " bearings, level and true")
	case s.Motion == geom.Legs:
		b.WriteString("move " + what + " " + w.legWords(l, s) + "," + w.into(l, s) + few(s.Onto))
	case s.Legs[0].Direction.Z < -0.99 && s.Group == "":
		b.WriteString("lower " + what + " straight down onto " + few(s.Onto))
	default:
		b.WriteString("slide " + what + " " + w.way(l, s, s.Legs[0].Direction) + w.into(l, s) + few(s.Onto))
	}
	out := b.String() + w.closes(s) + w.free(l, s)
	return strings.ToUpper(out[:1]) + out[1:] + "."
}

// rearing tells how a bent is turned up.
func (w *writer) rearing(what string, l leaving, s geom.Step) string {
	lean := l.exit.legs[0].Direction
	var feet, rest []string
	for _, id := range s.Onto {
		if w.isGround(l, id) {
			feet = append(feet, id)
		} else {
			rest = append(rest, id)
		}
	}
	t, tenons := "turn "+what+" up about its feet: ", "the foot tenons"
	if len(s.Move) == 1 {
		t, tenons = "turn "+what+" up about its foot: ", "the foot tenon"
	}
	switch {
	case len(feet) == 0:
		t += "feet on their marks, head to the " + geom.Compass(lean) + ", bring it up plumb"
	case l.exit.bare:
		t += "feet on their marks on " + few(feet) + ", head to the " + geom.Compass(lean) + ", bring it up plumb"
	default:
		u := w.p.s.f.Units
		t += fmt.Sprintf("lean it back to the %s, enter %s in %s, bring it plumb; its far arris comes down %s there, and the tip of the stub swings %s (ease it, or drop the whole %s plumb)",
			geom.Compass(lean), tenons, few(feet), u.FormatJoint(s.Drop), u.FormatJoint(l.exit.play), u.FormatJoint(l.exit.stub))
	}
	if len(rest) > 0 {
		t += "; as it comes up to the " + geom.Compass(lean.Neg()) + ", lead it onto " + few(rest)
	}
	return t
}

func (w *writer) isGround(l leaving, id string) bool {
	for _, g := range l.exit.ground {
		if w.p.s.f.Timbers[g].ID == id {
			return true
		}
	}
	return false
}

// legWords tells each leg of a move in turn.
func (w *writer) legWords(l leaving, s geom.Step) string {
	var r []string
	for _, leg := range s.Legs {
		r = append(r, w.way(l, s, leg.Direction))
	}
	return strings.Join(r, ", then ")
}

// way tells a direction: along a timber where it runs along one of those that
// are joined, else up, down or by the compass of the standing frame.
func (w *writer) way(l leaving, s geom.Step, d vec.V) string {
	if s.Group != "" {
		for _, id := range s.Onto {
			if t := w.p.s.f.Timber(id); math.Abs(t.Place.X.Dot(d)) > 0.9999 {
				return "along " + t.ID
			}
		}
		if t := w.p.s.f.Timbers[l.members[0]]; math.Abs(t.Place.X.Dot(d)) > 0.9999 {
			return "endwise"
		}
		return "square to " + s.Onto[0]
	}
	return geom.Heading(d)
}

// into is "into" where all that moves enters what it joins, else "onto".
func (w *writer) into(l leaving, s geom.Step) string {
	for _, id := range s.Joints {
		if of := w.p.s.index[w.p.s.f.Joint(id).Of]; !slices.Contains(l.members, of) {
			return " onto "
		}
	}
	return " into "
}

// closes tells the marks of the joints that close and what is driven.
func (w *writer) closes(s geom.Step) string {
	if len(s.Joints) == 0 {
		return ""
	}
	var marks []string
	for _, id := range s.Joints {
		marks = append(marks, w.p.s.f.Joint(id).Mark)
	}
	t := "; close joint "
	if len(marks) > 1 {
		t = "; close joints "
	}
	t += strings.Join(marks, ", ")
	if len(s.Pieces) > 0 {
		t += "; drive " + strings.Join(s.Pieces, ", ")
	}
	switch {
	case len(s.Pegs) > 0 && s.Motion == geom.Rear:
		t += "; plumb and brace it, then drive " + plural(len(s.Pegs), "peg")
	case len(s.Pegs) > 0:
		t += "; drive " + plural(len(s.Pegs), "peg")
	}
	return t
}

// free tells to hold a stick whose other end is still without its timber.
func (w *writer) free(l leaving, s geom.Step) string {
	if s.Group != "" || len(l.members) != 1 || len(s.Joints) == 0 {
		return ""
	}
	if t := w.p.s.f.Timbers[l.members[0]]; plumb(t) || isSill(t) {
		return ""
	}
	i := l.members[0]
	for _, j := range w.p.s.joints[i] {
		k := w.p.s.other(j, i)
		onIt := w.p.s.index[j.Into] == i // what is set on it later does not hold it
		if !w.placed[k] && !onIt {
			return "; hold or prop its free end until " + w.p.s.f.Timbers[k].ID + " closes on it"
		}
	}
	return ""
}

func plural(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}

func title(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
