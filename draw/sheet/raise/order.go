package raise

import (
	"fmt"
	"slices"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/geom/vec"
)

// overview returns the sheets that come before the steps: the order of the work
// in a few lines, what to have at hand, who does what, and the words used.
func (r *raising) overview() []*draw.Sheet {
	w := page.NewFlow(2, func(n int) (*draw.Sheet, block.Field) {
		id, title := "raise-order", "Raising"
		if n > 1 {
			id = fmt.Sprintf("raise-order-%d", n)
		}
		t := block.TitleFor(r.f, title, "the order of the work", "none")
		if n > 1 {
			t.Shows += fmt.Sprintf(", page %d", n)
		}
		t.Note = "read this aloud to everybody before the first stick is lifted"
		s, field := block.ForFrame(r.f, "raise", id, t)
		return s, cautionBox(s, field, r.caution())
	})
	w.Letters = dim.Group{Name: "raising", Height: raiseText}
	w.Heading("The order")
	for _, p := range r.phases() {
		phaseOf(w, p, r.f)
	}
	total := 0
	for _, s := range r.f.Steps {
		total += len(s.Pegs)
	}
	w.Item("", fmt.Sprintf("%s, %s in all. Beside each line: the most that is lifted at once, and the pegs driven. The pictures that follow carry the same step numbers.",
		counted(len(r.f.Steps), "step"), counted(total, "peg")))
	w.Heading("Have at hand")
	for _, t := range r.things() {
		w.Item("–", t)
	}
	w.Heading("Before the first lift")
	for i, t := range rules() {
		w.Item(fmt.Sprint(i+1), t)
	}
	w.Heading("Words")
	for _, g := range r.glossary() {
		w.Item("", g)
	}
	return w.Sheets
}

// phase is a run of steps that are one piece of work.
type phase struct {
	from, to int
	what     string
	heaviest float64
	pegs     int
	roles    []string // of what is lifted, each once
}

// phases divides the steps into pieces of work.
func (r *raising) phases() []phase {
	var out []phase
	for i, s := range r.f.Steps {
		what := r.work(s)
		if n := len(out); n == 0 || out[n-1].what != what {
			out = append(out, phase{from: i + 1, what: what})
		}
		p := &out[len(out)-1]
		p.to, p.pegs = i+1, p.pegs+len(s.Pegs)
		p.heaviest = max(p.heaviest, list.LoadOf(r.f, s.Move).Green)
		if role := r.f.Timber(s.Move[0]).Role; !slices.Contains(p.roles, role) {
			p.roles = append(p.roles, role)
		}
	}
	for i := range out {
		if out[i].what == roofBeams || out[i].what == small {
			out[i].what = title(plurals(out[i].roles))
		}
	}
	return out
}

// Pieces of work that are called by the roles of what is lifted.
const (
	roofBeams = "roof beams"
	small     = "braces, girts and small posts"
)

// plurals names roles, more than one of each.
func plurals(roles []string) string {
	ws := make([]string, len(roles))
	for i, role := range roles {
		if ws[i] = role + "s"; strings.HasSuffix(role, "s") {
			ws[i] = role
		}
	}
	return andList(ws)
}

// work names the piece of work that a step belongs to.
func (r *raising) work(s geom.Step) string {
	g := r.outermost(s.Group)
	if g != "" && r.rafters(g) || r.ofRafters(s.Move) {
		return "Rafters, pairs joined on the ground"
	}
	if g != "" {
		if strings.HasPrefix(g, "bent ") {
			g = "the bents"
		}
		return "On the ground: put " + g + " together"
	}
	role := r.f.Timber(s.Move[0]).Role
	has := func(words ...string) bool {
		for _, w := range words {
			if strings.Contains(role, w) {
				return true
			}
		}
		return false
	}
	switch {
	case len(s.Move) > 2:
		return "Raise " + s.Name + " and brace it"
	case has("sill") && role != "window sill":
		return "Sills, level and square"
	case has("joist"):
		return "Joists"
	case has("plate"):
		return "Plates, onto the posts"
	case has("ridge", "purlin"):
		return roofBeams
	case role == "post":
		return "Posts, each propped"
	case has("brace", "girt", "rail", "header", "post", "stud"):
		return small
	}
	return title(role) + "s"
}

