package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// A building that is long for its paper is drawn whole once, small and without
// the names of its timbers, and then in parts of one or more bays. Two parts meet
// at a bent that both show, at the match line.

// leastNamed is n of the smallest scale, 1:n, at which a view with names is drawn
// where it can be had in parts. 1/4 in to the foot and 1:50 are the customary
// scales of a building's plans and elevations.
func leastNamed(u measure.Units) float64 {
	if u == measure.Metric {
		return 50
	}
	return 48
}

// leastSized is the same for a view that names sizes in groups: 1/8 in to the
// foot and 1:100.
func leastSized(u measure.Units) float64 { return 2 * leastNamed(u) }

// least is the smallest scale of the view, as a number.
func (v *survey) least(u measure.Units) float64 {
	if v.bySize {
		return 1 / leastSized(u)
	}
	return 1 / leastNamed(u)
}

// inBays parts the view by its stations.
func (v *survey) inBays(n int) []setout.Bays { return setout.InBays(v.stations, v.beyond, n) }

// inParts returns the view as an overview and the fewest parts that leave room for
// the names at one scale, no less than the least; in single bays where even these
// do not. It returns nil where the view has no bays to be parted by.
func (v *survey) inParts(f *geom.Frame) []*surveyPage {
	bays := len(v.stations) - 1
	if bays < 2 {
		return nil
	}
	least := v.leastInBays(f)
	var pages []*surveyPage
	for n := v.fewest(f, least); pages == nil && n < bays; n++ {
		pages = v.parted(f, n, least)
	}
	if pages == nil {
		pages = v.parted(f, bays, 0)
	}
	return append(v.overview(f, pages), pages...)
}

// leastInBays is the least scale, or the largest at which single bays fit where
// the building is wide for its paper.
func (v *survey) leastInBays(f *geom.Frame) float64 {
	list := v.inBays(len(v.stations) - 1)
	long := slices.MaxFunc(list, func(a, b setout.Bays) int { return cmp.Compare(a.Last.At-a.First.At, b.Last.At-b.First.At) })
	k := v.least(f.Units)
	for _, x := range []setout.Bays{list[0], long, list[len(list)-1]} {
		if p := v.page(f, x); p != nil {
			k = min(k, p.k)
		}
	}
	return k
}

// fewest is the least number of parts, 2 or more, in which none is wider than the
// paper at a scale.
func (v *survey) fewest(f *geom.Frame, k float64) int {
	field := block.FieldFor(f)
	for n := 2; ; n++ {
		wide := slices.ContainsFunc(v.inBays(n), func(x setout.Bays) bool { return (x.Last.At-x.First.At)*k > field.W() })
		if !wide || n >= len(v.stations)-1 {
			return n
		}
	}
}

// page returns a part at the largest scale at which it fits; nil where there is
// nothing to see.
func (v *survey) page(f *geom.Frame, x setout.Bays) *surveyPage {
	p := &surveyPage{survey: v.part(x), f: f}
	if !p.measure() {
		return nil
	}
	return p
}

// parted returns the view in n parts at one scale, the largest that leaves room
// for all names, or nil where that is less than the least or the names of timbers
// would get lost. Without a least they are at the largest at which all fit.
func (v *survey) parted(f *geom.Frame, n int, least float64) []*surveyPage {
	var pages []*surveyPage
	most := math.Inf(1)
	for _, x := range v.inBays(n) {
		if p := v.page(f, x); p != nil {
			pages, most = append(pages, p), min(most, p.k)
		}
		if most < least-1e-12 {
			return nil
		}
	}
	if least == 0 {
		atScale(pages, most)
		return pages
	}
	for k, shown := most, 0; k > least-1e-12; k = nextScale(f.Units, k) {
		fit, n := atScale(pages, k), pointable(pages)
		if shown = max(shown, n); n < shown {
			return nil
		}
		if fit {
			return pages
		}
	}
	return nil
}

// atScale brings the pages to one scale and reports whether each then takes one
// sheet.
func atScale(pages []*surveyPage, k float64) bool {
	for _, p := range pages {
		p.k, p.scale = k, page.Scale(1/k)
	}
	for _, p := range pages {
		if !p.fits() {
			return false
		}
	}
	return !slices.ContainsFunc(pages, func(p *surveyPage) bool { return len(p.sheets()) > 1 })
}

// nextScale is the next smaller customary scale; 0 where there is none.
func nextScale(u measure.Units, k float64) float64 {
	for _, n := range setout.Scales(u) {
		if 1/n < k-1e-12 {
			return 1 / n
		}
	}
	return 0
}

