package assembly

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pegwright/geom"
	"pegwright/geom/vec"
)

// unit is a set of timbers that a crew would move as one.
type unit struct {
	name    string
	members []int
	rank    float64 // place in the order a crew would choose, small first
	bent    int     // 1-based; 0 for no bent
	apart   bool    // what held its members together has gone before them
}

// Ranks of what is not ruled by bent and bay. Bent n has the rank n × perBent.
const (
	perBent   = 1000.0
	rankPlate = 5e6
	rankJoist = 5.5e6 // while the sky is open above them, and to stand on for the roof
	rankRidge = 6e6
	rankRoof  = 7e6
)

// units divides the frame's timbers into units, last of a crew's order first.
func (p *planner) units() []*unit {
	p.findBents()
	groups := map[string]*unit{}
	var r []*unit
	for i, t := range p.s.f.Timbers {
		key := ""
		if n := p.bent[i]; n > 0 {
			key = fmt.Sprintf("bent %d", n)
		} else if p.pair[i] >= 0 {
			key = fmt.Sprintf("pair %d", p.pair[i])
		}
		u := groups[key]
		if u == nil || key == "" {
			u = &unit{name: t.ID, rank: p.rank(i), bent: p.bent[i]}
			groups[key] = u
			r = append(r, u)
		}
		u.members = append(u.members, i)
		if u.bent > 0 {
			u.name = key
		} else if len(u.members) == 2 {
			u.name = together(p.s.f.Timbers[u.members[0]].ID, t.ID)
		}
	}
	slices.SortStableFunc(r, func(a, b *unit) int { return cmp.Compare(b.rank, a.rank) })
	return r
}

// together names two timbers that are raised as one: by what their ids begin
// with, where they begin alike.
func together(a, b string) string {
	n := 0
	for n < len(a) && n < len(b) && a[n] == b[n] {
		n++
	}
	if k := strings.LastIndex(a[:n], "-"); k > 0 {
		return a[:k] + " pair"
	}
	return a + " with " + b
}

func isSill(t *geom.Timber) bool {
	return strings.Contains(t.Role, "sill") && t.Role != "window sill" || t.Role == "ground plate"
}

func plumb(t *geom.Timber) bool { return math.Abs(t.Place.X.Z) > 0.99 }

// crosswise reports whether a timber lies in a plane across the building.
func crosswise(t *geom.Timber) bool { return math.Abs(t.Place.X.X) < 1e-6 }

func middle(t *geom.Timber) vec.V {
	return t.Place.Out(vec.V{X: t.Length / 2, Y: t.Section[0] / 2, Z: t.Section[1] / 2})
}

// other returns the timber at the far side of joint j from timber i.
func (s *scene) other(j *geom.Joint, i int) int {
	if a := s.index[j.Into]; a != i {
		return a
	}
	return s.index[j.Of]
}

// role returns the rank that a timber's role gives, 0 where it gives none.
func (p *planner) role(i int) float64 {
	r := p.s.f.Timbers[i].Role
	has := func(words ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(r, w) })
	}
	switch {
	case has("joist"):
		return rankJoist
	case has("rafter", "collar", "ridge tie"):
		return rankRoof
	case has("ridge", "purlin", "hip", "valley", "king", "queen", "truss", "strut"):
		return rankRidge
	case has("plate"):
		return rankPlate
	}
	return 0
}

// rank returns a timber's place in the order a crew would choose. Timbers of
// one rank follow each other along the building.
func (p *planner) rank(i int) float64 {
	t := p.s.f.Timbers[i]
	m := middle(t)
	along := m.X/1e5 + m.Y/1e9
	if isSill(t) {
		if !crosswise(t) {
			return m.Y / 1e6
		}
		return 10 + along
	}
	if n := p.line[i]; n > 0 && (p.bent[i] > 0 || plumb(t) && p.role(i) == 0) {
		return perBent*float64(n) + along
	}
	switch r := p.role(i); {
	case r == rankJoist && p.onSills(i): // a floor to raise from
		return 20 + along
	case r == rankJoist:
		return r + m.Z + along
	case r > 0:
		return r + along
	}
	if t.Role == "brace" {
		for _, j := range p.s.joints[i] {
			if n := p.line[p.s.other(j, i)]; n > 0 {
				return perBent*float64(n) + 100 + along
			}
		}
	}
	n := t.Bay
	if n == 0 {
		n = p.bay(m.X)
	}
	return perBent*float64(n) + 500 + along + m.Z/1e6
}

// onSills reports whether all that a timber is joined to are sills.
func (p *planner) onSills(i int) bool {
	for _, j := range p.s.joints[i] {
		if !isSill(p.s.f.Timbers[p.s.other(j, i)]) {
			return false
		}
	}
	return len(p.s.joints[i]) > 0
}

// bay returns the number of the last bent that stands at or before x.
func (p *planner) bay(x float64) int {
	n := 0
	for k, at := range p.bentAt {
		if at <= x {
			n = max(n, k)
		}
	}
	return n
}
