package permit

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/page"
	"pegwright/draw/setout"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// sealBox is the height of the space for seal and signature, paper mm.
const sealBox = 34.5

// cover returns the first sheet of the set and as many more as its texts need.
func (p *set) cover() []*draw.Sheet {
	w := page.NewFlow(3, p.coverPage)
	p.together(w)
	p.facts(w)
	p.scope(w)
	w.From(1)
	p.criteria(w)
	w.From(2)
	w.Heading("Sheets of this set")
	w.Entry("P1", "this cover", "permit-cover")
	for i := 0; i < len(p.out); {
		n, title, _ := strings.Cut(p.out[i].Title, " ")
		title, _, _ = strings.Cut(title, ": ")
		id := p.out[i].ID
		last := n
		for i++; i < len(p.out) && strings.Contains(p.out[i].Title, furtherPage); i++ {
			last, _, _ = strings.Cut(p.out[i].Title, " ")
		}
		if last != n {
			n += "–" + last
		}
		w.Entry(n, title, id)
	}
	w.Skip(1.5)
	if len(p.far) > 0 {
		w.Item("", "In the builder's packet only: "+strings.Join(p.far, "; ")+".")
	}
	w.Item("", "The builder's packet has a sheet for every timber and every joint, lists, and full-size templates; it is not part of this set.")
	return w.Sheets
}

// together makes one group of all running texts of the cover.
func (p *set) together(w *page.Flow) {
	_, eave := p.eave()
	w.Pen.Together("permit cover", append(page.Texts(setout.Criteria(p.f)), eave)...)
}

// eave is how high the top of the plates stands, to the inch or ten
// millimetres, and what to call that; "" where there are no plates.
func (p *set) eave() (name, height string) {
	_, top, ok := setout.Heights(p.f, "plate")
	if !ok {
		return "", ""
	}
	z, _ := setout.Datum(p.f)
	u := p.f.Units
	lo, hi := roughly(u, top.Lo-z), roughly(u, top.Hi-z)
	name = "eave, top of plate"
	if lo != u.Format(top.Lo-z) || hi != u.Format(top.Hi-z) {
		name += ", about"
	}
	if lo == hi {
		return name, hi
	}
	return name, lo + " to " + hi
}

// coverPage begins the n-th sheet of the cover; the first carries the title
// large and, at its foot, the status and the space for a seal.
func (p *set) coverPage(n int) (*draw.Sheet, block.Field) {
	id, title := "permit-cover", "P1  Permit set"
	if n > 1 {
		id, title = fmt.Sprintf("permit-cover-%d", n), fmt.Sprintf("P1  Permit set, page %d", n)
	}
	t := block.TitleFor(p.f, title, "for the building official", "none")
	t.Note = "numbers P1, P2, … are those of this set; sheet numbers are those of the whole packet"
	s, field := block.ForFrame(p.f, "permit", id, t)
	s.Title = "P1 Cover of the permit set"
	if n > 1 {
		s.Title += fmt.Sprintf(", page %d", n)
		return s, field
	}
	name := s.Text(vec.At(field.X0, field.Y1-8), 7, block.Fit(p.f.Title+" – permit set", field.W(), 7, true))
	name.Bold = true
	s.Line(draw.FrameLine, vec.At(field.X0, field.Y1-12), vec.At(field.X1, field.Y1-12))
	field.Y1 -= 15
	p.seal(s, field)
	field.Y0 += sealBox + 4
	return s, field
}

// seal draws the status of the set and the space for a seal at the foot of the
// field.
func (p *set) seal(s *draw.Sheet, field block.Field) {
	box := block.Field{X0: field.X0, Y0: field.Y0, X1: field.X1, Y1: field.Y0 + sealBox}
	s.Rect(draw.FrameLine, box.Box())
	x := box.X0 + 0.56*box.W()
	s.Line(draw.Dimension, vec.At(x, box.Y0), vec.At(x, box.Y1))
	w := page.Pen{S: s, X: box.X0 + 2.5, Y: box.Y1 - 2, W: x - box.X0 - 5}
	w.Head("Status: not reviewed by an engineer unless sealed")
	for _, l := range []string{
		"These drawings were made from the builder's description. Nothing in them has been designed for loads, and no licensed person has reviewed them unless a seal stands here.",
		"Design criteria are printed as the builder stated them and were not computed with. Capacities are reference values for an engineer.",
		"The local code and the authority having jurisdiction govern.",
	} {
		w.Para(l)
		w.Skip(0.4)
	}
	q := page.Pen{S: s, X: x + 2.5, Y: box.Y1 - 2, W: box.X1 - x - 5}
	q.Head("Seal and signature of the designer of record")
	for i, l := range []string{"name, licence", "date"} {
		y := box.Y0 + 8.5 - 6*float64(i)
		s.Text(vec.At(q.X, y), dim.Small, l)
		s.Line(draw.Dimension, vec.At(q.X+24, y-0.8), vec.At(q.X+q.W, y-0.8))
	}
}

