package plan

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
)

// slopes draws the slope triangle of the roof in a free corner over it, at the
// left if it can be: heights stand at the right.
func (p *surveyPage) slopes(s *draw.Sheet, box draw.Box) {
	if !p.slope {
		return
	}
	for _, long := range []float64{14, 11, 8, 6} {
		for _, way := range []float64{1, -1} {
			for _, t := range p.f.Timbers {
				d := p.cam.Project(t.Place.X)
				if t.Role == "rafter" && d.Y > 0.05 && d.X*way > 0 && d.Len() > 0.999 && p.triangle(s, box, d, long) {
					return
				}
			}
		}
	}
}

// triangle draws the slope triangle of a rafter that rises along d over its
// foot, level leg long, and reports whether there was room.
func (p *surveyPage) triangle(s *draw.Sheet, box draw.Box, d vec.P, long float64) bool {
	k := d.Y / math.Abs(d.X)
	run, rise := "12", draw.Number(12*k, 2)
	if p.f.Units == measure.Metric {
		run, rise = "100", draw.Number(100*k, 1)
	}
	long = min(long, 16/k)
	way := math.Copysign(1, d.X)
	for in := 2.0; in < box.W()/2; in += 8 {
		r := vec.At(box.Min.X+in, box.Max.Y-1)
		if way < 0 {
			r.X = box.Max.X - in
		}
		if p.triangleAt(s, r, way, long, long*k, run, rise) {
			return true
		}
	}
	return false
}

// triangleAt draws a slope triangle with its right angle at r, if there is room.
func (p *surveyPage) triangleAt(s *draw.Sheet, r vec.P, way, long, high float64, run, rise string) bool {
	low, end := r.Sub(vec.At(0, high)), r.Add(vec.At(way*long, 0))
	wide := font.Measure(rise, dim.Small, false) + 2
	room := draw.NoBox().With(r, low, end, r.Sub(vec.At(way*wide, 0)), r.Add(vec.At(0, dim.Small+2)))
	if p.crowded(s, room) {
		return false
	}
	s.Poly(draw.Dimension, true, r, low, end).Mark = "slope"
	t := s.Text(vec.At((r.X+end.X)/2, r.Y+1), dim.Small, run)
	t.Anchor, t.Halo = draw.Middle, true
	u := s.Text(vec.At(r.X-way*1, (r.Y+low.Y)/2-dim.Small/2), dim.Small, rise)
	u.Anchor, u.Halo = draw.End, true
	if way < 0 {
		u.Anchor = draw.Start
	}
	return true
}

// crowded reports whether a line of a part, of the grid or of a height, or a word,
// stands in a box.
func (p *surveyPage) crowded(s *draw.Sheet, b draw.Box) bool {
	for _, it := range s.Items {
		h := it.Head()
		if (h.Class == draw.Part || h.Class == draw.Centre || h.Class == draw.TextClass || h.Mark == "level") && h.Layer == "" && page.Hits(it, b) {
			return true
		}
	}
	return false
}
