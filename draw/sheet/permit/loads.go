package permit

import (
	"fmt"
	"strings"

	"pegwright/draw"
	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/measure"
)

// loads sets the sheets on which the load path, the lateral system, the wood
// and the designer's decisions stand.
func (p *set) loads() {
	s, field := p.sheet("loads", "Uplift and lateral load path", "blanks for loads and connectors", "none",
		"an empty cell is for the designer of record to fill in")
	w := page.Pen{S: s, X: field.X0, Y: field.Y1, W: field.W()}
	w.Head("Uplift and sideways loads, from the roof to the ground")
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

// path returns the rows of the load path.
func (p *set) path() [][]string {
	var out [][]string
	for _, x := range []struct{ upper, lower string }{{"rafter", "plate"}, {"plate", "post"}, {"post", "sill"}} {
		drawn, n := p.between(x.upper, x.lower)
		out = append(out, []string{x.upper + " – " + x.lower, drawn, n, "", "", "", ""})
	}
	for _, role := range []string{"sill", "post"} {
		if n := p.supports(role); n > 0 || role == "sill" && anyOf(p.f, role) {
			drawn := "rests on piers, places as on the foundation sheet"
			count := fmt.Sprint(n)
			if n == 0 {
				drawn, count = "no piers or footings described", ""
			}
			out = append(out, []string{role + " – foundation", drawn, count, "", "", "", ""})
		}
	}
	return out
}

func anyOf(f *geom.Frame, role string) bool {
	for _, t := range f.Timbers {
		if t.Role == role {
			return true
		}
	}
	return false
}

// supports counts the supports under timbers of a role.
func (p *set) supports(role string) int {
	n := 0
	for _, s := range p.f.Supports {
		if t := p.f.Timber(s.Timber); t != nil && t.Role == role {
			n++
		}
	}
	return n
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

// decimal shows a size without a fraction, as tables for an engineer have it.
func decimal(f *geom.Frame, mm float64) string {
	if f.Units == measure.Metric {
		return draw.Number(mm, 1) + " mm"
	}
	return draw.Number(mm/25.4, 4) + " in"
}

// pegWords counts the pegs of a joint and names their bore.
func pegWords(f *geom.Frame, j *geom.Joint) string {
	switch n := len(j.Pegs); n {
	case 0:
		return "not pegged"
	case 1:
		return "1 peg Ø " + decimal(f, j.Pegs[0].Bore)
	default:
		return fmt.Sprintf("%d pegs Ø %s", n, decimal(f, j.Pegs[0].Bore))
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
