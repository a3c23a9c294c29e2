package naming

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/geom/vec"
)

// What a leader costs over its own length, mm of leader: for every line that it
// crosses of another timber, of its own, of the grid, to a height; and for a name that
// stands on the wood of another.
const (
	costOther   = 4.0
	costOwn     = 0.5
	costThin    = 2.0
	costLevel   = 30.0
	costOnWood  = 10.0
	costFurther = 0.6 // for every further place on the same wood
)

// How many places in its wood a name with a leader is tried at, in how many
// directions, and how long a leader may be.
const (
	mostSpots   = 7
	directions  = 20
	longestLead = 90.0 // mm
)

// led sets a name with a leader.
func (n *namer) led(x Name) bool { return n.ledIn(x, directions, 1.35) }

// ledFinely is led where that has found nothing, in more directions and at more
// lengths.
func (n *namer) ledFinely(x Name) bool { return n.ledIn(x, 3*directions, 1.12) }

// ledIn tries a leader in equal directions about every place, each by a factor
// longer than the one before. A longer leader crosses all that a shorter one in the
// same direction does.
func (n *namer) ledIn(x Name, directions int, longer float64) bool {
	best := math.Inf(1)
	var lead [2]vec.P
	var text draw.Text
	t := draw.Text{Meta: draw.Meta{Class: draw.TextClass, Owner: x.Owner}, Height: n.h, S: x.Text}
	wide := font.Measure(x.Text, n.h, false)
	ways, crossed := waysAbout(directions), make([]float64, directions)
	for i, f := range x.Spots[:min(len(x.Spots), mostSpots)] {
		clear(crossed)
		further := float64(i) * costFurther
		for r := 5.0; r <= longestLead && r+further < best; r *= longer {
			for a, way := range ways {
				if r+further+crossed[a] >= best {
					continue
				}
				end := f.At.Add(way.Mul(r))
				endAt(&t, end, way.X)
				b := font.BoxOf(&t, wide)
				if !n.free(b, 0.5) || !n.apart(&t, b) {
					continue
				}
				crossed[a] = n.crossed(f.At, end, f.Owner)
				c := r + further + crossed[a]
				if o := n.seen(b.Mid()); o != "" && o != f.Owner {
					c += costOnWood
				}
				if c < best {
					best, lead, text = c, [2]vec.P{end, f.At}, t
				}
			}
		}
	}
	if math.IsInf(best, 1) {
		return false
	}
	n.put(&text, lead[0], lead[1])
	return true
}

// waysAbout returns directions about a point at equal angles, none of them upright or
// level.
func waysAbout(directions int) []vec.P {
	ways := make([]vec.P, directions)
	for a := range ways {
		sin, cos := math.Sincos((float64(a) + 0.5) * 2 * math.Pi / float64(directions))
		ways[a] = vec.At(cos, sin)
	}
	return ways
}

// endAt puts a name at the end of a leader that runs to the right or the left.
func endAt(t *draw.Text, end vec.P, right float64) {
	t.At, t.Anchor = vec.At(end.X+0.8, end.Y-t.Height/2), draw.Start
	if right < 0 {
		t.At.X, t.Anchor = end.X-0.8, draw.End
	}
}

// crossed returns what a leader costs for what it crosses; without end where it
// runs through a word, another leader or a line of a dimension.
func (n *namer) crossed(a, b vec.P, owner string) float64 {
	for _, w := range n.words {
		if page.Crosses(a, b, w) {
			return math.Inf(1)
		}
	}
	for i := range n.plan {
		p := &n.plan[i]
		if page.Crosses(a, b, p.box) || p.led && dim.Cross(a, b, p.lead[0], p.lead[1]) {
			return math.Inf(1)
		}
	}
	cost := 0.0
	n.lines.near(draw.NoBox().With(a, b), func(d *drawnLine) bool {
		switch {
		case d.class == draw.Hatch || !dim.Cross(a, b, d.a, d.b):
		case d.level:
			cost += costLevel
		case d.class == draw.Dimension:
			cost = math.Inf(1)
		case d.class != draw.Part:
			cost += costThin
		case d.owner == owner:
			cost += costOwn
		default:
			cost += costOther
		}
		return true
	})
	return cost
}
