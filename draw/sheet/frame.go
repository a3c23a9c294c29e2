package sheet

import (
	"fmt"
	"math"
	"slices"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// Views returns the axonometric views of the whole frame from two opposite
// corners, with the ids of the timbers: each timber is named where more of it
// shows. A small frame that shows whole from one corner has one view. Where a
// view cannot hold the names, a frame of three bents or more is named where it is
// drawn apart and not here, and another is drawn again in parts from post to post,
// or for the names that are left.
func Views(f *geom.Frame) []*draw.Sheet {
	if len(f.Timbers) == 0 {
		return nil
	}
	whole := bothCorners(f, frameParts(f))
	out, more := whole.sheets("", "", func(string) bool { return true })
	posts := survey{stations: postStations(f, view.Front()), beyond: cutBeyond}
	if !more || len(posts.stations) < 3 {
		return out
	}
	over, _ := whole.sheets("", ", overview", func(string) bool { return false })
	if lines, _ := setout.BentLines(f); len(lines) > 2 {
		return over
	}
	for n := max(2, min(len(f.Timbers)/mostNamed, len(posts.stations)-1)); ; n++ {
		out, more := over[:len(over):len(over)], false
		named := map[string]bool{} // in a part before
		for _, x := range posts.bayRanges(n) {
			title := fmt.Sprintf(", part %d of %d, %s", x.n, x.of, x.between("posts"))
			v := bothCorners(f, x.parts(f))
			part, further := v.sheets(fmt.Sprintf("-part-%d", x.n), title, func(id string) bool { return !named[id] })
			out, more = append(out, part...), more || further
			for _, id := range append(v.pics[0].all(), v.pics[1].all()...) {
				named[id] = true
			}
		}
		if !more || n >= len(posts.stations)-1 {
			return out
		}
	}
}

// pictures are two pictures of parts of a frame, from opposite corners.
type pictures struct {
	f    *geom.Frame
	pics [2]picture
}

// bothCorners takes the pictures of parts of a frame.
func bothCorners(f *geom.Frame, parts []view.Part) pictures {
	return pictures{f, [2]picture{wholeFrame(f, view.IsometricFrom(-1, -1), parts), wholeFrame(f, view.IsometricFrom(1, 1), parts)}}
}

// sheets draws the pictures with the names that are wanted, each on a sheet and
// further ones for names that have found no room, and reports whether there are
// such.
func (v pictures) sheets(id, title string, want func(id string) bool) (out []*draw.Sheet, more bool) {
	words := []string{"from the south-west", "from the north-east"}
	ids := []string{"frame-south-west", "frame-north-east"}
	one := plain(v.pics)
	for i, p := range v.pics {
		names := p.names(func(id string) bool {
			a, b := p.shown[id], v.pics[1-i].shown[id]
			return one || a > b || a == b && i == 0
		})
		if len(names) == 0 {
			continue
		}
		names = slices.DeleteFunc(names, func(id string) bool { return !want(id) })
		t := block.TitleFor(v.f, "Frame"+title, "isometric view "+words[i], "pictorial")
		t.Note = "isometric view (ISO 5456-3), " + hiddenLines(v.f) + "; not for measuring"
		for n := 1; n == 1 || len(names) > 0; n++ {
			key := ids[i] + id
			if n > 1 {
				more, key = true, fmt.Sprintf("%s-%d", key, n)
				t.Sheet = fmt.Sprintf("Frame%s%s, page %d", title, moreNames, n)
			}
			s, field := block.ForFrame(v.f, "frame", key, t)
			place, left := p.onSheet(s, field, v.f, names)
			linkJoints(s, v.f, func(id string) bool { return p.shown[id] > 0 }, func(q vec.V) vec.P { return place(p.cam.Project(q)) })
			out, names = append(out, s), left
		}
		if one {
			break
		}
	}
	return out, more
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

// all returns the owners that show, in order.
func (p picture) all() []string { return p.names(func(string) bool { return true }) }

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
	for _, side := range []float64{12, 25, 38, 12} { // left free for names, mm; the first again if more does not help
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
		if len(rest) == len(names) && len(names) > 0 {
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

// wholeFrame takes a picture of the frame's timbers with its wedges and keys.
// Only the timbers have names in it.
func wholeFrame(f *geom.Frame, c view.Camera, timbers []view.Part) picture {
	parts := timbers[:len(timbers):len(timbers)]
	for _, j := range f.Joints {
		if !has(timbers, j.Of.ID) || !has(timbers, j.Into.ID) {
			continue
		}
		for _, p := range j.Pieces {
			parts = append(parts, view.CellsPart(p.ID, p.Solid))
		}
	}
	pic := takePicture(c, parts, f.Paper.Hidden)
	pic.order = pic.order[:len(timbers)]
	return pic
}
