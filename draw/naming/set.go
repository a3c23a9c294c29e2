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
	close []draw.Box   // those of the words that reach into the field
	other []*draw.Text // level words of another height
	h     float64
	plan  []placing
	met   int // the place in plan that a box met last, and may meet next
}

// placing is a name in its place; lead is its leader, from the name to the dot.
type placing struct {
	text   *draw.Text
	box    draw.Box
	led    bool
	lead   [2]vec.P
	around draw.Box // the box with the leader
}

// meets reports whether a name in its place, or its leader, lies in a box.
func (p *placing) meets(b draw.Box) bool {
	return page.Overlap(p.box, b) || p.led && page.Crosses(p.lead[0], p.lead[1], b)
}

// touch reports whether two boxes have a point in common.
func touch(a, b *draw.Box) bool {
	return a.Min.X <= b.Max.X && a.Max.X >= b.Min.X && a.Min.Y <= b.Max.Y && a.Max.Y >= b.Min.Y
}

func newNamer(s *draw.Sheet, field block.Field, seen func(vec.P) string) *namer {
	n := &namer{s: s, field: field.Box(), seen: seen, lines: newLineSet(s.Items), h: dim.Small}
	for _, it := range s.Items {
		if t, ok := it.(*draw.Text); ok {
			b := font.Turned(t)
			if n.words = append(n.words, b); page.Overlap(b, n.field) {
				n.close = append(n.close, b)
			}
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
	p := placing{text: t, box: font.Turned(t)}
	if len(lead) == 2 {
		p.led, p.lead = true, [2]vec.P{lead[0], lead[1]}
	}
	p.around = p.box.With(lead...)
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
			b := font.Turned(t)
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
			b := font.Turned(t)
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
	for _, w := range n.close {
		if page.Overlap(w, b) {
			return false
		}
	}
	airy := draw.Box{Min: b.Min.Sub(vec.At(air, air)), Max: b.Max.Add(vec.At(air, air))}
	if n.met < len(n.plan) && n.plan[n.met].meets(b) || n.lines.meetsAgain(airy) {
		return false
	}
	for i := range n.plan {
		if p := &n.plan[i]; touch(&p.around, &b) && p.meets(b) {
			n.met = i
			return false
		}
	}
	return !n.lines.meets(airy)
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
		w := font.Turned(o)
		level := math.Abs(o.At.Y-t.At.Y) < 0.5
		under := math.Abs(o.At.Y-t.At.Y) < 2*h && o.Anchor == t.Anchor && math.Abs(o.At.X-t.At.X) < 0.5
		if level && max(b.Min.X, w.Min.X)-min(b.Max.X, w.Max.X) < lineAir*h || under {
			return false
		}
	}
	return true
}

// More ends the title of a sheet on which a view is drawn again for further names.
const More = ", more names"
