package raise

import (
	"fmt"
	"math"
	"sort"

	"pegwright/draw/setout"
	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// things lists what to have at hand, counted from the frame where it can be
// (kinds of tools: common practice, no source).
func (r *raising) things() []string {
	step := 304.8 // a foot
	if r.f.Units == measure.Metric {
		step = 500
	}
	out := []string{
		"Hard hat, gloves and eye protection for everybody; a first-aid box; a charged telephone.",
		r.pegThings(),
		"Two big mallets and a small one; a drift or bar to line up holes; a sharp chisel, a plane and a handsaw to ease a tight joint.",
		fmt.Sprintf("A tape of at least %s, a long level, a plumb bob, chalk.", r.f.Units.Format(math.Ceil(r.longest()/step)*step)),
	}
	if n, ground := r.braces(); n > 0 {
		out = append(out, fmt.Sprintf("%s for temporary braces, as long as the posts are high, with stakes, screws and two drivers.", counted(n, "board")))
		if ground {
			out = append(out, "Level blocks to put work together on, four or more at a time; boards to stand on.")
		}
	}
	if r.raises() {
		out = append(out, "Two long ropes to each end of what is raised: one to pull, one to hold back; pike poles or a machine; blocks against the feet.")
	}
	if high := middleTop(r.f); high > headHeight {
		out = append(out, fmt.Sprintf("Staging to work at %s over the ground; ladders only to climb it.", r.f.Units.Format(high)))
	}
	what, heavy := r.heaviest()
	return append(out, fmt.Sprintf("The heaviest lift is %s: %s as cut. %s", what, weightText(r.f.Units, heavy), r.liftWords(heavy)))
}

// liftWords says what a lift of that many kilograms asks for.
func (r *raising) liftWords(kg float64) string {
	if kg <= list.CrewLimit {
		return "Hands or a machine for that, with something to spare."
	}
	return fmt.Sprintf("That is more than ten people lift at %s each: a machine, or a rigging plan by someone who does this for a living.", weightText(r.f.Units, list.LiftLimit))
}

// pegThings counts the pegs by size.
func (r *raising) pegThings() string {
	type size struct{ bore, long float64 }
	count := map[size]int{}
	var order []size
	pieces := 0
	for _, s := range r.f.Steps {
		for _, id := range s.Joints {
			for _, g := range r.f.Joint(id).Pegs {
				k := size{g.Bore, g.Length}
				if count[k] == 0 {
					order = append(order, k)
				}
				count[k]++
			}
		}
		pieces += len(s.Pieces)
	}
	sort.Slice(order, func(i, k int) bool {
		a, b := order[i], order[k]
		return a.bore < b.bore || a.bore == b.bore && a.long < b.long
	})
	var ws []string
	for _, k := range order {
		ws = append(ws, fmt.Sprintf("%d of %s x %s", count[k], r.f.Units.PlainJoint(k.bore), r.f.Units.PlainJoint(k.long)))
	}
	if pieces > 0 {
		ws = append(ws, counted(pieces, "wedge")+" and keys")
	}
	if len(ws) == 0 {
		return "No pegs are driven."
	}
	return "Pegs, and spares of each: " + andList(ws) + "."
}

// longest is the longest thing that is taped, mm: across the whole frame.
func (r *raising) longest() float64 {
	lo, hi := r.box()
	return math.Hypot(hi.X-lo.X, hi.Y-lo.Y)
}

// box is the box around the frame.
func (r *raising) box() (lo, hi vec.V) {
	if r.lo == r.hi {
		r.lo, r.hi = boxOf(r.f, idsOf(r.f))
	}
	return r.lo, r.hi
}

func idsOf(f *geom.Frame) []string {
	var ids []string
	for _, t := range f.Timbers {
		ids = append(ids, t.ID)
	}
	return ids
}

// braces counts the temporary braces that the steps ask for, and reports
// whether anything is put together on the ground.
func (r *raising) braces() (n int, ground bool) {
	for _, s := range r.f.Steps {
		ground = ground || s.Group != ""
		if s.Group != "" {
			continue
		}
		posts := 0
		for _, id := range s.Move {
			if t := r.f.Timber(id); t.Place.X.Z > 0.99 && t.Role != "king post" && t.Role != "queen post" {
				posts++
			}
		}
		switch {
		case len(s.Move) > 2 && posts > 0:
			n += 4 + posts
		case posts > 0:
			n += 2 * posts
		}
	}
	return n, ground
}

// raises reports whether anything of several sticks is turned up.
func (r *raising) raises() bool {
	for _, s := range r.f.Steps {
		if s.Motion == geom.Rear && len(s.Move) > 1 {
			return true
		}
	}
	return false
}

// heaviest returns what is lifted as one and weighs most, kg.
func (r *raising) heaviest() (what string, green float64) {
	for _, s := range r.f.Steps {
		if l := list.LoadOf(r.f, s.Move); l.Green > green {
			what, green = r.subject(s), l.Green
		}
	}
	return what, green
}

// middleTop is how high the plates lie over the lowest point of the frame, mm;
// 0 where there are none.
func middleTop(f *geom.Frame) float64 {
	_, top, ok := setout.Heights(f, "plate")
	if !ok {
		return 0
	}
	low, _ := boxOf(f, idsOf(f))
	return top.Hi - low.Z
}

// glossary explains the words of the roles that the frame has.
func (r *raising) glossary() []string {
	words := []struct{ role, text string }{
		{"sill", "Sill: the bottom beam that posts stand on."},
		{"post", "Post: an upright. A corner post stands at an end of the building."},
		{"tie", "Tie: the crossbeam that joins two posts of a bent."},
		{"plate", "Plate: the top beam of a wall, along the building."},
		{"girt", "Girt: a rail in a wall between posts."},
		{"brace", "Brace: the short slanting stick in a corner."},
		{"king post", "King post: the middle post that stands on a tie."},
		{"ridge", "Ridge: the beam along the top of the roof."},
		{"rafter", "Rafter: a slanting stick of the roof."},
		{"collar", "Collar: the short tie between two rafters."},
		{"purlin", "Purlin: a roof beam along the building, between plate and ridge."},
		{"joist", "Joist: a small beam that carries a floor."},
	}
	bent := false
	has := map[string]bool{}
	for _, t := range r.f.Timbers {
		has[t.Role] = true
		bent = bent || t.Bent > 0
	}
	var out []string
	if bent {
		out = append(out, "Bent: two posts with all that joins them across the building; they go up as one.")
	}
	for _, w := range words {
		if has[w.role] {
			out = append(out, w.text)
		}
	}
	return append(out,
		"Foot: the lower end of a post. Tenon: the tongue on a stick's end. Mortise: the hole that it enters. Shoulder: the step round the tenon that must close tight.",
		"Mark: chisel strokes beside a joint, such as XIII. Join only what carries the same mark. Plumb: upright. As cut: at the weight that the wood has when it is worked; it loses some as it dries.")
}
