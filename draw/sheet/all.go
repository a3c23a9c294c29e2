package sheet

import (
	"pegwright/draw"
	"pegwright/draw/crew"
	"pegwright/draw/scene"
	"pegwright/draw/sheet/drawbore"
	"pegwright/draw/sheet/joint"
	"pegwright/draw/sheet/permit"
	"pegwright/draw/sheet/plan"
	"pegwright/draw/sheet/raise"
	"pegwright/draw/sheet/timber"
	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/list"
)

// All returns the sheets of the frame in the order of the packet: cover, frame
// view, plans and elevations, lists, timber sheets, joint sheets, drawbore
// sheets, raising sheets, the permit set. The cover lists the others with the
// numbers that they have in this order.
func All(f *geom.Frame, finds []finding.Finding) []*draw.Sheet {
	plans, groups := plan.Of(f), scene.Groups(f)
	rest := crew.Join(parts(f, list.Stopped(f, finds), plans, groups))
	rest = append(rest, permit.Sheets(f, plans, groups)...)
	cover := Cover(f, finds, func(before int) []Entry { return entries(rest, before) })
	return append(cover, rest...)
}

// parts returns what composes the sheets between the cover and the permit set,
// in their order. No part needs another.
func parts(f *geom.Frame, stops map[string]int, plans *plan.Set, groups []scene.Group) []func() []*draw.Sheet {
	sticks := scene.AllSticks(f)
	var out []func() []*draw.Sheet
	views, apart := func() []*draw.Sheet { return Views(f) }, func() []*draw.Sheet { return Apart(f) }
	for _, overview := range []func() []*draw.Sheet{views, apart, plans.Sheets} {
		out = append(out, func() []*draw.Sheet {
			sheets := overview()
			link(sheets, sticks, groups)
			return sheets
		})
	}
	out = append(out, func() []*draw.Sheet { return Lists(f, stops) })
	for _, g := range sticks {
		out = append(out, func() []*draw.Sheet { return timber.Sheets(f, g, stops) })
	}
	for _, g := range groups {
		out = append(out, func() []*draw.Sheet { return joint.Sheets(f, g, stops) })
	}
	for _, g := range groups {
		out = append(out, func() []*draw.Sheet { return drawbore.Sheets(f, g, stops) })
	}
	return append(out, func() []*draw.Sheet { return raise.Sheets(f) })
}

// sorted returns the findings in the order in which the cover numbers them.
func sorted(finds []finding.Finding) []finding.Finding {
	out := append([]finding.Finding(nil), finds...)
	finding.Sort(out)
	return out
}
