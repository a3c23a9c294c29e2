package naming

import (
	"math"
	"slices"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/geom/vec"
)

// Name is a text that is to stand by one of several places that it is good for.
type Name struct {
	// Text is what is written, and Owner the id that the text carries.
	Text, Owner string
	// Spots are the places, the best first, where they lie on the paper.
	Spots []Spot
}

// namer sets names on a drawing that is otherwise done. A name stands in the
// wood that it names where there is room, or else along it, or else as near as
// can be, with a leader that ends in a dot on the wood.
type namer struct {
	s     *draw.Sheet
	field draw.Box
	seen  func(p vec.P) string // whose wood shows at a point of the paper
	lines *lineSet
	words []draw.Box
	other []*draw.Text // level words of another height
	h     float64
	plan  []placing
}

// placing is a name in its place; lead is its leader, from the name to the dot.
type placing struct {
	text *draw.Text
	box  draw.Box
	led  bool
	lead [2]vec.P
}

func newNamer(s *draw.Sheet, field block.Field, seen func(vec.P) string) *namer {
	n := &namer{s: s, field: field.Box(), seen: seen, lines: newLineSet(s.Items), h: dim.Small}
	for _, it := range s.Items {
		if t, ok := it.(*draw.Text); ok {
			n.words = append(n.words, dim.BoxOf(t))
			if t.Height != n.h && t.Rot == 0 {
				n.other = append(n.other, t)
			}
		}
	}
	return n
}

// Set sets names on a drawing that is otherwise done, in the field given, and
// returns those for which there is no room. Where there is room for none they stand
// in lanes at the left and the right of the field, as many as these hold. seen tells
// whose wood shows at a point of the paper.
func Set(s *draw.Sheet, field block.Field, seen func(vec.P) string, names []Name) []Name {
	left := newNamer(s, field, seen).set(names)
	if len(left) == len(names) && len(names) > 0 {
		left = inLanes(s, field, names)
	}
	return left
}

// set sets the names by their wood and returns those for which there is no room.
// Names that found none are tried again before the others.
func (n *namer) set(names []Name) []Name {
	var best []placing
	var left []Name
	for try := range 3 {
		n.plan = nil
		rest := n.try(names)
		if try == 0 || len(rest) < len(left) {
			best, left = n.plan, rest
		}
		if len(rest) == 0 || len(rest) > MostRetried {
			break
		}
		names = append(slices.Clone(rest), Without(names, rest)...)
	}
	for _, p := range best {
		if p.led {
			n.s.Line(draw.Dimension, p.lead[0], p.lead[1]).Owner = p.text.Owner
			dim.Dot(n.s, p.lead[1]).Owner = p.text.Owner
		}
		n.s.Add(p.text)
	}
	return left
}

// MostRetried is how many names may be left for another try to be worth while.
const MostRetried = 6

// Without returns the names of a list that are not among others.
func Without(list, others []Name) []Name {
	var out []Name
	for _, x := range list {
		if !slices.ContainsFunc(others, func(y Name) bool { return y.Text == x.Text && y.Owner == x.Owner }) {
			out = append(out, x)
		}
	}
	return out
}

// try plans places for the names, first those that need no leader, and returns
// the names that have found none.
func (n *namer) try(names []Name) []Name {
	for _, how := range []func(Name) bool{n.inside, n.beside, n.led} {
		var rest []Name
		for _, x := range names {
			if !how(x) {
				rest = append(rest, x)
			}
		}
		names = rest
	}
	if len(names) > MostRetried {
		return names
	}
	return slices.DeleteFunc(names, n.ledFinely)
}

// textAt returns a text with its middle at a point, upright where turned.
func (n *namer) textAt(x Name, mid vec.P, turned bool) *draw.Text {
	t := &draw.Text{Meta: draw.Meta{Class: draw.TextClass, Owner: x.Owner}, Height: n.h, S: x.Text, Anchor: draw.Middle}
	if turned {
		t.Rot, t.At = math.Pi/2, vec.At(mid.X+n.h/2, mid.Y)
	} else {
		t.At = vec.At(mid.X, mid.Y-n.h/2)
	}
	return t
}

