package plan

import (
	"cmp"
	"fmt"
	"slices"
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

// overview returns the whole view without names, with a key to its parts and
// what is found in each.
func (v *survey) overview(f *geom.Frame, parts []*surveyPage) []*surveyPage {
	s := *v
	s.title, s.named, s.leveled, s.openings = v.title+", overview", nil, nil, nil
	s.across = append(baySteps(v.stations), longest(v.across)...)
	if v.squares == nil {
		s.diagonals = nil
	}
	for _, p := range parts {
		s.key = append(s.key, *p.bays)
		s.index = append(s.index, p.found())
	}
	p := &surveyPage{survey: &s, f: f}
	if !p.measure() {
		return nil
	}
	return []*surveyPage{p}
}

// found says what a part shows, with the ids of the timbers that it names.
func (p *surveyPage) found() string {
	t := fmt.Sprintf("Part %d, %s", p.bays.N, p.bays.Between(p.stationWord()))
	if p.bySize {
		return t
	}
	var ids []string
	for _, x := range p.names() {
		ids = append(ids, x.Owner)
	}
	return t + ": " + strings.Join(ids, ", ")
}

// longest returns the longest of some dimensions.
func longest(list []setout.Stretch) []setout.Stretch {
	if len(list) == 0 {
		return nil
	}
	return []setout.Stretch{slices.MaxFunc(list, func(a, b setout.Stretch) int { return cmp.Compare(a.To-a.From, b.To-b.From) })}
}

// Sizes of the key to the parts under an overview, paper mm: what it takes, and
// the ticks at its ends.
const (
	keyRoom = 7.0
	keyTick = 1.5
)

// partKey draws, under the dimensions of an overview, how far each part reaches.
func (p *surveyPage) partKey(s *draw.Sheet, y float64, o vec.P) {
	for _, x := range p.key {
		a, b := vec.At(o.X+x.First.At*p.k, y), vec.At(o.X+x.Last.At*p.k, y)
		s.Line(draw.FrameLine, a, b).Mark = "part"
		for _, q := range []vec.P{a, b} {
			s.Line(draw.FrameLine, q.Add(vec.At(0, -keyTick)), q.Add(vec.At(0, keyTick))).Mark = "part"
		}
		name := fmt.Sprintf("part %d", x.N)
		if font.Measure(name, dim.Small, false) > b.X-a.X-2 {
			name = fmt.Sprint(x.N)
		}
		s.Text(vec.At((a.X+b.X)/2, y-dim.Small-1.2), dim.Small, name).Anchor = draw.Middle
	}
}

// setIndex tells under an overview what is found in which part, with the ids of
// the timbers, in lettering as large as there is room for; without the ids where
// they have none.
func (p *surveyPage) setIndex(s *draw.Sheet, field block.Field, top float64) {
	short := make([]string, len(p.index))
	for i, t := range p.index {
		short[i], _, _ = strings.Cut(t, ":")
	}
	for _, list := range [][]string{p.index, short} {
		for _, h := range []float64{dim.Text, dim.Small} {
			w := page.Pen{S: s, X: field.X0, Y: top, W: field.W(), Letters: dim.Group{Name: "parts", Height: h}}
			need := dim.Text * page.Pitch
			for _, t := range list {
				need += w.ParaHeight(t)
			}
			if need > top-field.Y0-p.noteHeight()-2 {
				continue
			}
			w.Head("Parts")
			for _, t := range list {
				w.Para(t)
			}
			return
		}
	}
}
