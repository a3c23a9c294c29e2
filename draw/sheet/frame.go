package sheet

import (
	"fmt"
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
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
			t.Note = "isometric view (ISO 5456-3), " + hiddenLines(f) + "; not for measuring"
			id := ids[i]
			if n > 0 {
				id = fmt.Sprintf("%s-%d", id, n+1)
				t.Sheet = fmt.Sprintf("Frame, more names, page %d", n+1)
			}
			s, field := block.ForFrame(f, "frame", id, t)
			place, left := p.onSheet(s, field, f, names)
			linkJoints(s, f, func(id string) bool { return p.shown[id] > 0 }, func(v vec.V) vec.P { return place(cams[i].Project(v)) })
			names = left
			out = append(out, s)
		}
		if one {
			break
		}
	}
	return out
}

// hiddenLines says what becomes of the hidden lines on sheets that can do
// without them.
func hiddenLines(f *geom.Frame) string {
	if f.Paper.Hidden {
		return "hidden lines dashed"
	}
	return "hidden lines left out"
}

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
	cam   view.Camera
	parts []view.Part
}

// takePicture draws the parts at full size, hidden edges dashed or left out.
func takePicture(c view.Camera, parts []view.Part, hidden bool) picture {
	p := picture{cam: c, parts: parts, items: view.Render(c, parts, view.Options{ShowHidden: hidden}), box: draw.NoBox(), best: map[string][2]vec.P{}, shown: map[string]float64{}}
	for _, part := range parts {
		p.order = append(p.order, part.Owner)
	}
	for _, it := range p.items {
		b := draw.ItemBounds(it)
		p.box = p.box.With(b.Min, b.Max)
		l, ok := it.(*draw.Path)
		if !ok || len(l.Pts) != 2 || l.Class == draw.Hidden {
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

// onSheet draws the picture into the field with the names of the owners given,
// as many as find room. It returns where the picture's points lie on paper, and
// the names that are left.
func (p picture) onSheet(s *draw.Sheet, f block.Field, fr *geom.Frame, ids []string) (place func(vec.P) vec.P, left []string) {
	v := newSight(p.cam, p.parts)
	blank := len(s.Items)
	var k float64
	var o vec.P
	var rest []naming
	for _, side := range []float64{12, 25, 12} { // left free for names, mm; the first again if more does not help
		s.Items = s.Items[:blank]
		k = min((f.W()-2*side)/p.box.W(), min(f.H(), f.H()+12-side)/p.box.H())
		o = f.Mid().Sub(p.box.Mid().Mul(k))
		s.Add(scaled(p.items, k, o)...)
		n := newNamer(s, f, func(q vec.P) string { return v.owner(q.Sub(o).Mul(1 / k)) })
		var names []naming
		for _, id := range ids {
			names = append(names, naming{id, id, p.spots(v, fr.Timber(id), k, o)})
		}
		rest = n.set(names)
		if len(rest) == len(names) {
			rest = inLanes(s, f, names)
		}
		if len(rest) == 0 || len(rest) > mostRetried {
			break
		}
	}
	for _, x := range rest {
		left = append(left, x.owner)
	}
	return func(q vec.P) vec.P { return o.Add(q.Mul(k)) }, left
}

// spots returns places at which a name may point to a timber in the picture: on
// its faces, or else the middle of the longest line that shows of it; none where
// it does not show.
func (p picture) spots(v *sight, t *geom.Timber, k float64, o vec.P) []faceSpot {
	var shift vec.V
	for _, x := range p.parts {
		if x.Owner == t.ID {
			shift = x.Shift
		}
	}
	if list := v.faceSpots(t, shift, k); len(list) > 0 {
		return movedSpots(list, o)
	}
	b, ok := p.best[t.ID]
	if !ok {
		return nil
	}
	return []faceSpot{{at: o.Add(b[0].Lerp(b[1], 0.5).Mul(k)), owner: t.ID}}
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
