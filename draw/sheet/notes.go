package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/measure"
)

// listed sets the findings with the numbers by which other sheets name them.
func listed(w *page.Flow, finds []finding.Finding) {
	w.Heading("Findings")
	if len(finds) == 0 {
		w.Item("", "None.")
		return
	}
	n := map[finding.Severity]int{}
	for _, x := range finds {
		n[x.Severity]++
	}
	w.Item("", fmt.Sprintf("%d stop (do not cut), %d warn (decide with open eyes), %d note.", n[finding.Stop], n[finding.Warn], n[finding.Note]))
	for i, x := range finds {
		w.Item(strconv.Itoa(i+1), told(x))
	}
}

// told returns a finding as running text.
func told(x finding.Finding) string {
	out := strings.ToUpper(x.Severity.String()) + " " + sentence(x.Text)
	if about := about(x); about != "" {
		out += " (" + about + ")"
	}
	if x.Mend != "" {
		out += " Mend: " + sentence(x.Mend)
	}
	return out
}

// about names the joints, or else the timbers, that a finding is about; a long
// list is cut short with the count of the rest.
func about(x finding.Finding) string {
	ids := x.Joints
	if len(ids) == 0 {
		ids = x.Timbers
	}
	const most = 3
	if len(ids) > most {
		return strings.Join(ids[:most], ", ") + fmt.Sprintf(" and %d more", len(ids)-most)
	}
	return strings.Join(ids, ", ")
}

// sentence ends a text with a full stop.
func sentence(s string) string {
	s = strings.TrimSpace(s)
	if s == "" || strings.ContainsAny(s[len(s)-1:], ".!?") {
		return s
	}
	return s + "."
}

func drawings(w *page.Flow, list []Entry) {
	if len(list) == 0 {
		return
	}
	const then = "Then: full-size templates, in templates.pdf, print check first."
	titles := []string{then}
	for _, e := range list {
		titles = append(titles, e.Title)
	}
	w.Together("drawing list", titles...)
	w.Heading("Drawing list")
	for _, e := range list {
		n := strconv.Itoa(e.N)
		if e.To > e.N {
			n += "–" + strconv.Itoa(e.To)
		}
		w.Entry(n, e.Title, e.ID)
	}
	w.Item("", then)
}

func notes(w *page.Flow, f *geom.Frame) {
	general := generalNotes(f)
	w.Together("notes", append(cautions(), general...)...)
	w.Heading("General notes")
	for i, n := range general {
		w.Item(strconv.Itoa(i+1), n)
	}
	w.Heading("Cautions")
	for i, c := range cautions() {
		w.Item(strconv.Itoa(i+1), c)
	}
}

// generalNotes are the conventions that every sheet follows.
func generalNotes(f *geom.Frame) []string {
	unit := "Lengths are feet and inches to the nearest sixteenth of an inch along a timber and the nearest thirty-second at a joint."
	if f.Units == measure.Metric {
		unit = "Lengths are millimetres, whole along a timber and to the half at a joint."
	}
	return []string{
		unit + " Running dimensions are rounded from the true value, never summed.",
		"Faces 1 and 2 of every timber are its reference faces, true and square to each other. Lay out from the reference arris between them, which the drawings show heavy where it is seen, and from the start end. Never rest the stock of a square on face 3 or 4.",
		"Square rule: every joint on face 3 or 4 is cut to the ideal timber inside the stick. The waste varies with the stick; lengths between shoulders, bearing planes and holes do not.",
		"Bow, twist and wane are out of scope: the sheets take each stick as straight, out of wind and full at its corners. Choose the faces of a crooked stick before the layout and allow for what is left.",
		"Depths are measured square to the face or plane that is named with them.",
		"The tenon hole of a drawn joint is set toward the shoulder, or back up a brace. The arrow on the sheet shows which way. The wrong way opens the joint.",
		"Full-scale templates are printed at 100 %. Measure the check bars before one is used.",
		"A joint is named after the timber that enters and the one that receives it. Joiner's marks are the same on both.",
		"Nothing in this packet is a structural design. Loads, foundations, uplift, sideways bracing and code matters are for the owner, the local authority and a licensed engineer.",
	}
}

// cautions are the cautions for the work as a whole.
func cautions() []string {
	return []string{
		"Boring: clamp or dog the timber, brace the handle for the kick when the bit grabs, clear the chips often, and back the far face so that it does not blow out.",
		"Chisels: both hands behind the edge, a sharp tool, the body out of line with the cut. Let a dropped framing chisel fall.",
		"Saws: hold up both parts, keep the guard working, and watch for wet wood that closes on the blade.",
		"Lifting: look up the weight first. Use carts, cant hooks and rollers, get a machine for what is beyond one person, and keep fingers and feet from under a timber that is coming down.",
		"Raising: one named raising boss, a plan spoken aloud, clear ways out, temporary braces fixed before anybody lets go. Stop in wind or lightning. No children in the fall zone.",
		"Pegs: wear eye protection and drive squarely. A peg that kinks or splits is bored out and replaced. Nobody stands under a joint that is being driven.",
		"Green wood checks, twists and shrinks across the grain. Sizes are as cut: measure each stick again before its layout, and do not seal in wet wood.",
		"Treated wood: gloves and a dust mask, do not burn the waste, use fasteners made for the treatment. It is not for pegs or tight joints.",
		"Dust of some woods (locust, cedar) irritates lungs and skin. Timber with bark may carry insects.",
		"A template is as true as its printer: measure the check bars. If they are off, so are the holes.",
	}
}
