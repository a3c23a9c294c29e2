package joint

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/peg"
)

// margins are the tightest margins of the holes of a joint, of holes that stand
// alike once.
type margins []margin

// margin is the tightest margin of some holes, counted from 1.
type margin struct {
	peg.Margin
	grade peg.Grade
	bore  float64
	holes []string
	of    int // holes in all
}

func marginsOf(pegs []geom.Peg) margins {
	var out margins
	for i, g := range pegs {
		t, ok := g.Window.Tightest()
		if !ok {
			continue
		}
		m := margin{t, g.Window.Grade, g.Bore, nil, len(pegs)}
		k := slices.IndexFunc(out, m.same)
		if k < 0 {
			k, out = len(out), append(out, m)
		}
		out[k].holes = append(out[k].holes, strconv.Itoa(i+1))
	}
	return out
}

// same reports whether two margins read the same.
func (m margin) same(n margin) bool {
	return m.grade == n.grade && m.bore == n.bore && m.Rule.Name == n.Rule.Name && m.Rule.Timber == n.Rule.Timber &&
		math.Abs(m.Distance-n.Distance) < 1e-6 && m.Rule.Workable == n.Rule.Workable && m.Rule.Full == n.Rule.Full
}

// tell tells how the holes stand, in brief where there is little room. In the
// picture, if it is drawn, an arrow is at the first.
func (ms margins) tell(p *page.Pen, f *geom.Frame, brief, drawn bool) {
	for i, m := range ms {
		if i > 0 {
			p.Skip(2)
		}
		p.Head(m.name() + ": " + m.grade.String())
		tightest := "Tightest"
		if drawn && m.holes[0] == "1" {
			tightest += " (arrow)"
		}
		tightest += ": " + m.Rule.Name + " of " + m.Rule.Timber
		bores := fmt.Sprintf("%.1f", m.Distance/m.bore)
		if brief {
			p.Para(fmt.Sprintf("%s, at %s (%s bores)", tightest, f.Units.FormatJoint(m.Distance), bores))
			continue
		}
		p.Para(tightest)
		valueOf(p, row{"hole centre to it", f.Units.FormatJoint(m.Distance)})
		valueOf(p, row{"in bores", bores})
		valueOf(p, row{"workable from", f.Units.FormatJoint(m.Rule.Workable)})
		valueOf(p, row{"full strength from", f.Units.FormatJoint(m.Rule.Full)})
	}
}

// name names the holes.
func (m margin) name() string {
	last := len(m.holes) - 1
	switch {
	case m.of == 1:
		return "The hole"
	case last == 0:
		return "Hole " + m.holes[0]
	}
	return "Holes " + strings.Join(m.holes[:last], ", ") + " and " + m.holes[last]
}
