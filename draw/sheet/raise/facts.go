package raise

import (
	"fmt"
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/geom/measure"
)

// fact is a line of a step's text. common is the part of it that like steps
// share: names and marks differ from one to the other.
type fact struct{ name, text, common string }

// tell gathers what a helper is told about a step, in the order of the work.
func (r *raising) tell(a *act) []fact {
	s := a.step
	out := []fact{{"Do", r.doing(s), ""}}
	add := func(name, text, common string) {
		if text != "" {
			out = append(out, fact{name, text, common})
		}
	}
	lift := r.lift(s)
	add("Lift", lift, lift)
	add("Joints", r.closing(s), "")
	drive := r.drive(s)
	add("Drive", drive, drive)
	hold, common := r.hold(a)
	add("Hold", hold, common)
	check, common := r.check(a)
	add("Check", check, common)
	care := r.care(s)
	add("Care", care, care)
	return out
}

const poundInKilograms = 0.45359237 // exactly, by the international agreement of 1959

// weightText shows a weight in whole pounds or kilograms.
func weightText(u measure.Units, kg float64) string {
	if u == measure.Imperial {
		return draw.Number(math.Round(kg/poundInKilograms), 0) + " lb"
	}
	return draw.Number(math.Round(kg), 0) + " kg"
}

// lift tells what is lifted as one, and where it balances.
func (r *raising) lift(s geom.Step) string {
	u := r.f.Units
	l := list.LoadOf(r.f, s.Move)
	out := weightText(u, l.Green) + " as cut; balances "
	if len(s.Move) == 1 {
		out += u.Format(l.At.X) + " from its " + startOf(r.f.Timber(s.Move[0]))
	} else {
		lo, hi := boxOf(r.f, s.Move)
		across, side := l.At.Y, "south side"
		if hi.X-lo.X > hi.Y-lo.Y {
			across, side = l.At.X, "west end"
		}
		out += fmt.Sprintf("%s up from its foot end, %s from its %s", u.Format(l.At.Z), u.Format(across), side)
	}
	if l.Green > list.LiftLimit {
		return out + ". More than one person lifts: a team, or a machine."
	}
	return out + "."
}

// startOf names the start end of a timber.
func startOf(t *geom.Timber) string {
	d := t.Place.X
	switch {
	case d.Z > 0.99:
		return "foot"
	case d.Z > 0.05:
		return "lower end"
	}
	return geom.Compass(d.Neg()) + " end"
}

// closing names the marks of the joints that close, with the timber that is met
// there where there are not too many.
func (r *raising) closing(s geom.Step) string {
	var ws []string
	for _, id := range s.Joints {
		j := r.f.Joint(id)
		if len(s.Joints) <= 4 && len(s.Onto) > 1 {
			ws = append(ws, j.Mark+" at "+standing(j, s).ID)
		} else {
			ws = append(ws, j.Mark)
		}
	}
	if len(ws) == 0 {
		return ""
	}
	if len(ws) > 2 {
		return strings.Join(ws, ", ") + "."
	}
	return strings.Join(ws, ", ") + ": the same mark on both sticks."
}

// drive tells the pegs by size, and the wedges and keys.
func (r *raising) drive(s geom.Step) string {
	u := r.f.Units
	count := map[string]int{}
	var order []string
	add := func(what string) {
		if count[what] == 0 {
			order = append(order, what)
		}
		count[what]++
	}
	for _, id := range s.Joints {
		j := r.f.Joint(id)
		for _, q := range j.Pieces {
			add(q.Kind + ", tight")
		}
		for _, g := range j.Pegs {
			add(fmt.Sprintf("peg %s x %s", u.PlainJoint(g.Bore), u.PlainJoint(g.Length)))
		}
	}
	var ws []string
	for _, w := range order {
		kind, rest, _ := strings.Cut(w, " ")
		kind, comma := strings.TrimSuffix(kind, ","), ""
		if strings.HasPrefix(w, kind+",") {
			comma = ","
		}
		ws = append(ws, counted(count[w], kind)+comma+" "+rest)
	}
	if len(ws) == 0 {
		return ""
	}
	out := strings.Join(ws, "; ")
	if s.Motion == geom.Rear {
		out += ", after it is plumb and braced"
	}
	return out + "."
}

// whole says when the frame stands by itself.
func (r *raising) whole() string {
	for _, t := range r.f.Timbers {
		if strings.Contains(t.Role, "rafter") {
			return "the roof is on"
		}
	}
	return "the frame is whole"
}

// hold tells what must be fixed before anybody lets go.
func (r *raising) hold(a *act) (text, common string) {
	s := a.step
	if s.Group != "" || len(s.Move) == 0 {
		return "", ""
	}
	t := r.f.Timber(s.Move[0])
	switch free := r.freeEnd(a); {
	case r.ofRafters(s.Move) && len(s.Move) > 1:
		text = "Both feet and the peak are held until pegged. Brace the first pair lengthwise; tie each next one to it."
	case len(s.Move) > 2 && !(s.Motion == geom.Rear || s.Support):
		text = "Props on both sides, tied to what stands, before anybody lets go."
	case len(s.Move) > 2:
		text = "Two braces to the ground or sills on each side, one along the wall from each post, before anybody lets go. They stay until " + r.whole() + "."
	case t.Place.X.Z > 0.99:
		text = "Two props at right angles, fixed before anybody lets go."
	case free != "":
		return "Prop its free end until " + called(r.f, free) + " closes on it.", "free end"
	case r.ofRafters(s.Move) && len(s.Move) == 1:
		text = "Held at both ends until it is pegged or tied down."
	case len(s.Onto) > 0 && strings.Contains(t.Role, "plate"):
		text = "Keep the posts' braces on. Let go when it sits down on every shoulder."
	}
	return text, text
}

// freeEnd returns the timber of a later step that the other end of a level or
// sloping stick waits for, "" where it waits for none.
func (r *raising) freeEnd(a *act) string {
	s := a.step
	if len(s.Move) != 1 || len(s.Joints) == 0 {
		return ""
	}
	t := r.f.Timber(s.Move[0])
	if t.Place.X.Z > 0.99 || strings.Contains(t.Role, "sill") {
		return ""
	}
	up := r.before(a)
	for _, j := range r.f.JointsOf(t) {
		if j.Of == t && !up[j.Into.ID] {
			return j.Into.ID
		}
	}
	return ""
}

// before returns the timbers that stand, or lie in the step's group, before a
// step.
func (r *raising) before(a *act) map[string]bool {
	up := map[string]bool{}
	for _, b := range r.f.Steps[:a.n-1] {
		if b.Group == a.step.Group {
			for _, id := range b.Move {
				up[id] = true
			}
		}
	}
	return up
}
