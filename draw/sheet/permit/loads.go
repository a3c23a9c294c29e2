package permit

import (
	"fmt"
	"strings"

	"pegwright/draw/page"
	"pegwright/geom"
)

// loads sets the sheets on which the load path, the lateral system, the wood
// and the designer's decisions stand.
func (p *set) loads() {
	s, field := p.sheet("loads", "Uplift and lateral load path", "blanks for loads and connectors", "none",
		"an empty cell is for the designer of record to fill in")
	w := page.Pen{S: s, X: field.X0, Y: field.Y1, W: field.W()}
	w.Head(p.pathTitle())
	w.Para("Pegs and wooden joints are not claimed to resist uplift or wind. Each step of the path needs a load and a connector from the designer of record.")
	w.Skip(1.5)
	field.Y1 = w.Y
	m := &form{heads: []string{"from – to", "as drawn, in wood", "how many", "uplift, each", "sideways, each", "connector", "by"},
		shares: []float64{0.14, 0.30, 0.08, 0.11, 0.11, 0.17, 0.09}, rows: p.path(), least: 11}
	y, _ := m.set(s, field)
	w.Y = y - 5
	w.Head("Lateral system")
	w.Para(p.braces())
	w.Skip(1)
	field.Y1 = w.Y
	l := &form{heads: []string{"direction", "lateral system (panels, diagonals, frames)", "load", "by"},
		shares: []float64{0.2, 0.45, 0.2, 0.15}, rows: [][]string{{"along the building", "", "", ""}, {"across the building", "", "", ""}, {"roof plane", "", "", ""}}, least: 9}
	l.set(s, field)
	p.decisions()
}

// path returns the rows of the load path, for roles that the frame has.
func (p *set) path() [][]string {
	var out [][]string
	for _, x := range []struct {
		upper, lower string
		asked        bool // also where no joint is drawn between the two
	}{
		{"purlin", "principal rafter", false}, {"principal rafter", "tie", false}, {"rafter", "plate", true}, {"tie", "plate", false},
		{"beam", "plate", false}, {"plate", "post", true}, {"beam", "post", false}, {"post", "sill", true},
	} {
		drawn, n := p.between(x.upper, x.lower)
		if n == "" && !(x.asked && anyOf(p.f, x.upper) && anyOf(p.f, x.lower)) {
			continue
		}
		out = append(out, []string{x.upper + " – " + x.lower, drawn, n, "", "", "", ""})
	}
	count, roles := p.supports()
	for _, role := range roles {
		out = append(out, []string{role + " – foundation", "rests on piers, places as on the foundation sheet", fmt.Sprint(count[role]), "", "", "", ""})
	}
	for _, role := range []string{"sill", "post"} { // what stands lowest and on nothing described
		if len(roles) == 0 && anyOf(p.f, role) {
			return append(out, []string{role + " – foundation", "no piers or footings described", "", "", "", "", ""})
		}
	}
	return out
}

// pathTitle heads the load path with where it begins.
func (p *set) pathTitle() string {
	from := "top of the frame"
	if anyOf(p.f, "rafter") {
		from = "roof"
	}
	return "Uplift and sideways loads, from the " + from + " to the ground"
}

func anyOf(f *geom.Frame, role string) bool {
	for _, t := range f.Timbers {
		if t.Role == role {
			return true
		}
	}
	return false
}

// supports counts the supports by the role of what they carry, all sills as one,
// and names the roles in the order of the supports. The counts add up to the
// piers of the foundation sheet.
func (p *set) supports() (count map[string]int, roles []string) {
	count = map[string]int{}
	for _, s := range p.f.Supports {
		role := "frame"
		if t := p.f.Timber(s.Timber); t != nil {
			role = t.Role
		}
		if strings.HasSuffix(role, "sill") {
			role = "sill"
		}
		if count[role]++; count[role] == 1 {
			roles = append(roles, role)
		}
	}
	return count, roles
}

// mostKinds is how many kinds of joint a step of the load path names.
const mostKinds = 3

// between says which joints stand between timbers of two roles and how many.
func (p *set) between(a, b string) (drawn, count string) {
	n := 0
	var kinds []string
	said := map[string]bool{}
	for _, j := range p.f.Joints {
		if x, y := j.Of.Role, j.Into.Role; !(x == a && y == b || x == b && y == a) {
			continue
		}
		n++
		w := j.Kind + ", " + pegWords(p.f, j)
		if !said[w] {
			said[w] = true
			kinds = append(kinds, w)
		}
	}
	if n == 0 {
		return "none drawn", ""
	}
	if len(kinds) > mostKinds {
		kinds = append(kinds[:mostKinds], "and others, see the table of joints")
	}
	return strings.Join(kinds, "; "), fmt.Sprint(n)
}

// pegWords counts the pegs of a joint and names their bore.
func pegWords(f *geom.Frame, j *geom.Joint) string {
	switch n := len(j.Pegs); n {
	case 0:
		return "not pegged"
	case 1:
		return "1 peg Ø\u00a0" + f.Units.FormatJoint(j.Pegs[0].Bore)
	default:
		return fmt.Sprintf("%d pegs Ø\u00a0%s", n, f.Units.FormatJoint(j.Pegs[0].Bore))
	}
}

// braces says how many braces are drawn and what they are not.
func (p *set) braces() string {
	bents, walls := 0, 0
	for _, t := range p.f.Timbers {
		switch {
		case t.Role != "brace":
		case t.Wall == "north" || t.Wall == "south":
			walls++
		default:
			bents++
		}
	}
	if bents+walls == 0 {
		return "No braces are drawn. What holds the frame against wind and earthquake is for the designer of record."
	}
	return fmt.Sprintf("Knee braces drawn: %d in the eave walls, %d in the bents or elsewhere. Knee braces are not claimed to resist wind or earthquake alone; what does is for the designer of record.", walls, bents)
}
