package scene

import (
	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Picture is a view of some parts at full size, mm of the frame, with what of each
// owner shows in it.
type Picture struct {
	// Cam took the picture, and Parts are what stood before it.
	Cam   view.Camera
	Parts []view.Part
	// Items are what is drawn, and Box the box round it.
	Items []draw.Item
	Box   draw.Box
	// Best is the longest visible line of every owner, and Shown the length of all
	// of them.
	Best  map[string][2]vec.P
	Shown map[string]float64
	// Order are the owners in the order of their parts.
	Order []string
}

// TakePicture draws the parts at full size, hidden edges dashed or left out.
func TakePicture(c view.Camera, parts []view.Part, hidden bool) Picture {
	p := Picture{Cam: c, Parts: parts, Items: view.Render(c, parts, view.Options{ShowHidden: hidden}), Box: draw.NoBox(), Best: map[string][2]vec.P{}, Shown: map[string]float64{}}
	for _, part := range parts {
		p.Order = append(p.Order, part.Owner)
	}
	for _, it := range p.Items {
		b := draw.ItemBounds(it)
		p.Box = p.Box.With(b.Min, b.Max)
		l, ok := it.(*draw.Path)
		if !ok || len(l.Pts) != 2 || l.Class == draw.Hidden {
			continue
		}
		d := l.Pts[0].Dist(l.Pts[1])
		p.Shown[l.Owner] += d
		if b := p.Best[l.Owner]; d > b[0].Dist(b[1]) {
			p.Best[l.Owner] = [2]vec.P{l.Pts[0], l.Pts[1]}
		}
	}
	return p
}

// Fill draws the picture in the middle of a field, as large as it can be, and returns
// where its points lie on the paper. A picture of nothing draws nothing.
func (p Picture) Fill(s *draw.Sheet, f block.Field) (place func(vec.P) vec.P) {
	if p.Box.Empty() {
		return func(vec.P) vec.P { return f.Mid() }
	}
	k := min(f.W()/p.Box.W(), f.H()/p.Box.H())
	place = func(q vec.P) vec.P { return f.Mid().Add(q.Sub(p.Box.Mid()).Mul(k)) }
	s.Add(draw.Scaled(p.Items, k, place(vec.P{}))...)
	return place
}

// FrameParts returns the timbers of the frame that have wood, where they stand,
// their bores left out.
func FrameParts(f *geom.Frame) []view.Part {
	var parts []view.Part
	for _, t := range f.Timbers {
		if t.Net != nil {
			parts = append(parts, view.Part{Owner: t.ID, Body: t.NetInFrame()})
		}
	}
	return parts
}

// HasPart reports whether one of the parts is of the owner.
func HasPart(parts []view.Part, id string) bool {
	for _, p := range parts {
		if p.Owner == id {
			return true
		}
	}
	return false
}
