package assembly

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pegwright/geom/finding"
)

// tooLong looks for uprights that could be reared but for the length of their
// foot tenons, says so, and lets them go.
func (p *planner) tooLong(units []*unit) (leaving, bool) {
	for _, u := range units {
		m := p.present(u.members)
		if len(m) == 0 || p.lying {
			continue
		}
		for _, i := range m {
			p.side[i] = leaves
		}
		found, ok := exit{}, false
		closing := p.closing(m)
		for _, e := range p.rears(closing, shortest, levelWays, math.Inf(1)) {
			if len(e.ground) > 0 && p.inTheWay(m, e) < 0 {
				found, ok = e, true
				break
			}
		}
		var feet []string
		for _, j := range closing {
			if p.isFoot(j) && stubLength(j) > longestStub+roundOff {
				feet = append(feet, j.ID)
			}
		}
		for _, i := range m {
			p.side[i] = stays
		}
		if !ok {
			continue
		}
		f := finding.Finding{Severity: finding.Stop, Rule: "assembly", Timbers: p.ids(m), Joints: feet, At: p.s.f.Timbers[m[0]].At,
			Text: fmt.Sprintf("%s has to be turned up about its feet, because what it joins keeps it from coming straight down, and its foot tenons are %s long",
				u.name, p.s.f.Units.FormatJoint(found.stub)),
			Mend: fmt.Sprintf("make the foot tenons stubs of %s or less, left without pegs until the frame is plumb", p.s.f.Units.FormatJoint(longestStub))}
		p.finds = append(p.finds, f)
		return leaving{unit: u, members: m, exit: found}, true
	}
	return leaving{}, false
}

// trapped names the least set of timbers that no move takes apart.
func (p *planner) trapped(all []int) {
	here := p.present(all)
	set := here
	for _, w := range p.flowing(all) {
		for _, k := range w.closed() {
			c := k.members
			sills := !slices.ContainsFunc(c, func(i int) bool { return !isSill(p.s.f.Timbers[i]) })
			if len(c) > 1 && len(c) < len(set) && !sills {
				set = c
			}
		}
	}
	f := finding.Finding{Severity: finding.Stop, Rule: "assembly", Timbers: p.ids(set), At: p.s.f.Timbers[set[0]].At}
	for _, i := range set[1:] {
		f.Also = append(f.Also, p.s.f.Timbers[i].At)
	}
	in := map[int]bool{}
	for _, i := range set {
		in[i] = true
	}
	for _, j := range p.s.f.Joints {
		if in[p.s.index[j.Into]] && in[p.s.index[j.Of]] {
			f.Joints = append(f.Joints, j.ID)
		}
	}
	f.Text = fmt.Sprintf("%s hold each other: whichever way one is moved, it runs into another, so they can be neither put together nor taken apart", few(f.Timbers))
	if len(set) < len(here) {
		f.Text = fmt.Sprintf("%s hold each other and could only be moved all at once, with posts of %s: no crew can", few(f.Timbers), plural(p.bents(set), "bent"))
	}
	f.Mend = p.mend(set)
	p.finds = append(p.finds, f)
}

// mend says in a framer's words what usually frees timbers that trap each other.
func (p *planner) mend(set []int) string {
	for _, i := range set {
		t := p.s.f.Timbers[i]
		if t.Role != "brace" {
			continue
		}
		for _, j := range p.s.joints[i] {
			if j.Housing > 1 {
				return fmt.Sprintf("house %s less deep in %s or not at all, or let it go in together with one of the two: turn a joint of that timber so that both close in the same direction",
					t.ID, p.s.f.Timbers[p.s.other(j, i)].ID)
			}
		}
		return fmt.Sprintf("let %s go in together with one of the timbers that it joins: turn a joint of that timber so that both close in the same direction", t.ID)
	}
	return "turn one of their joints so that it closes in the same direction as the others, open its mortise to one side, or make it a lap"
}

func (p *planner) ids(set []int) []string {
	var r []string
	for _, i := range set {
		r = append(r, p.s.f.Timbers[i].ID)
	}
	return r
}

// few writes a list of ids for a sentence; a long one is cut short.
func few(ids []string) string {
	const most = 8
	if len(ids) > most {
		return strings.Join(ids[:most], ", ") + fmt.Sprintf(" and %d more", len(ids)-most)
	}
	if len(ids) < 2 {
		return strings.Join(ids, "")
	}
	return strings.Join(ids[:len(ids)-1], ", ") + " and " + ids[len(ids)-1]
}