// put plans a text, with its leader where it has one.
func (n *namer) put(t *draw.Text, lead ...vec.P) {
	p := placing{text: t, box: dim.BoxOf(t)}
	if len(lead) == 2 {
		p.led, p.lead = true, [2]vec.P{lead[0], lead[1]}
	}
	n.plan = append(n.plan, p)
}

// inside sets a name in the wood itself, along it.
func (n *namer) inside(x Name) bool {
	for _, f := range x.Spots {
		for _, turned := range []bool{false, true} {
			if f.upright && !turned || f.level && turned {
				continue
			}
			t := n.textAt(x, f.At, turned)
			b := dim.BoxOf(t)
			if n.free(b, 0.15) && n.on(b, f.Owner) && n.apart(t, b) {
				n.put(t)
				return true
			}
		}
	}
	return false
}

// on reports whether the wood of one owner alone shows in a box.
func (n *namer) on(b draw.Box, owner string) bool {
	for _, p := range []vec.P{b.Min, b.Max, vec.At(b.Min.X, b.Max.Y), vec.At(b.Max.X, b.Min.Y), b.Mid()} {
		if n.seen(p) != owner {
			return false
		}
	}
	return true
}

// Air about names, paper mm: between a name and the wood along which it
// stands, and from there to whatever else may seem to be named.
const (
	touchAir = 0.6
	otherAir = 2.2
)

// beside sets a name along its wood, close to it.
func (n *namer) beside(x Name) bool {
	for _, f := range x.Spots {
		if !f.level && !f.upright {
			continue
		}
		for _, way := range []float64{1, -1} {
			t := n.textAt(x, f.At, f.upright)
			b := dim.BoxOf(t)
			var move vec.P
			far := b
			switch {
			case f.level && way > 0:
				move = vec.At(0, f.wood.Max.Y+touchAir-b.Min.Y)
				far.Max.Y += otherAir
			case f.level:
				move = vec.At(0, f.wood.Min.Y-touchAir-b.Max.Y)
				far.Min.Y -= otherAir
			case way > 0:
				move = vec.At(f.wood.Min.X-touchAir-b.Max.X, 0)
				far.Min.X -= otherAir
			default:
				move = vec.At(f.wood.Max.X+touchAir-b.Min.X, 0)
				far.Max.X += otherAir
			}
			far = draw.Box{Min: far.Min.Add(move), Max: far.Max.Add(move)}
			b = draw.Box{Min: b.Min.Add(move), Max: b.Max.Add(move)}
			if n.free(far, 0) && n.free(b, 0.2) && n.on(b, "") {
				if t.At = t.At.Add(move); n.apart(t, b) {
					n.put(t)
					return true
				}
			}
		}
	}
	return false
}

// free reports whether a box, with some air, lies in the field and holds neither
// a line nor a word.
func (n *namer) free(b draw.Box, air float64) bool {
	if b.Min.X < n.field.Min.X || b.Max.X > n.field.Max.X || b.Min.Y < n.field.Min.Y || b.Max.Y > n.field.Max.Y {
		return false
	}
	for _, w := range n.words {
		if page.Overlap(w, b) {
			return false
		}
	}
	for _, p := range n.plan {
		if page.Overlap(p.box, b) || p.led && page.Crosses(p.lead[0], p.lead[1], b) {
			return false
		}
	}
	b.Min, b.Max = b.Min.Sub(vec.At(air, air)), b.Max.Add(vec.At(air, air))
	ok := true
	n.lines.near(b, func(d drawnLine) bool {
		ok = !page.Crosses(d.a, d.b, b)
		return ok
	})
	return ok
}

// lineAir is the least room between a name and a word of another height on the
// same line, over the height of the larger: nearer, they are read as one.
const lineAir = 1.3

