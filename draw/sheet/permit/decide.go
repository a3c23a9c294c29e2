package permit

import (
	"fmt"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/page"
	"pegwright/geom"
)

// decisions sets wood and grade, what the designer of record decides, and who
// has the last word.
func (p *set) decisions() {
	w := page.NewFlow(2, func(n int) (*draw.Sheet, block.Field) {
		id, title := "decisions", "Wood and decisions"
		if n > 1 {
			id, title = fmt.Sprintf("decisions-%d", n), title+furtherPage+fmt.Sprint(n)
		}
		return p.sheet(id, title, "wood and grade, what is left to decide", "none", "")
	})
	w.Heading("Wood and grade")
	f := p.f
	w.Fact("timbers", fmt.Sprintf("%s, %s, %.0f %% moisture when cut, %.0f %% in service", f.Stock.Timber, f.Stock.Seasoning, f.Stock.Green, f.Stock.Service))
	w.Fact("pegs", fmt.Sprintf("%s, %s, %.0f %% moisture when driven", f.Stock.Peg, f.Stock.PegDry, f.Stock.PegMC))
	for _, n := range []string{"grade and grading rule", "graded by, or basis for ungraded wood", "treatment where near the ground"} {
		blank(w, n)
	}
	w.Skip(1.5)
	for _, t := range woodNotes(f) {
		w.Item("", t)
	}
	w.Heading("For the designer of record")
	for i, t := range decisions() {
		w.Item(fmt.Sprint(i+1), t)
	}
	w.Heading("Whose word counts")
	for _, t := range []string{
		"The adopted local code, the building official and, where the law asks for one, a licensed engineer or architect decide. Where these drawings differ from what they ask, theirs counts.",
		"Whether the building needs a permit at all, and whether native ungraded timber may be used, is for the local authority.",
		"A change in the field to a section, a joint or a peg goes to the designer of record first.",
	} {
		w.Item("", t)
	}
	w.Heading("Remarks of the reviewer")
	for range 5 {
		blank(w, "")
	}
}

func woodNotes(f *geom.Frame) []string {
	return []string{
		"Sizes are those of the sticks as sawn. Joints are cut to the ideal timber inside the stick (square rule), so the net section at a joint is less: see the joint details.",
		"Green wood shrinks across the grain and checks along it as it dries. Checks, and the slack left in a joint after drying, are for the designer to judge.",
		"Bow, twist and wane are not drawn. A stick that is not straight and full at its corners is chosen or turned down by the builder before it is laid out.",
		"Pegs are of straight-grained hardwood, riven, free of knots, driven dry. They have no grade stamp.",
	}
}

// decisions lists what these drawings leave open.
func decisions() []string {
	return []string{
		"Loads and their combinations: snow with drift and unbalanced cases, wind, earthquake, dead and live loads, and any construction loads.",
		"Strength and stiffness of every member, its net section at the joints, and of posts against buckling.",
		"Every joint: bearing, peg capacity, distances to ends and edges, splitting, and joints for which no reference value is printed.",
		"Uplift: a continuous path from roof to ground, its connectors and their corrosion protection.",
		"Lateral system in both directions and in the roof plane, with drift and anchorage.",
		"Foundations: footing size and depth, frost, soil bearing, anchors, drainage, and the capillary break under wood.",
		"Thrust of the roof where rafters have no ridge beam and no tie.",
		"Bracing while the frame is raised and until the lateral system is in.",
		"Fire, egress, guards, energy and any rule on use of the building.",
	}
}
