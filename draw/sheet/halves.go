package sheet

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/view"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// ortho is one orthographic view with its dimensions.
type ortho struct {
	title  []string
	cam    view.Camera
	part   view.Part
	o      view.Options
	across dim.Side // where dimensions along the paper's x go
	up     dim.Side // and those along its y
	dims   []geom.Dim
	timber *geom.Timber
	// hatched marks a view of wood sawn through, to be hatched.
	hatched bool
	items   []draw.Item // at full size
	box     draw.Box
}

// halves returns the sheet with both halves of the joint in orthographic views
// and the peg window. Receiver: the entered face above, the side face below it;
// enterer: the cheek above, the end as seen from the receiver below it.
func halves(f *geom.Frame, g Group) []*draw.Sheet {
	j := g.First()
	views := orthos(g)
	t := block.TitleFor(f, j.Kind+", both halves", served(g), "")
	_, full := fresh(f, "joint", j.ID, t) // only for its field
	room := full
	if len(j.Pegs) > 0 {
		room.X1 -= windowWidth + 4
	}
	k, name := scaleFor(views, room, f)
	t.Scale = name
	t.Note = "reference arris is the heavy line; third-angle views; the sheet before names every dimension"
	s, field := fresh(f, "joint", j.ID+"-halves", t)
	field.X1 -= full.X1 - room.X1
	enterer, receiver := size(views[0:2], k, f), size(views[2:4], k, f)
	spare := max(field.W()-enterer.w-receiver.w, 0) / 3
	x := field.X0 + spare
	for i, c := range []columnSize{enterer, receiver} {
		mid := field.Y1 - (field.H()-c.h)/2
		c.draw(s, views[2*i:2*i+2], x, mid, k, f)
		x += c.w + spare
	}
	if len(j.Pegs) > 0 {
		windows(f, s, block.Field{X0: full.X1 - windowWidth, Y0: full.Y0, X1: full.X1, Y1: full.Y1}, j)
	}
	return []*draw.Sheet{s}
}

// across returns the direction that lies across the paper in the views: along
// the receiver, or across it where the enterer leans that way, as a rafter does
// over a plate.
func across(j *geom.Joint) vec.V {
	x := j.Of.Place.X
	if math.Abs(x.Dot(j.Axes.U)) < 1e-6 && math.Abs(x.Dot(j.Axes.V)) > 0.05 {
		return j.Axes.V
	}
	return j.Axes.U
}

// orthos returns the four views: enterer from the side and from its end,
// receiver from the entered face and from the side.
func orthos(g Group) []*ortho {
	j := g.First()
	n := nearOf(j, 0.42)
	h, w := across(j), j.Axes.W
	t := h.Cross(w)
	side := view.Camera{Right: h, Up: w, Toward: t}
	top := view.Camera{Right: h, Up: w.Cross(h), Toward: w}
	last := &ortho{title: []string{sideTitle(g, t), "start end left"}, cam: side, part: n.receiver, timber: j.Into, across: dim.Below, up: dim.RightOf, o: view.Options{ShowHidden: true}}
	if h != j.Axes.U {
		last.title = []string{"section", "under the middle of " + j.Of.ID}
		last.part, last.hatched = sawn(n, t), true
	}
	long := entererCamera(j, side)
	end := view.Camera{Right: long.Right, Up: t, Toward: long.Up.Neg()}
	v := []*ortho{
		{title: []string{j.Of.ID, g.faceTitle(false, j.Of.FaceToward(t))}, cam: long, part: n.enterer, timber: j.Of, across: dim.Below, up: dim.RightOf},
		{title: []string{"seen from " + j.Into.ID}, cam: end, part: n.enterer, timber: j.Of, across: dim.Below, up: dim.RightOf},
		{title: []string{j.Into.ID, g.faceTitle(true, j.Entered) + ", entered"}, cam: top, part: n.receiver, timber: j.Into, across: dim.Above, up: dim.LeftOf},
		last,
	}
	share(j, v)
	for _, x := range v {
		x.render()
	}
	return v
}

// entererCamera turns the side camera so that the enterer lies level where more
// of its dimensions then lie along the paper's x or y, as a rafter's do.
func entererCamera(j *geom.Joint, side view.Camera) view.Camera {
	x := j.Of.Place.X
	if math.Abs(x.Dot(side.Toward)) > 1e-6 {
		return side
	}
	if x.Dot(side.Right) < 0 {
		x = x.Neg()
	}
	level := view.Camera{Right: x, Up: side.Toward.Cross(x), Toward: side.Toward}
	count := func(c view.Camera) (n int) {
		for _, d := range j.Dims {
			if d.Timber == j.Of && (&ortho{cam: c}).lies(d) {
				n++
			}
		}
		return n
	}
	if count(level) > count(side) {
		return level
	}
	return side
}

