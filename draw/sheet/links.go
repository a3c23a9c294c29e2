package sheet

import (
	"pegwright/draw"
	"pegwright/draw/font"
	"pegwright/draw/scene"
)

// link leads from the views of the frame, the plans and the elevations to the
// sheets of the timbers named there and of the joints: like timbers and like
// joints have one sheet.
func link(sheets []*draw.Sheet, sticks []scene.Sticks, groups []scene.Group) {
	to := map[string]string{}
	for _, g := range sticks {
		for _, t := range g.Timbers {
			to[t.ID] = "timber-" + g.First().ID
		}
	}
	joint := map[string]string{}
	for _, g := range groups {
		for _, j := range g.Joints {
			joint[j.ID] = g.First().ID
		}
	}
	for _, s := range sheets {
		for i := range s.Links {
			if first := joint[s.Links[i].To]; first != "" {
				s.Links[i].To = first
			}
		}
		for _, it := range s.Items {
			x, ok := it.(*draw.Text)
			if ok && x.Owner == x.S && to[x.Owner] != "" {
				s.Links = append(s.Links, draw.Link{To: to[x.Owner], Rect: font.Turned(x)})
			}
		}
	}
}