// part returns the view of some bays.
func (v *survey) part(x setout.Bays) *survey {
	s := *v
	s.id = fmt.Sprintf("%s-part-%d", v.id, x.N)
	s.title = fmt.Sprintf("%s, part %d of %d", v.title, x.N, x.Of)
	s.shows = strings.TrimPrefix(strings.TrimPrefix(v.shows, showsWhole)+", "+x.Between(v.stationWord()), ", ")
	s.bays, s.seen = &x, v.shot().of(x)
	s.cuts = append(slices.Clone(s.cuts), x.Planes(s.cam)...)
	s.grid = linesWithin(v.grid, x)
	s.named = x.Timbers(v.named, s.cam)
	s.across = acrossBays(v.across, x)
	if len(v.grid) == 0 {
		s.across = append(s.across, baySteps(linesWithin(v.stations, setout.Bays{Lo: x.First.At, Hi: x.Last.At}))...)
	}
	s.diagonals = nil
	for _, d := range v.diagonals {
		if x.Holds(s.cam.Project(d.A).X) && x.Holds(s.cam.Project(d.B).X) {
			s.diagonals = append(s.diagonals, d)
		}
	}
	if v.squares != nil && v.diagonals != nil {
		s.diagonals = v.squares([]setout.Line{x.First, x.Last})
	}
	if v.leveled != nil {
		s.leveled = s.named
	}
	return &s
}

// stationWord names what the view is parted by.
func (v *survey) stationWord() string {
	if len(v.grid) > 0 {
		return "bents"
	}
	return "posts"
}

func linesWithin(list []setout.Line, x setout.Bays) []setout.Line {
	var out []setout.Line
	for _, l := range list {
		if x.Holds(l.At) {
			out = append(out, l)
		}
	}
	return out
}

// acrossBays returns the dimensions that some bays show, a row of equal spaces only
// as far as they do, and what they measure between their outermost lines.
func acrossBays(list []setout.Stretch, x setout.Bays) []setout.Stretch {
	out := []setout.Stretch{}
	for _, d := range list {
		n := max(d.N, 1)
		step := (d.To - d.From) / float64(n)
		i, j := 0, n
		for i < n && !x.Holds(d.From+float64(i)*step) {
			i++
		}
		for j > i && !x.Holds(d.From+float64(j)*step) {
			j--
		}
		if j > i {
			out = append(out, setout.Stretch{From: d.From + float64(i)*step, To: d.From + float64(j)*step, N: j - i, What: d.What})
		}
	}
	return append(out, setout.Stretch{From: x.First.At, To: x.Last.At})
}

// baySteps returns the distances between neighbouring stations, equal ones that
// follow each other at once.
func baySteps(stations []setout.Line) []setout.Stretch {
	var at []float64
	for _, l := range stations {
		at = append(at, l.At)
	}
	return setout.EqualSteps(at)
}

// matchLines draws where the parts of a long view meet: the bent's line heavy,
// with the part that goes on from there, and beyond it a break line.
func (p *surveyPage) matchLines(s *draw.Sheet, box draw.Box, o vec.P) {
	if p.bays == nil {
		return
	}
	x := *p.bays
	for i, l := range []setout.Line{x.First, x.Last} {
		if !x.Open[i] {
			continue
		}
		edge, other, way, anchor := x.Lo, x.N-1, 1.0, draw.Start
		if i == 1 {
			edge, other, way, anchor = x.Hi, x.N+1, -1.0, draw.End
		}
		s.Poly(draw.Dimension, false, view.Zigzag(vec.At(o.X+edge*p.k, box.Min.Y-2), vec.At(o.X+edge*p.k, box.Max.Y+2))...).Mark = "break"
		a := vec.At(o.X+l.At*p.k, box.Max.Y+setout.RingRoom-setout.RingRadius)
		if len(p.grid) == 0 {
			s.Line(draw.Centre, vec.At(a.X, box.Min.Y-2), vec.At(a.X, a.Y+setout.RingRadius))
		}
		words, off := "match line", setout.RingRadius+1
		if len(p.grid) == 0 {
			words, off = "match line at "+l.Name, 1
		}
		if gap := (x.Last.At - x.First.At) * p.k; x.Open[0] && x.Open[1] && gap < 2*(font.Measure(words, dim.Small, false)+off+1) {
			way, anchor = -way, draw.Start+draw.End-anchor // no room between the two
		}
		for row, t := range []string{words, fmt.Sprintf("see part %d", other)} {
			w := s.Text(vec.At(a.X+way*off, a.Y+0.7-float64(row)*dim.Small*page.Pitch), dim.Small, t)
			w.Anchor, w.Mark = anchor, "match"
		}
	}
}

// withoutEnds returns the lines of a picture but for those along which the parts
// of a long view are cut off.
func withoutEnds(items []draw.Item, x *setout.Bays) []draw.Item {
	if x == nil {
		return items
	}
	return slices.DeleteFunc(items, func(it draw.Item) bool {
		b := draw.ItemBounds(it)
		return b.W() < 1e-3 && (math.Abs(b.Min.X-x.Lo) < 1e-3 || math.Abs(b.Min.X-x.Hi) < 1e-3)
	})
}