// sawn returns the receiver cut through in the middle of the enterer, for a
// view along it.
func sawn(n near, toward vec.V) view.Part {
	mid := n.j.Of.Place.Out(vec.V{Y: n.j.Of.Ideal[0] / 2, Z: n.j.Of.Ideal[1] / 2})
	p := n.receiver
	p.Body = view.Behind(p.Body, planeThrough(mid, toward))
	return p
}

// sideTitle names the receiver's face in the side view and says on which side
// of it the pegs enter.
func sideTitle(g Group, t vec.V) string {
	j := g.First()
	n := j.Into.FaceToward(t)
	title := g.faceTitle(true, n)
	if len(j.Pegs) == 0 {
		return title
	}
	switch n {
	case j.Pegs[0].Entry:
		return title + ", pegs enter"
	case j.Pegs[0].Exit:
		return title + ", pegs come out"
	}
	return title
}

// share gives every dimension to one view in which its axis lies along the
// paper's x or y: holes to the side views, the rest to the first that can.
func share(j *geom.Joint, v []*ortho) {
	said := map[string]bool{}
	for _, d := range j.Dims {
		order := []int{0, 1}
		if d.Timber == j.Into {
			order = []int{2, 3}
			if d.Reader == geom.Borer {
				order = []int{3, 2}
			}
		}
		key := d.Timber.ID + d.Label + draw.Number(d.Value(), 2)
		for _, i := range order {
			if !said[key] && v[i].lies(d) {
				v[i].dims = append(v[i].dims, d)
				said[key] = true
			}
		}
	}
}

// lies reports whether the dimension's axis lies along the paper's x or y.
func (v *ortho) lies(d geom.Dim) bool {
	x := d.Timber.Place.OutDir(d.Axis)
	return math.Abs(x.Dot(v.cam.Right)) > 1-1e-6 || math.Abs(x.Dot(v.cam.Up)) > 1-1e-6
}

// render draws the view at full size and makes its reference arris heavy.
func (v *ortho) render() {
	v.items = view.Render(v.cam, []view.Part{v.part}, v.o)
	heavy(v.items, v.cam, v.timber)
	if v.hatched {
		v.items = append(v.items, cutFace(v.part, v.cam)...)
	}
	v.box = draw.NoBox()
	for _, it := range v.items {
		b := draw.ItemBounds(it)
		v.box = v.box.With(b.Min, b.Max)
	}
}

// cutFace hatches the foremost face of a part that was sawn through square to
// the view.
func cutFace(p view.Part, cam view.Camera) []draw.Item {
	var out []draw.Item
	for _, f := range p.Body.Boundary() {
		if f.Plane.N.Dot(cam.Toward) < 1-1e-9 || !isSawn(f) {
			continue
		}
		var loops [][]vec.P
		for _, l := range append([][]vec.V{f.Outer}, f.Holes...) {
			loop := make([]vec.P, len(l))
			for i, q := range l {
				loop[i] = cam.Project(q)
			}
			loops = append(loops, loop)
		}
		for _, h := range view.Hatch(loops, 45, 12) {
			out = append(out, h)
		}
	}
	return out
}

// isSawn reports whether a face is neither the blank's nor a joint's.
func isSawn(f solid.Polygon) bool {
	for _, t := range f.Tags {
		if t.Role != "" {
			return false
		}
	}
	return true
}

// heavy makes the lines that lie on the timber's reference arris register
// lines, where one of the two reference faces is turned to the viewer.
func heavy(items []draw.Item, cam view.Camera, t *geom.Timber) {
	if t.Place.Y.Dot(cam.Toward) > -1e-6 && t.Place.Z.Dot(cam.Toward) > -1e-6 {
		return
	}
	o, d := cam.Project(t.Place.O), cam.Project(t.Place.X)
	if d.Len() < 1e-6 {
		return
	}
	d = d.Unit()
	for _, it := range items {
		p, ok := it.(*draw.Path)
		if !ok || p.Class != draw.Part || len(p.Pts) != 2 {
			continue
		}
		if math.Abs(d.Cross(p.Pts[0].Sub(o))) < 0.02 && math.Abs(d.Cross(p.Pts[1].Sub(o))) < 0.02 {
			p.Class = draw.Register
		}
	}
}

