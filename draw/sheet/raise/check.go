package raise

import (
	"strings"

	"pegwright/draw/setout"
	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/list"
)

// check tells what is checked once a step is done: plumb, level, straight, and
// square by diagonals.
func (r *raising) check(a *act) (text, common string) {
	plain := r.checkPlain(a)
	square := r.checkSquare(a)
	var ls, ws []string
	for i, d := range square {
		if i == 2 {
			plain = "The other bays likewise: see the wall's sheet."
			break
		}
		l := r.f.Units.Format(d.Length())
		ls = append(ls, l)
		ws = append(ws, d.NameA+" to "+d.NameB+" "+l)
	}
	if len(ws) > 0 {
		plain = "Square by tape: " + strings.Join(ws, "; ") + ". " + plain
	}
	return strings.TrimSpace(plain), strings.Join(ls, "; ")
}

// checkPlain tells what is looked at without a tape.
func (r *raising) checkPlain(a *act) string {
	s := a.step
	t := r.f.Timber(s.Move[0])
	switch {
	case s.Group != "" && r.lastOf(a) && len(r.checkSquare(a)) == 0:
		return "Every shoulder is tight before it is lifted."
	case s.Group != "":
	case t.Role == "sill" && r.last(a, "sill"):
		return "Level all round."
	case s.Motion == geom.Rear || t.Place.X.Z > 0.99:
		return "Plumb both ways, by level or plumb bob on a straight face."
	case strings.Contains(t.Role, "rafter"):
		return "Rafter plumb, feet down on their seats, overhang in line with the others."
	}
	return ""
}

// checkSquare returns the diagonals that are taped after a step: of a bent when
// it lies whole, of the sills when they are round, of a wall's bays when its
// plate is down.
func (r *raising) checkSquare(a *act) []setout.Diagonal {
	s := a.step
	t := r.f.Timber(s.Move[0])
	switch {
	case s.Group != "":
		if t.Bent > 0 && strings.HasPrefix(s.Group, "bent ") && r.lastOf(a) {
			return setout.BentDiagonals(r.f, t.Bent)
		}
	case t.Role == "sill" && r.last(a, "sill"):
		if xs, _ := setout.BentLines(r.f); len(xs) > 1 && len(setout.WallLines(r.f)) > 1 {
			return setout.PlanDiagonals(xs, setout.WallLines(r.f), 0, "corner")
		}
	case t.Role == "plate":
		return setout.WallDiagonals(r.f, postsUnder(r.f, s))
	}
	return nil
}

// lastOf reports whether a step is the last of those on the ground of its group.
func (r *raising) lastOf(a *act) bool {
	for _, s := range r.f.Steps[a.n:] {
		if s.Group == a.step.Group {
			return false
		}
	}
	return true
}

// last reports whether no later step sets a timber of that role.
func (r *raising) last(a *act, role string) bool {
	for _, s := range r.f.Steps[a.n:] {
		for _, id := range s.Move {
			if t := r.f.Timber(id); s.Group == "" && t.Role == role {
				return false
			}
		}
	}
	return true
}

// postsUnder returns the posts that a step's timber comes down on.
func postsUnder(f *geom.Frame, s geom.Step) []*geom.Timber {
	var out []*geom.Timber
	for _, id := range s.Onto {
		out = append(out, f.Timber(id))
	}
	return out
}

// care tells what can hurt in a step.
func (r *raising) care(s geom.Step) string {
	t := r.f.Timber(s.Move[0])
	switch {
	case s.Group != "" && len(s.Joints) > 0:
		return "Fingers out of the joint while it closes."
	case s.Group != "":
		return ""
	case s.Motion == geom.Rear && len(s.Move) > 2 && list.LoadOf(r.f, s.Move).Green > list.CrewLimit:
		return "Too heavy for hands: a machine, or a rigging plan. Nobody under it, before it or in line with it. Tag lines both ways; feet blocked."
	case s.Motion == geom.Rear && len(s.Move) > 2:
		return "Nobody under it, before it or in line with it. Tag lines both ways; feet blocked. Once it moves, it does not stop half way."
	case t.Place.X.Z > 0.99:
		return "Two people on it until it is propped."
	}
	lo, _ := boxOf(r.f, s.Move)
	switch over := lo.Z - r.ground(); {
	case over < kneeHeight:
		return "Lift with the legs; hands from under it as it comes down."
	case over < headHeight:
		return ""
	case list.LoadOf(r.f, s.Move).Green <= list.LiftLimit:
		return "Work from staging, not from a ladder or the timber."
	}
	return "Nobody under it while it hangs. A line on each end; work from staging, not from a ladder or the timber."
}

// Heights over the ground, mm (common practice, no source): what lies lower than
// the knee is set by hand; what lies higher than the head is worked on from
// staging.
const kneeHeight, headHeight = 500.0, 1800.0

// ground is the height of the lowest point of the frame.
func (r *raising) ground() float64 {
	lo, _ := r.box()
	return lo.Z
}

// everyStep stands at the foot of every raising sheet.
const everyStep = "Hard hats on. Never under a raised bent or a hanging timber. One person gives the orders; anybody may call STOP. No wind, no children. Local code and whoever leads come before this sheet."

// caution is what stands at the foot of a sheet; first of all that the order is
// not proved, where the solver says so.
func (r *raising) caution() string {
	for _, x := range r.f.Notes {
		if x.Severity == finding.Stop && (x.Rule == "assembly" || x.Rule == "peg reach") {
			return "DO NOT RAISE by these sheets: the order is not proved, see the findings on the cover. " + everyStep
		}
	}
	return everyStep
}