// facts sets what is to be built.
func (p *set) facts(w *page.Flow) {
	f := p.f
	w.Heading("The building")
	for _, n := range []string{"place", "drawn for", "drawn by", "date", "revision"} {
		if t := f.InfoText(n); t != "" {
			w.Fact(n, t)
		} else {
			blank(w, n)
		}
	}
	name, x, y := setout.Footprint(f)
	_, _, z := setout.Overall(f, "")
	w.Fact("over "+name, f.Units.Format(x)+" x "+f.Units.Format(y))
	w.Fact("height, about", roughly(f.Units, z))
	if t := setout.Pitches(f); t != "" {
		w.Fact("roof pitch", t)
	}
	if name, e := p.eave(); e != "" {
		w.Fact(name, e)
	}
	w.Fact("wood", f.Stock.Timber+", "+f.Stock.Seasoning)
	w.Fact("pegs", f.Stock.Peg+", "+f.Stock.PegDry)
}

// roughly shows a length to the inch, or to ten millimetres.
func roughly(u measure.Units, mm float64) string {
	step := 25.4
	if u == measure.Metric {
		step = 10
	}
	return u.Format(math.Round(mm/step) * step)
}

// criteria sets the design criteria: as stated, then blanks for what a reviewer
// looks for beyond them.
func (p *set) criteria(w *page.Flow) {
	w.Heading("Design criteria as stated")
	if len(p.f.Criteria) == 0 {
		w.Item("", "None stated.")
	}
	for _, c := range p.f.Criteria {
		w.Fact(c.Name, c.Text)
		if openCriterion(c.Text) {
			blank(w, " ")
		}
	}
	if blanks := unstated(p.f); len(blanks) > 0 {
		w.Heading("Not stated: to be filled in")
		for _, n := range blanks {
			blank(w, n)
		}
	}
}

// scope says in plain words what the drawings are about and what not.
func (p *set) scope(w *page.Flow) {
	w.Heading("Scope")
	f := p.f
	pegs := 0
	for _, j := range f.Joints {
		pegs += len(j.Pegs)
	}
	w.Item("", fmt.Sprintf("The pegged timber frame: %d timbers (%s) with %d joints, cut by hand and held by %d wooden pegs.",
		len(f.Timbers), countedRoles(f), len(f.Joints), pegs))
	w.Item("", "Not in these drawings: footings beyond the places given, metal connectors and anchors, sheathing and bracing panels, roofing, cladding, floors on joists, stairs and guards, doors and windows, heating, energy, wiring, plumbing, fire, egress, setbacks.")
}

// countedRoles counts the timbers by role, in frame order.
func countedRoles(f *geom.Frame) string {
	count := map[string]int{}
	var order []string
	for _, t := range f.Timbers {
		if count[t.Role]++; count[t.Role] == 1 {
			order = append(order, t.Role)
		}
	}
	out := make([]string, len(order))
	for i, r := range order {
		out[i] = strconv.Itoa(count[r]) + " " + r
		if count[r] > 1 && !strings.HasSuffix(r, "s") {
			out[i] += "s"
		}
	}
	return strings.Join(out, ", ")
}

// blankStep is the height of a line that is written on by hand, paper mm.
const blankStep = 5.6

// blank sets a name with a line to write on; the line is as long as the column
// where there is no name.
func blank(w *page.Flow, name string) {
	g := w.Group(name)
	from := w.W * 0.45
	if name == "" {
		from = 0
	}
	names := page.Wrap(strings.TrimSpace(name), w.W*0.45-1.5, g.Height)
	need := max(blankStep, float64(len(names))*g.Height*page.Pitch+1)
	w.Need(need)
	y := w.Y - need + 1.6
	for i, l := range names {
		g.Text(w.S, vec.At(w.X, y+float64(len(names)-1-i)*g.Height*page.Pitch), l)
	}
	w.S.Line(draw.Dimension, vec.At(w.X+from, y-0.6), vec.At(w.X+w.W, y-0.6)).Mark = "blank"
	w.Y -= need
}
