package naming

import (
	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
)

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
