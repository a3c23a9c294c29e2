package plan

import (
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/draw/setout"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// opening is a door or a window in a wall: two opposite corners of what is left
// clear between the timbers, frame axes.
type opening struct {
	what     string
	low, top vec.V
}

// openingsOf returns the openings between the door and window posts of a wall:
// clear between ideal faces along the wall, from the datum or the rail up to the
// header or to what else lies over the opening.
func openingsOf(f *geom.Frame, named []*geom.Timber) []opening {
	z0, _ := setout.Datum(f)
	var out []opening
	first := map[string]*geom.Timber{}
	for _, t := range named {
		what, ok := strings.CutSuffix(t.Role, " post")
		key, _, pair := strings.Cut(t.ID, "-post-")
		if !ok || !pair || what != "door" && what != "window" {
			continue
		}
		a := first[key]
		if a == nil {
			first[key] = t
			continue
		}
		gaps := clears(f, []*geom.Timber{a, t}, vec.V{X: 1})
		if len(gaps) != 1 {
			continue
		}
		g := gaps[0]
		lo, hi := clearUp(named, (g.From+g.To)/2, z0)
		if hi > lo {
			y := t.Place.O.Y
			out = append(out, opening{what, vec.V{X: g.From, Y: y, Z: lo}, vec.V{X: g.To, Y: y, Z: hi}})
		}
	}
	return out
}

// clearUp returns between which heights an opening about x is clear.
func clearUp(named []*geom.Timber, x, z0 float64) (lo, hi float64) {
	lo, hi = z0, math.Inf(1)
	for _, t := range named {
		a, b := t.Blank.Extent(t.Place.InDir(vec.V{X: 1}))
		if o := t.Place.O.X; math.Abs(t.Place.X.X) < 1-1e-6 || a+o > x || b+o < x {
			continue
		}
		under, top := t.Blank.Extent(t.Place.InDir(vec.V{Z: 1}))
		under, top = under+t.Place.O.Z, top+t.Place.O.Z
		switch {
		case t.Role == "rail":
			lo = max(lo, top)
		case under > z0+1:
			hi = min(hi, under)
		}
	}
	if math.IsInf(hi, 1) {
		return 0, 0
	}
	return lo, hi
}

// clearSizes writes into every opening what is clear there, width by height,
// where there is room.
func (p *surveyPage) clearSizes(s *draw.Sheet, o vec.P) {
	for _, g := range p.openings {
		b := draw.NoBox()
		for _, v := range []vec.V{g.low, g.top} {
			b = b.With(o.Add(p.cam.Project(v).Mul(p.k)))
		}
		size := p.f.Units.Plain(g.top.X-g.low.X) + " x " + p.f.Units.Plain(g.top.Z-g.low.Z)
		h := dim.Together("", size).Height
		for _, share := range []float64{0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.9, 0.1} {
			mid := b.Min.Lerp(b.Max, 0.5)
			mid.Y = b.Min.Y + b.H()*share
			if p.twoLines(s, b, mid, h, g.what+", clear", size) {
				break
			}
		}
	}
}

// twoLines sets two lines about a point, if they lie in a box and meet nothing.
func (p *surveyPage) twoLines(s *draw.Sheet, in draw.Box, mid vec.P, h float64, upper, lower string) bool {
	lines := []*draw.Text{
		{At: vec.At(mid.X, mid.Y+0.3*h), S: upper, Height: h},
		{At: vec.At(mid.X, mid.Y-1.35*h), S: lower, Height: h},
	}
	for _, t := range lines {
		t.Class, t.Anchor, t.Mark = draw.TextClass, draw.Middle, "clear"
		b := font.Turned(t)
		if b.Min.X < in.Min.X || b.Max.X > in.Max.X || b.Min.Y < in.Min.Y || b.Max.Y > in.Max.Y || page.AnyHits(s.Items, b) {
			return false
		}
	}
	for _, t := range lines {
		s.Add(t)
	}
	return true
}
