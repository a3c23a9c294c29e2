package sheet

import (
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
// corners, with the ids of the timbers: each timber is named on the sheet where
// more of it shows.
func Views(f *geom.Frame) []*draw.Sheet {
	if len(f.Timbers) == 0 {
		return nil
	}
	parts := frameParts(f)
	cams := []view.Camera{view.IsometricFrom(-1, -1), view.IsometricFrom(1, 1)}
	words := []string{"from the south-west", "from the north-east"}
	ids := []string{"frame-south-west", "frame-north-east"}
	var pics [2]picture
	for i, c := range cams {
		pics[i] = takePicture(c, parts)
	}
	var out []*draw.Sheet
	for i := range cams {
		t := block.TitleFor(f, "Frame", "isometric view "+words[i], "pictorial")
		t.Note = "isometric view (ISO 5456-3), hidden lines left out; not for measuring"
		s, field := fresh(f, "frame", ids[i], t)
		pics[i].onSheet(s, field, func(id string) bool {
			a, b := pics[i].shown[id], pics[1-i].shown[id]
			return a > b || a == b && i == 0
		})
		out = append(out, s)
	}
	return out
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

// onSheet draws the picture into the field with labels for the owners that
// want one, in lanes left and right.
func (p picture) onSheet(s *draw.Sheet, f block.Field, want func(id string) bool) {
	var names []string
	wide := 0.0
	for _, id := range p.order {
		if want(id) && p.shown[id] > 0 {
			names = append(names, id)
			wide = max(wide, font.Measure(id, small, false))
		}
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