// outermost is the whole that a part put together on the ground ends up in
// before it leaves the ground.
func (r *raising) outermost(group string) string {
	for range len(r.f.Steps) {
		in := ""
		for _, s := range r.f.Steps {
			if s.Name == group && s.Group == "" {
				return group
			}
			if s.Group != "" && s.Group != group && len(s.Move) > 1 && r.madeIn(group, s.Move[0]) {
				in = s.Group
			}
		}
		if in == "" {
			return group
		}
		group = in
	}
	return group
}

// madeIn reports whether a timber is put together with others in a group.
func (r *raising) madeIn(group, id string) bool {
	for _, s := range r.f.Steps {
		if s.Group == group {
			for _, m := range s.Move {
				if m == id {
					return true
				}
			}
		}
	}
	return false
}

// rafters reports whether a group is of rafters and what ties them.
func (r *raising) rafters(group string) bool {
	var ids []string
	for _, s := range r.f.Steps {
		if s.Group == group {
			ids = append(ids, s.Move...)
		}
	}
	return r.ofRafters(ids)
}

// ofRafters reports whether timbers are rafters, with no upright among them.
func (r *raising) ofRafters(ids []string) bool {
	any := false
	for _, id := range ids {
		t := r.f.Timber(id)
		if t.Place.X.Z > 0.99 {
			return false
		}
		any = any || strings.Contains(t.Role, "rafter")
	}
	return any
}

// phaseOf sets one line of the order.
func phaseOf(w *page.Flow, p phase, f *geom.Frame) {
	const in, right = 17.0, 41.0
	lines := page.Wrap(p.what, w.W-in-right, raiseText)
	w.Need(float64(len(lines))*raiseText*page.Pitch + 1.2)
	n := fmt.Sprint(p.from)
	if p.to > p.from {
		n += "–" + fmt.Sprint(p.to)
	}
	y := w.Y - raiseText
	w.S.Text(vec.At(w.X, y), raiseText, n).Bold = true
	x := w.S.Text(vec.At(w.X+w.W-22, y), raiseText, weightText(f.Units, p.heaviest))
	x.Anchor = draw.End
	if p.pegs > 0 {
		x = w.S.Text(vec.At(w.X+w.W, y), raiseText, counted(p.pegs, "peg"))
		x.Anchor = draw.End
	}
	for _, l := range lines {
		w.S.Text(vec.At(w.X+max(in, font.Measure(n, raiseText, true)+2), w.Y-raiseText), raiseText, l)
		w.Y -= raiseText * page.Pitch
	}
	w.S.Line(draw.Hatch, vec.At(w.X, w.Y+0.5), vec.At(w.X+w.W, w.Y+0.5))
	w.Skip(1.2)
}

// rules are what everybody hears before the work begins (common practice, no
// source).
func rules() []string {
	return []string{
		"One person leads and gives the orders, and lifts nothing. Everybody knows the word STOP and uses it.",
		"Walk the ground: nothing to trip over, ropes and boards laid out, everybody with a way out to the side.",
		"Look at the weights. A lift that is beyond the hands that are there waits for a machine or for more hands.",
		"Braces are cut, and screws and drivers lie ready, before a bent leaves the ground. Nobody lets go until the one who leads says that it is braced.",
		"Nobody walks or stands under what is being raised or hangs, or under a joint that is being driven.",
		"Wind, lightning, ice, soft ground or a tired crew: stop for the day and leave what stands braced.",
		"Who is in charge plans props, lines, machines and who stands where. These sheets say only that nothing is in the way. Local code and licensed practice come first.",
	}
}
