package sheet

import (
	"slices"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/naming"
	"pegwright/draw/scene"
	"pegwright/draw/setout"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// picture is a picture of the frame on which timbers are named, with whose wood
// shows where.
type picture struct {
	scene.Picture
	sight *naming.Sight
}

// takePicture draws the parts, and keeps whose wood shows where.
func takePicture(c view.Camera, parts []view.Part, hidden bool) picture {
	return picture{scene.TakePicture(c, parts, hidden), naming.NewSight(c, parts)}
}

// all returns the owners that show, in order.
func (p picture) all() []string { return p.names(func(string) bool { return true }) }

// names returns the owners that show and are wanted, in order.
func (p picture) names(want func(id string) bool) []string {
	var out []string
	for _, id := range p.Order {
		if p.Shown[id] > 0 && want(id) {
			out = append(out, id)
		}
	}
	return out
}

// onSheet draws the picture into the field with the names of the owners given,
// as many as find room. It returns where the picture's points lie on paper, and
// the names that are left.
func (p picture) onSheet(s *draw.Sheet, f block.Field, fr *geom.Frame, ids []string) (place func(vec.P) vec.P, left []string) {
	blank := len(s.Items)
	var first, last attempt
	for i, side := range []float64{12, 25, 38} { // left free for names, mm
		s.Items = s.Items[:blank]
		last = p.attempt(s, f, fr, ids, side)
		if len(last.rest) == 0 || len(last.rest) > naming.MostRetried {
			return last.place, last.left()
		}
		if i == 0 {
			first = last
			first.items = slices.Clone(s.Items[blank:])
		}
	}
	s.Items = append(s.Items[:blank], first.items...) // more room did not help
	return first.place, first.left()
}

// attempt is a picture that was drawn with its names: the names that found no room,
// where the picture's points lie on paper, and all that was drawn.
type attempt struct {
	rest  []naming.Name
	k     float64
	o     vec.P
	items []draw.Item
}

// attempt draws the picture into the field, with some mm at either side left free
// for the names.
func (p picture) attempt(s *draw.Sheet, f block.Field, fr *geom.Frame, ids []string, side float64) attempt {
	k := min((f.W()-2*side)/p.Box.W(), min(f.H(), f.H()+12-side)/p.Box.H())
	o := f.Mid().Sub(p.Box.Mid().Mul(k))
	s.Add(draw.Scaled(p.Items, k, o)...)
	names := make([]naming.Name, len(ids))
	for i, id := range ids {
		names[i] = naming.Name{Text: id, Owner: id, Spots: p.spots(fr.Timber(id), k, o)}
	}
	rest := naming.Set(s, f, func(q vec.P) string { return p.sight.Owner(q.Sub(o).Mul(1 / k)) }, names)
	return attempt{rest: rest, k: k, o: o}
}

// place is where a point of the picture lies on paper.
func (a attempt) place(q vec.P) vec.P { return a.o.Add(q.Mul(a.k)) }

// left are the owners that are not named.
func (a attempt) left() []string {
	var out []string
	for _, x := range a.rest {
		out = append(out, x.Owner)
	}
	return out
}

// spots returns places at which a name may point to a timber in the picture: on
// its faces, or else the middle of the longest line that shows of it; none where
// it does not show.
func (p picture) spots(t *geom.Timber, k float64, o vec.P) []naming.Spot {
	var shift vec.V
	for _, x := range p.Parts {
		if x.Owner == t.ID {
			shift = x.Shift
		}
	}
	if list := p.sight.Spots(t, shift, k); len(list) > 0 {
		return naming.MovedSpots(list, o)
	}
	b, ok := p.Best[t.ID]
	if !ok {
		return nil
	}
	return []naming.Spot{{At: o.Add(b[0].Lerp(b[1], 0.5).Mul(k)), Owner: t.ID}}
}

// mostNamed is how many timbers a picture of a frame can name at the very most.
const mostNamed = 60

// partsIn returns the timbers of some bays, longer ones cut off a little beyond
// them.
func partsIn(f *geom.Frame, x setout.Bays) []view.Part {
	cam := view.Front()
	chosen := x.Timbers(f.Timbers, cam)
	var out []view.Part
	for _, p := range scene.FrameParts(f) {
		if slices.Contains(chosen, f.Timber(p.Owner)) {
			out = append(out, p)
		}
	}
	return setout.Sawn(out, x.Planes(cam)...)
}

// cutBeyond is how far beyond its bents a part of a pictured frame is cut off, mm.
const cutBeyond = 600.0
