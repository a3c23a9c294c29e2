package raise

import (
	"math"
	"slices"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// raisePart is the net wood of a timber in frame axes and the box around it.
type raisePart struct {
	t      *geom.Timber
	body   *solid.Body
	lo, hi vec.V
}

// part returns a timber's wood, ok false where it has none.
func (r *raising) part(id string) (raisePart, bool) {
	if p, ok := r.bodies[id]; ok {
		return p, true
	}
	t := r.f.Timber(id)
	if t == nil || t.Net == nil {
		return raisePart{}, false
	}
	p := raisePart{t: t, body: t.NetInFrame()}
	p.lo, p.hi = p.body.Bounds()
	r.bodies[id] = p
	return p, true
}

// overLane is the width that leaders take between a picture and a lane, mm.
const overLane = 6.0

// picture draws a step: what moves dark and with its grain, drawn back from
// its place along the way it goes; what stands about it thin; the marks of the
// joints that close; an arrow for each leg of the move.
func (r *raising) picture(s *draw.Sheet, f block.Field, a *act) {
	p := scenePicture{r: r, a: a, pose: r.pose(a.step), cam: r.camera(a.step)}
	p.gather()
	caption := s.Text(vec.At(f.X0, f.Y0), raiseText, r.seenFrom(a.step, p.cam))
	caption.Mark = "caption"
	f.Y0 += raiseText*1.56 + 1
	wide := 0.0
	for _, id := range a.step.Joints {
		wide = max(wide, font.Measure(r.f.Joint(id).Mark, raiseText, true))
	}
	room := f
	left, right := p.sides(f)
	if left > 0 {
		room.X0 = f.X0 + wide + overLane
	}
	if right > 0 {
		room.X1 = f.X1 - wide - overLane
	}
	p.k = min(room.W()/p.box.W(), room.H()/p.box.H())
	p.at = room.Mid().Sub(p.box.Mid().Mul(p.k))
	first := len(s.Items)
	parts := append(p.moved, p.stands...)
	parts = append(parts, p.grain()...)
	p.pens(parts, s.Step)
	s.Add(view.Render(p.cam, parts, view.Options{Scale: p.k, At: p.at})...)
	p.marks(s, f, wide, left)
	p.arrows(s, f, first)
}

// scenePicture is the picture of a step in the making.
type scenePicture struct {
	r             *raising
	a             *act
	pose          vec.Placement // carries what moves from its place to where it is drawn
	cam           view.Camera
	moved, stands []view.Part
	box           draw.Box // at full size
	k             float64
	at            vec.P
}

// gather collects the parts and the box that they fill.
func (p *scenePicture) gather() {
	for _, id := range p.a.step.Move {
		if q, ok := p.r.part(id); ok {
			p.moved = append(p.moved, p.carried(q))
		}
	}
	p.stands = p.r.standing(p.a)
	p.box = draw.NoBox()
	for _, part := range append(p.moved[:len(p.moved):len(p.moved)], p.stands...) {
		for _, c := range part.Placed() {
			for _, v := range c.V {
				p.box = p.box.With(p.cam.Project(v))
			}
		}
	}
}

// carried returns a timber where it is drawn on its way. Where it is carried
// straight it keeps its body, of which all is known.
func (p *scenePicture) carried(q raisePart) view.Part {
	turn := p.pose
	turn.O = vec.V{}
	if turn == vec.Identity {
		return view.Part{Owner: q.t.ID, Body: q.body, Shift: p.pose.O}
	}
	return view.Part{Owner: q.t.ID, Body: q.body.Moved(p.pose)}
}

// pens makes what moves heavy, its grain fine and what stands thin.
func (p *scenePicture) pens(parts []view.Part, step int) {
	heavy, thin, fine := draw.PenFor(draw.Register, step), draw.PenFor(draw.Dimension, step), draw.PenFor(draw.Hatch, step)
	for i := range parts {
		switch {
		case i < len(p.moved):
			parts[i].Pen = &heavy
		case i < len(p.moved)+len(p.stands):
			parts[i].Pen = &thin
		default:
			parts[i].Pen = &fine
		}
	}
}

// paper is where a point of the frame comes to lie.
func (p *scenePicture) paper(v vec.V) vec.P { return p.at.Add(p.cam.Project(v).Mul(p.k)) }

// sides returns how many marks are set left and right of the picture: each on
// the side that its joint is nearer to, as many as there is room for; the text
// names them all.
func (p *scenePicture) sides(f block.Field) (left, right int) {
	most := int(f.H() / (raiseText * 1.75))
	n := min(len(p.a.step.Joints), 2*most)
	for _, id := range p.a.step.Joints[:n] {
		if p.cam.Project(jointAt(p.r.f.Joint(id))).X < p.box.Mid().X {
			left++
		}
	}
	left = min(max(left, n-most), most)
	return left, n - left
}

// marks sets the joiner's marks of the joints that close in lanes beside the
// picture.
func (p *scenePicture) marks(s *draw.Sheet, f block.Field, wide float64, left int) {
	most := int(f.H() / (raiseText * 1.75))
	var names []dim.Label
	for _, id := range p.a.step.Joints[:min(len(p.a.step.Joints), 2*most)] {
		j := p.r.f.Joint(id)
		names = append(names, dim.Label{Text: j.Mark, At: p.paper(jointAt(j)), Owner: id, Bold: true})
	}
	names = page.LeftToRight(names, func(l dim.Label) float64 { return l.At.X })
	letters := dim.Group{Name: "marks", Height: raiseText}
	dim.Lane(s, f.X0+wide+1, false, names[:left], letters, f.Y0, f.Y1)
	dim.Lane(s, f.X1-wide-1, true, names[left:], letters, f.Y0, f.Y1)
}

// arrows draws a broad arrow for each leg of the move where there is room, with
// a word.
func (p *scenePicture) arrows(s *draw.Sheet, f block.Field, first int) {
	step := p.a.step
	for i, l := range step.Legs {
		d := p.cam.Project(l.Direction)
		if d.Len() < 0.2 {
			continue
		}
		word := verb(step, l.Direction)
		if len(step.Legs) > 1 {
			word = string(rune('1'+i)) + " " + word
		}
		p.arrow(s, f, first, d.Unit(), word)
	}
}

// Size of a broad arrow, mm.
const arrowLong, arrowHalf = 14.0, 3.4

// arrow draws one arrow as near to what moves as it finds a free place.
func (p *scenePicture) arrow(s *draw.Sheet, f block.Field, first int, d vec.P, word string) {
	ids := p.a.step.Move
	goal := p.paper(p.pose.Out(middleOf(p.r.f, ids)))
	w := max(font.Measure(word, raiseText, true), math.Abs(d.X)*arrowLong+math.Abs(d.Y)*2*arrowHalf) + 4
	up := math.Abs(d.Y)*arrowLong + math.Abs(d.X)*2*arrowHalf
	h := up + raiseText*1.4 + 4
	best := freePlace(s.Items[first:], f, goal, w, h)
	mid := best.Add(vec.At(0, (raiseText*1.4+1)/2))
	path := dim.Broad(s, mid.Sub(d.Mul(arrowLong/2)), d, arrowLong)
	path.Filled, path.Grey, path.Mark = true, 0, "way"
	t := s.Text(vec.At(best.X, best.Y-h/2+2), raiseText, word)
	t.Anchor, t.Bold, t.Halo = draw.Middle, true, true
}

// freePlace returns where the middle of a box of w by h is nearest to the goal
// while nothing stands in the box, in steps of 2 mm; in the upper left corner where
// there is no such place.
func freePlace(items []draw.Item, f block.Field, goal vec.P, w, h float64) vec.P {
	stands := make([]page.Obstacle, len(items))
	for i, it := range items {
		stands[i] = page.ObstacleOf(it)
	}
	best, far := vec.At(f.X0+w/2, f.Y1-h/2), math.Inf(1)
	met := 0 // what stood in the last box, and may stand in the next
	for x := f.X0 + w/2; x <= f.X1-w/2; x += 2 {
		if math.Abs(x-goal.X) >= far {
			continue
		}
		for y := f.Y0 + h/2; y <= f.Y1-h/2; y += 2 {
			c := vec.At(x, y)
			d := c.Dist(goal)
			if d >= far {
				continue
			}
			box := draw.Box{Min: c.Sub(vec.At(w/2, h/2)), Max: c.Add(vec.At(w/2, h/2))}
			hits := func(o page.Obstacle) bool { return o.Hits(box) }
			if met < len(stands) && hits(stands[met]) {
				continue
			}
			if i := slices.IndexFunc(stands, hits); i >= 0 {
				met = i
				continue
			}
			best, far = c, d
		}
	}
	return best
}

// verb is the word beside an arrow.
func verb(s geom.Step, d vec.V) string {
	switch {
	case s.Motion == geom.Rear:
		return "raise"
	case s.Group == "" && d.Z < -0.99:
		return "lower"
	case s.Group == "" && d.Z > 0.99:
		return "lift"
	}
	return "slide"
}