// apart reports whether a name with its box stands so that it is not read as one
// line or paragraph with a word of another height.
func (n *namer) apart(t *draw.Text, b draw.Box) bool {
	if t.Rot != 0 {
		return true
	}
	for _, o := range n.other {
		h := max(o.Height, t.Height)
		w := dim.BoxOf(o)
		level := math.Abs(o.At.Y-t.At.Y) < 0.5
		under := math.Abs(o.At.Y-t.At.Y) < 2*h && o.Anchor == t.Anchor && math.Abs(o.At.X-t.At.X) < 0.5
		if level && max(b.Min.X, w.Min.X)-min(b.Max.X, w.Max.X) < lineAir*h || under {
			return false
		}
	}
	return true
}

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
// longer than the one before.
func (n *namer) ledIn(x Name, directions int, longer float64) bool {
	best := math.Inf(1)
	var at0, at1 vec.P
	var text draw.Text
	wide := font.Measure(x.Text, n.h, false)
	for i, f := range x.Spots[:min(len(x.Spots), mostSpots)] {
		for r := 5.0; r <= longestLead && r+float64(i)*costFurther < best; r *= longer {
			for a := range directions {
				sin, cos := math.Sincos((float64(a) + 0.5) * 2 * math.Pi / float64(directions))
				end := f.At.Add(vec.At(cos, sin).Mul(r))
				t := n.endText(x, end, cos)
				b := font.BoxOf(&t, wide)
				if !n.free(b, 0.5) || !n.apart(&t, b) {
					continue
				}
				c := r + float64(i)*costFurther + n.crossed(f.At, end, f.Owner)
				if o := n.seen(b.Mid()); o != "" && o != f.Owner {
					c += costOnWood
				}
				if c < best {
					best, at0, at1, text = c, end, f.At, t
				}
			}
		}
	}
	if math.IsInf(best, 1) {
		return false
	}
	n.put(&text, at0, at1)
	return true
}

// endText returns a name at the end of a leader that runs to the right or the
// left.
func (n *namer) endText(x Name, end vec.P, right float64) draw.Text {
	t := draw.Text{Meta: draw.Meta{Class: draw.TextClass, Owner: x.Owner}, Height: n.h, S: x.Text}
	t.At = vec.At(end.X+0.8, end.Y-n.h/2)
	if right < 0 {
		t.At.X, t.Anchor = end.X-0.8, draw.End
	}
	return t
}

// crossed returns what a leader costs for what it crosses; without end where it
// runs through a word, another leader or a line of a dimension.
func (n *namer) crossed(a, b vec.P, owner string) float64 {
	for _, w := range n.words {
		if page.Crosses(a, b, w) {
			return math.Inf(1)
		}
	}
	for _, p := range n.plan {
		if page.Crosses(a, b, p.box) || p.led && dim.Cross(a, b, p.lead[0], p.lead[1]) {
			return math.Inf(1)
		}
	}
	cost := 0.0
	n.lines.near(draw.NoBox().With(a, b), func(d drawnLine) bool {
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

// namesWide is the width of the widest name, mm.
func namesWide(names []Name, h float64) float64 {
	w := 0.0
	for _, x := range names {
		w = max(w, font.Measure(x.Text, h, false))
	}
	return w
}

// inLanes sets names in lanes at the left and the right of the field, as many as
// these hold, and returns the rest.
func inLanes(s *draw.Sheet, field block.Field, names []Name) []Name {
	const step = dim.Small * 1.7 // as dim.Lane has it
	k := min(len(names), 2*max(1, int((field.H()-1)/step)))
	wide := namesWide(names[:k], dim.Small)
	var sides [2][]dim.Label
	for i, x := range page.LeftToRight(names[:k], func(x Name) float64 { return x.Spots[0].At.X }) {
		side := 0
		if i >= (k+1)/2 {
			side = 1
		}
		sides[side] = append(sides[side], dim.Label{Text: x.Text, At: x.Spots[0].At, Owner: x.Owner})
	}
	letters := dim.Group{Name: "names", Height: dim.Small}
	dim.Lane(s, field.X0+wide+1, false, sides[0], letters, field.Y0, field.Y1)
	dim.Lane(s, field.X1-wide-1, true, sides[1], letters, field.Y0, field.Y1)
	return names[k:]
}

// More ends the title of a sheet on which a view is drawn again for further names.
const More = ", more names"
