package timber

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/page"
	"pegwright/draw/scene"
	"pegwright/geom"
	"pegwright/geom/measure"
)

// stickFacts sets what the stick is, all in one size, and returns the height that
// it takes.
func stickFacts(f *geom.Frame, g scene.Sticks, s *draw.Sheet, field block.Field) float64 {
	t, u := g.First(), f.Units
	p := page.Pen{S: s, X: field.X0, Y: field.Y1, W: field.W()}
	name := t.ID
	if len(g.Timbers) == 1 && t.Mark != "" {
		name = "no. " + t.Mark + "  " + t.ID
	} else if len(g.Timbers) > 1 {
		name = fmt.Sprintf("%d x %s", len(g.Timbers), t.Role)
	}
	p.Line(block.Fit(name, p.W, page.Big*0.8, true), page.Big*0.8, true)
	green, _ := t.Weight()
	trim := trimOf(u, t)
	pairs := [][2]string{
		{"wood", t.Wood.Name},
		{"nominal", u.PlainJoint(min(t.Section[0], t.Section[1])) + " x " + u.PlainJoint(max(t.Section[0], t.Section[1]))},
		{"finished", u.FormatJoint(t.Length)},
		{"rough", u.Format(t.Length + 2*trim)},
		{"as cut", "about " + weightWords(u, green)},
		{"balance", "about " + balanceWords(u, t) + " from 0"},
	}
	last := "0: squared round, " + u.FormatJoint(trim) + " or more off the end"
	said := []string{last}
	for _, x := range pairs {
		said = append(said, x[1])
	}
	p.Together("stick", said...)
	for _, x := range pairs {
		p.Pair(x[0], x[1], 0.3)
	}
	p.Para(last)
	return field.Y1 - p.Y
}

// weightWords writes a mass in kilograms in the reader's unit.
func weightWords(u measure.Units, kg float64) string {
	const pound = 0.45359237 // kg, exact (1959 agreement)
	if u == measure.Metric {
		return fmt.Sprintf("%.0f kg", kg)
	}
	return fmt.Sprintf("%.0f lb", kg/pound)
}

// balanceWords writes the balance point to the nearest 1/2 in or 10 mm: green
// wood is nowhere as even as that.
func balanceWords(u measure.Units, t *geom.Timber) string {
	step := 12.7
	if u == measure.Metric {
		step = 10
	}
	return u.Format(math.Round(t.Net.Centroid().X/step) * step)
}
