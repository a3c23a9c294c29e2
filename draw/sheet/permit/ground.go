package permit

import (
	"fmt"
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/draw/setout"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// foundation draws what the description says about what the frame stands on:
// outlines of the sills, the places and sizes of piers, and blanks for the
// rest; then the schedules of piers and timbers.
func (p *set) foundation() {
	g := newGround(p.f)
	t := "no piers or footings described"
	if len(g.f.Supports) > 0 {
		t = "piers as described; footings by others"
	}
	field := block.FieldFor(p.f)
	g.choose(p.f, g.drawing(field))
	s, field := p.sheet("foundation", "What the frame stands on", t, g.scale, block.DefaultNote(p.f.Units))
	g.draw(s, g.drawing(field))
	g.words(s, field)
	p.schedules(&schedule{id: "supports", title: "Places of the piers", shows: "middle of each",
		note: "empty cells are for the designer of record; " + block.DefaultNote(p.f.Units),
		form: &form{heads: []string{"no.", "under", p.alongHead(g), p.acrossHead(g), "size, along x across", "footing", "anchor", "capillary break"},
			shares: []float64{0.06, 0.2, 0.13, 0.13, 0.16, 0.12, 0.1, 0.1}, rows: g.rows(), least: 7}}, p.members())
}

func (p *set) alongHead(g *ground) string { return "along, from line " + g.xs[0].Name }

func (p *set) acrossHead(g *ground) string { return "across, from line " + g.ys[0].Name }

// ground is the plan of what the frame stands on, frame mm.
type ground struct {
	f      *geom.Frame
	xs, ys []setout.Line
	wood   []draw.Box // sills and posts
	piers  []draw.Box
	box    draw.Box
	k      float64
	scale  string
}

func newGround(f *geom.Frame) *ground {
	g := &ground{f: f, box: draw.NoBox()}
	g.xs, _ = setout.BentLines(f)
	g.ys = setout.AllLines(f)
	for _, t := range f.Timbers {
		if strings.HasSuffix(t.Role, "sill") || t.Role == "post" {
			b := planBox(t)
			g.box = g.box.With(b.Min, b.Max)
			g.wood = append(g.wood, b)
		}
	}
	for _, s := range f.Supports {
		b := pierBox(f, s)
		g.piers = append(g.piers, b)
		g.box = g.box.With(b.Min, b.Max)
	}
	if g.box.Empty() {
		for _, t := range f.Timbers {
			b := planBox(t)
			g.box = g.box.With(b.Min, b.Max)
		}
	}
	if len(g.xs) == 0 {
		g.xs = []setout.Line{{Name: "1", At: g.box.Min.X}}
	}
	if len(g.ys) == 0 {
		g.ys = []setout.Line{{Name: "A", At: g.box.Min.Y}}
	}
	return g
}

// planBox returns the box round a timber's blank, seen from above.
func planBox(t *geom.Timber) draw.Box {
	b := draw.NoBox()
	for _, v := range t.Blank.V {
		q := t.Place.Out(v)
		b = b.With(vec.At(q.X, q.Y))
	}
	return b
}

// pierBox returns the outline of a support: its size, the first along the
// building; under a post that stands on nothing described, the post's foot.
func pierBox(f *geom.Frame, s geom.Support) draw.Box {
	c := vec.At(s.At.X, s.At.Y)
	if t := f.Timber(s.Timber); t != nil && s.Size == t.Section && math.Abs(t.Place.X.Z) > 1-1e-6 {
		b := planBox(t)
		half := vec.At(b.W()/2, b.H()/2)
		return draw.Box{Min: c.Sub(half), Max: c.Add(half)}
	}
	half := vec.At(s.Size[0]/2, s.Size[1]/2)
	return draw.Box{Min: c.Sub(half), Max: c.Add(half)}
}

// ringRoom is the room for the rings of the grid beside the plan, paper mm.
const ringRoom = setout.RingRoom + 4

// groundWords is the height of the words under the plan, paper mm.
const groundWords = 46.0

func (g *ground) drawing(field block.Field) block.Field {
	field.Y0 += groundWords
	return field
}

// choose settles the scale: the largest at which plan, grid and dimensions fit.
func (g *ground) choose(f *geom.Frame, field block.Field) {
	for _, n := range setout.Scales(f.Units) {
		g.k, g.scale = 1/n, page.Scale(n)
		if r := g.room(field); g.box.W()*g.k <= r.W() && g.box.H()*g.k <= r.H() {
			return
		}
	}
}

func (g *ground) room(field block.Field) block.Field {
	x, y := g.requests()
	field.X0 += dim.Depth(dim.LeftOf, y) + 4
	field.X1 -= ringRoom + 2
	field.Y1 -= ringRoom
	field.Y0 += dim.Depth(dim.Below, x) + 2
	return field
}

// requests returns the dimensions between the grid lines and over all.
func (g *ground) requests() (x, y []dim.Request) {
	for _, d := range setout.GridDims(g.xs, g.box.Min.X, g.box.Max.X) {
		x = append(x, dim.Request{From: vec.At(d.From, g.box.Min.Y).Mul(g.k), To: vec.At(d.To, g.box.Min.Y).Mul(g.k), Text: g.f.Units.Plain(d.To - d.From)})
	}
	for _, d := range setout.GridDims(g.ys, g.box.Min.Y, g.box.Max.Y) {
		y = append(y, dim.Request{From: vec.At(g.box.Min.X, d.From).Mul(g.k), To: vec.At(g.box.Min.X, d.To).Mul(g.k), Text: g.f.Units.Plain(d.To - d.From)})
	}
	return x, y
}

func (g *ground) draw(s *draw.Sheet, field block.Field) {
	room := g.room(field)
	o := room.Mid().Sub(g.box.Mid().Mul(g.k))
	paper := func(b draw.Box) draw.Box { return draw.Box{Min: o.Add(b.Min.Mul(g.k)), Max: o.Add(b.Max.Mul(g.k))} }
	for _, b := range g.wood {
		s.Rect(draw.Dimension, paper(b)).Mark = "wood"
	}
	box := paper(g.box)
	g.rings(s, box, o)
	for i, b := range g.piers {
		q := paper(b)
		s.Rect(draw.Part, q).Mark = "pier"
		g.number(s, q, fmt.Sprintf("F%d", i+1))
	}
	x, y := g.requests()
	dim.Stack(s, dim.Below, box.Min.Y, dim.Moved(x, o))
	dim.Stack(s, dim.LeftOf, box.Min.X, dim.Moved(y, o))
}

// rings names the grid lines outside the plan.
func (g *ground) rings(s *draw.Sheet, box draw.Box, o vec.P) {
	ring := func(from, c vec.P, name string) {
		s.Line(draw.Centre, from, c.Add(from.Sub(c).Unit().Mul(setout.RingRadius)))
		setout.Ring(s, c, name)
	}
	for _, l := range g.xs {
		x := o.X + l.At*g.k
		ring(vec.At(x, box.Max.Y+0.8), vec.At(x, box.Max.Y+ringRoom-setout.RingRadius), l.Name)
	}
	for _, l := range g.ys {
		y := o.Y + l.At*g.k
		ring(vec.At(box.Max.X+0.8, y), vec.At(box.Max.X+ringRoom-setout.RingRadius, y), l.Name)
	}
}

// number sets a pier's number in its middle, or beside its upper right corner
// where it is small, if it meets no other words.
func (g *ground) number(s *draw.Sheet, b draw.Box, n string) {
	t := &draw.Text{Meta: draw.Meta{Class: draw.TextClass}, At: b.Max.Add(vec.At(0.8, 0.8)), Height: dim.Small, S: n, Halo: true}
	if wide := font.Turned(t).W(); b.W() > wide+1.6 && b.H() > dim.Small+1.6 {
		t.At, t.Anchor = vec.At(b.Mid().X, b.Mid().Y-dim.Small/2), draw.Middle
	}
	q := font.Turned(t)
	for _, it := range s.Items {
		if x, ok := it.(*draw.Text); ok && page.Overlap(q, font.Turned(x)) {
			return
		}
	}
	s.Add(t)
}

// words sets under the plan what is described and what is not.
func (g *ground) words(s *draw.Sheet, field block.Field) {
	field.Y1 = field.Y0 + groundWords - 3
	left, right := page.Split(field, field.X0+field.W()*0.5, 6)
	w := page.Pen{S: s, X: left.X0, Y: left.Y1, W: left.W()}
	w.Head("As described")
	for _, l := range g.described() {
		w.Para(l)
		w.Skip(0.6)
	}
	r := &page.Flow{Pen: page.Pen{S: s, X: right.X0, Y: right.Y1, W: right.W()}, Cols: 1, Field: right, Sheets: []*draw.Sheet{s}}
	r.Head("For the designer of record")
	for _, n := range []string{"footing, depth and size", "frost depth, soil bearing", "anchor and hold-down", "capillary break under wood", "reinforcement, concrete"} {
		blank(r, n)
	}
}

func (g *ground) described() []string {
	out := []string{}
	if len(g.wood) > 0 {
		out = append(out, "Outlines of sills and posts in narrow lines, supports in wide lines.")
	}
	if len(g.piers) == 0 {
		out = append(out, "The description places no piers, footings or walls. What carries the frame is left open.")
	} else {
		var sizes []string
		for i, n := range g.sizes() {
			sizes = append(sizes, n)
			if i == 3 {
				sizes = append(sizes, "and others")
				break
			}
		}
		out = append(out, fmt.Sprintf("%d places of support: %s. Their numbers and places are on the next sheet.", len(g.piers), strings.Join(sizes, ", ")))
	}
	return append(out, "Nothing below the wood is designed here: no footing, no soil, no frost, no anchor.")
}

// sizes lists the sizes of the supports, each once.
func (g *ground) sizes() []string {
	var out []string
	said := map[string]bool{}
	for _, b := range g.piers {
		t := g.size(b)
		if !said[t] {
			said[t] = true
			out = append(out, t)
		}
	}
	return out
}

func (g *ground) size(b draw.Box) string {
	return g.f.Units.Format(b.W()) + " x " + g.f.Units.Format(b.H())
}

// rows returns the places of the supports for the table.
func (g *ground) rows() [][]string {
	var out [][]string
	for i, x := range g.f.Supports {
		b := g.piers[i]
		c := b.Mid()
		out = append(out, []string{fmt.Sprintf("F%d", i+1), x.Timber, g.f.Units.Format(c.X - g.xs[0].At), g.f.Units.Format(c.Y - g.ys[0].At), g.size(b), "", "", ""})
	}
	return out
}
