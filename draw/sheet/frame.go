package sheet

import (
	"fmt"
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
	whole := bothCorners(f, scene.FrameParts(f))
	posts := setout.PostLines(f, view.Front())
	out, more := whole.sheets("", "", func(string) bool { return true }, len(posts) < 3)
	if !more || len(posts) < 3 {
		return out
	}
	over, _ := whole.sheets("", ", overview", func(string) bool { return false }, true)
	if lines, _ := setout.BentLines(f); len(lines) > 2 {
		return over
	}
	for n := max(2, min(len(f.Timbers)/mostNamed, len(posts)-1)); ; n++ {
		out, more, last := over[:len(over):len(over)], false, n >= len(posts)-1
		named := map[string]bool{} // in a part before
		for _, x := range setout.InBays(posts, cutBeyond, n) {
			title := fmt.Sprintf(", part %d of %d, %s", x.N, x.Of, x.Between("posts"))
			v := bothCorners(f, partsIn(f, x))
			part, further := v.sheets(fmt.Sprintf("-part-%d", x.N), title, func(id string) bool { return !named[id] }, last)
			if out, more = append(out, part...), more || further; more && !last {
				break
			}
			for _, id := range append(v.pics[0].all(), v.pics[1].all()...) {
				named[id] = true
			}
		}
		if !more || last {
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
// such. Where these are not asked for, it stops at the first of them.
func (v pictures) sheets(id, title string, want func(id string) bool, further bool) (out []*draw.Sheet, more bool) {
	words := []string{"from the south-west", "from the north-east"}
	ids := []string{"frame-south-west", "frame-north-east"}
	one := plain(v.pics)
	for i, p := range v.pics {
		names := p.names(func(id string) bool {
			a, b := p.Shown[id], v.pics[1-i].Shown[id]
			return one || a > b || a == b && i == 0
		})
		if len(names) == 0 {
			continue
		}
		names = slices.DeleteFunc(names, func(id string) bool { return !want(id) })
		t := block.TitleFor(v.f, "Frame"+title, "isometric view "+words[i], "pictorial")
		t.Note = "isometric view (ISO 5456-3), " + block.HiddenNote(v.f) + "; not for measuring"
		for n := 1; n == 1 || len(names) > 0; n++ {
			key := ids[i] + id
			if n > 1 && !further {
				return out, true
			}
			if n > 1 {
				more, key = true, fmt.Sprintf("%s-%d", key, n)
				t.Sheet = fmt.Sprintf("Frame%s%s, page %d", title, naming.More, n)
			}
			s, field := block.ForFrame(v.f, "frame", key, t)
			place, left := p.onSheet(s, field, v.f, names)
			scene.LinkJoints(s, v.f, func(id string) bool { return p.Shown[id] > 0 }, func(q vec.V) vec.P { return place(p.Cam.Project(q)) })
			out, names = append(out, s), left
		}
		if one {
			break
		}
	}
	return out, more
}

// plain reports whether the first picture shows enough of every timber to name
// them all there: 0.4 of what the other picture shows, and few timbers.
func plain(pics [2]picture) bool {
	for _, id := range pics[0].Order {
		if pics[0].Shown[id] < 0.4*pics[1].Shown[id] {
			return false
		}
	}
	return len(pics[0].Order) <= 40
}

// wholeFrame takes a picture of the frame's timbers with its wedges and keys.
// Only the timbers have names in it.
func wholeFrame(f *geom.Frame, c view.Camera, timbers []view.Part) picture {
	parts := timbers[:len(timbers):len(timbers)]
	for _, j := range f.Joints {
		if !scene.HasPart(timbers, j.Of.ID) || !scene.HasPart(timbers, j.Into.ID) {
			continue
		}
		for _, p := range j.Pieces {
			parts = append(parts, view.CellsPart(p.ID, p.Solid))
		}
	}
	pic := takePicture(c, parts, f.Paper.Hidden)
	pic.Order = pic.Order[:len(timbers)]
	return pic
}