// requests returns the view's dimensions at scale k, those along x and those
// along y, as seen from the view's own origin.
func (v *ortho) requests(k float64, f *geom.Frame) (x, y []dim.Request) {
	for _, d := range v.dims {
		a, b := v.cam.Project(d.Timber.Place.Out(d.From)).Mul(k), v.cam.Project(d.Timber.Place.Out(d.To)).Mul(k)
		r := dim.Request{From: a, To: b, Text: f.Units.PlainJoint(d.Value()), Owner: d.Timber.ID}
		if axis := d.Timber.Place.OutDir(d.Axis); math.Abs(axis.Dot(v.cam.Right)) > 0.5 {
			x = append(x, r)
		} else {
			y = append(y, r)
		}
	}
	return x, y
}

// titleHeight is the room for the two lines of a view's title.
const titleHeight = 2*small*pitch + 1

// room is how much a view takes about its box at scale k: left, right, below,
// above.
func (v *ortho) room(k float64, f *geom.Frame) (l, r, b, t float64) {
	x, y := v.requests(k, f)
	box := draw.Box{Min: v.box.Min.Mul(k), Max: v.box.Max.Mul(k)}
	if v.across == dim.Above {
		t = dim.Depth(dim.Above, x)
	} else {
		b = dim.Depth(dim.Below, x)
	}
	if v.up == dim.LeftOf {
		l = dim.Depth(dim.LeftOf, y)
	} else {
		r = dim.Depth(dim.RightOf, y)
	}
	if len(x) > 0 {
		lo, hi := dim.Reach(v.across, x)
		l, r = max(l, box.Min.X-lo), max(r, hi-box.Max.X)
	}
	if len(y) > 0 {
		lo, hi := dim.Reach(v.up, y)
		b, t = max(b, box.Min.Y-lo), max(t, hi-box.Max.Y)
	}
	wide := 0.0
	for _, line := range v.title {
		wide = max(wide, font.Measure(line, small, false))
	}
	r = max(r, wide-box.W()-l)
	return l, r, b, t + titleHeight
}

// columnSize is a column of two views that stand over each other.
type columnSize struct{ w, h, left float64 }

// between is the gap between the two views of a column.
const between = 3.0

func size(views []*ortho, k float64, f *geom.Frame) columnSize {
	var c columnSize
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range views {
		l, r, b, t := v.room(k, f)
		lo, hi = min(lo, v.box.Min.X*k-l), max(hi, v.box.Max.X*k+r)
		c.h += b + t + v.box.H()*k
	}
	c.h += between
	c.w, c.left = hi-lo, lo
	return c
}

// draw draws the two views of a column with its left edge at x and its top at
// y.
func (c columnSize) draw(s *draw.Sheet, views []*ortho, x, y, k float64, f *geom.Frame) {
	for _, v := range views {
		l, _, b, t := v.room(k, f)
		o := at(x-c.left, y-t-v.box.Max.Y*k)
		s.Add(scaled(v.items, k, o)...)
		box := draw.Box{Min: o.Add(v.box.Min.Mul(k)), Max: o.Add(v.box.Max.Mul(k))}
		for i, line := range v.title {
			s.Text(at(box.Min.X-l, y-small-float64(i)*small*pitch), small, line).Bold = i == 0
		}
		xs, ys := v.requests(k, f)
		dim.Stack(s, v.across, edge(box, v.across), moved(xs, o))
		dim.Stack(s, v.up, edge(box, v.up), moved(ys, o))
		y = box.Min.Y - b - between
	}
}

func edge(b draw.Box, sd dim.Side) float64 {
	switch sd {
	case dim.Above:
		return b.Max.Y
	case dim.RightOf:
		return b.Max.X
	case dim.LeftOf:
		return b.Min.X
	}
	return b.Min.Y
}

func moved(reqs []dim.Request, o vec.P) []dim.Request {
	out := append([]dim.Request(nil), reqs...)
	for i := range out {
		out[i].From, out[i].To = out[i].From.Add(o), out[i].To.Add(o)
	}
	return out
}

// scaleFor returns the largest scale at which the four views fit the field.
func scaleFor(views []*ortho, f block.Field, fr *geom.Frame) (k float64, name string) {
	for _, n := range []int{1, 2, 3, 4, 5, 6, 8, 10, 12, 15} {
		k = 1 / float64(n)
		a, b := size(views[0:2], k, fr), size(views[2:4], k, fr)
		if a.w+b.w+6 <= f.W() && a.h <= f.H() && b.h <= f.H() {
			return k, scaleName(float64(n))
		}
	}
	return k, scaleName(15)
}

func scaleName(n float64) string { return "1:" + draw.Number(n, 1) }
