package sheet

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Views returns the axonometric views of the whole frame from two opposite
// corners, with the ids of the timbers: each timber is named where more of it
// shows. A view with more names than its lanes hold is drawn again for the
// rest of them; a small frame that shows whole from one corner has one view.
func Views(f *geom.Frame) []*draw.Sheet {
	if len(f.Timbers) == 0 {
		return nil
	}
	parts := frameParts(f)
	cams := [2]view.Camera{view.IsometricFrom(-1, -1), view.IsometricFrom(1, 1)}
	pics := [2]picture{wholeFrame(f, cams[0], parts), wholeFrame(f, cams[1], parts)}
	words := []string{"from the south-west", "from the north-east"}
	ids := []string{"frame-south-west", "frame-north-east"}
	one := plain(pics)
	var out []*draw.Sheet
	for i, p := range pics {
		names := p.names(func(id string) bool {
			a, b := p.shown[id], pics[1-i].shown[id]
			return one || a > b || a == b && i == 0
		})
		for n := 0; len(names) > 0; n++ {
			t := block.TitleFor(f, "Frame", "isometric view "+words[i], "pictorial")
			t.Note = "isometric view (ISO 5456-3), hidden lines left out; not for measuring"
			id := ids[i]
			if n > 0 {
				id = fmt.Sprintf("%s-%d", id, n+1)
				t.Sheet = fmt.Sprintf("Frame, more names, page %d", n+1)
			}
			s, field := fresh(f, "frame", id, t)
			k := min(len(names), 2*int((field.H()-1)/laneStep))
			place := p.onSheet(s, field, names[:k])
			linkJoints(s, f, func(id string) bool { return p.shown[id] > 0 }, func(v vec.V) vec.P { return place(cams[i].Project(v)) })
			names = names[k:]
			out = append(out, s)
		}
		if one {
			break
		}
	}
	return out
}

// laneStep is the room that a label takes in a lane: its height and the gap, as
// dim.Lane has them.
const laneStep = small * (1.45 + 0.25)

// plain reports whether the first picture shows enough of every timber to name
// them all there: 0.4 of what the other picture shows, and few timbers.
func plain(pics [2]picture) bool {
	for _, id := range pics[0].order {
		if pics[0].shown[id] < 0.4*pics[1].shown[id] {
			return false
		}
	}
	return len(pics[0].order) <= 40
}

func frameParts(f *geom.Frame) []view.Part {
	var parts []view.Part
	for _, t := range f.Timbers {
		if t.Net != nil {
			parts = append(parts, view.Part{Owner: t.ID, Body: t.NetInFrame()})
		}
	}
	return parts
}

// picture is a view at full size with, for every owner, the longest of its
// visible lines and the length of all of them.
type picture struct {
	items []draw.Item
	box   draw.Box
	best  map[string][2]vec.P
	shown map[string]float64
	order []string
}

func takePicture(c view.Camera, parts []view.Part) picture {
	p := picture{items: view.Render(c, parts, view.Options{}), box: draw.NoBox(), best: map[string][2]vec.P{}, shown: map[string]float64{}}
	for _, part := range parts {
		p.order = append(p.order, part.Owner)
	}
	for _, it := range p.items {
		b := draw.ItemBounds(it)
		p.box = p.box.With(b.Min, b.Max)
		l, ok := it.(*draw.Path)
		if !ok || len(l.Pts) != 2 {
			continue
		}
		d := l.Pts[0].Dist(l.Pts[1])
		p.shown[l.Owner] += d
		if b := p.best[l.Owner]; d > b[0].Dist(b[1]) {
			p.best[l.Owner] = [2]vec.P{l.Pts[0], l.Pts[1]}
		}
	}
	return p
}

// names returns the owners that show and are wanted, in order.
func (p picture) names(want func(id string) bool) []string {
	var out []string
	for _, id := range p.order {
		if p.shown[id] > 0 && want(id) {
			out = append(out, id)
		}
	}
	return out
}

// onSheet draws the picture into the field with labels for the owners named,
// in lanes left and right, and returns where its points lie on paper.
func (p picture) onSheet(s *draw.Sheet, f block.Field, names []string) func(vec.P) vec.P {
	wide := 0.0
	for _, id := range names {
		wide = max(wide, font.Measure(id, small, false))
	}
	room := f
	room.X0, room.X1 = f.X0+wide+10, f.X1-wide-10
	k := min(room.W()/p.box.W(), room.H()/p.box.H())
	place := func(q vec.P) vec.P { return room.Mid().Add(q.Sub(p.box.Mid()).Mul(k)) }
	s.Add(scaled(p.items, k, place(vec.P{}))...)
	var sides [2][]dim.Label
	half := len(names)/2 + len(names)%2
	for _, id := range byX(names, p.best) {
		b := p.best[id]
		side := 0
		if len(sides[0]) >= half {
			side = 1
		}
		sides[side] = append(sides[side], dim.Label{Text: id, At: place(b[0].Lerp(b[1], 0.5)), Owner: id})
	}
	dim.Lane(s, f.X0+wide+1, false, sides[0], small, f.Y0, f.Y1)
	dim.Lane(s, f.X1-wide-1, true, sides[1], small, f.Y0, f.Y1)
	return place
}

// byX returns the ids from left to right by the middle of their longest line.
func byX(ids []string, best map[string][2]vec.P) []string {
	out := append([]string(nil), ids...)
	mid := func(id string) float64 { return best[id][0].X + best[id][1].X }
	for i := range out {
		for k := i; k > 0 && mid(out[k]) < mid(out[k-1])-1e-6; k-- {
			out[k], out[k-1] = out[k-1], out[k]
		}
	}
	return out
}

// scaled returns copies of straight and curved items scaled by k about the
// origin and moved.
func scaled(items []draw.Item, k float64, move vec.P) []draw.Item {
	to := func(p vec.P) vec.P { return move.Add(p.Mul(k)) }
	var out []draw.Item
	for _, it := range items {
		switch t := it.(type) {
		case *draw.Path:
			c := *t
			c.Pts = make([]vec.P, len(t.Pts))
			for i, p := range t.Pts {
				c.Pts[i] = to(p)
			}
			out = append(out, &c)
		case *draw.Circle:
			c := *t
			c.C, c.R = to(t.C), t.R*math.Abs(k)
			out = append(out, &c)
		case *draw.Arc:
			c := *t
			c.C, c.R = to(t.C), t.R*math.Abs(k)
			out = append(out, &c)
		case *draw.Ellipse:
			c := *t
			c.C, c.RX, c.RY = to(t.C), t.RX*k, t.RY*k
			out = append(out, &c)
		}
	}
	return out
}
