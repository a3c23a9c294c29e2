package joint

import (
	"math"

	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/scene"
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
	// sawn is where the wood of whole is sawn through, to be hatched; nil for
	// a plain view.
	sawn   *solid.Plane
	whole  view.Part
	items  []draw.Item // at full size
	box    draw.Box
	bevels []bevel          // at full size
	rooms  map[float64]room // about the view, by its scale
}

// across returns the direction that lies across the paper in the views: along
// the receiver, or across it where the enterer leans that way, as a rafter does
// over a plate.
func across(j *geom.Joint) vec.V {
	x := j.Of.Place.X
	if math.Abs(x.Dot(j.Axes.U)) < 1e-6 && math.Abs(x.Dot(j.Axes.V)) > 0.05 {
		return j.Axes.V
	}
	// A receiver that the enterer drops into sideways is seen from where it
	// comes.
	if len(j.Moves) > 0 && j.Moves[0].Direction.Dot(j.Axes.U.Cross(j.Axes.W)) > 1-1e-6 {
		return j.Axes.U.Neg()
	}
	return j.Axes.U
}

// orthos returns the views of the enterer, from the side and from its end, and
// those of the receiver, from the entered face and from the side. An enterer
// that has dimensions both along itself and along the receiver's lines is seen
// from the side twice, turned, and from its end only where that tells
// something.
func orthos(g scene.Group) (enterer, receiver []*ortho) {
	j := g.First()
	n := scene.NearOf(j, 0.42)
	h, w := across(j), j.Axes.W
	t := h.Cross(w)
	side := view.Camera{Right: h, Up: w, Toward: t}
	top := view.Camera{Right: h, Up: w.Cross(h), Toward: w}
	last := &ortho{title: []string{sideTitle(g, t), startEnd(j.Into, side)}, cam: side, part: n.Receiver, timber: j.Into, across: dim.Below, up: dim.RightOf, o: view.Options{ShowHidden: true}}
	entered := g.FaceTitle(true, j.Entered) + ", entered"
	if last.title[1] == "" {
		entered += ", " + startEnd(j.Into, top)
		last.title = []string{"section", "under the middle of " + j.Of.ID}
		pl := solid.PlaneAt(j.Of.Place.Out(vec.V{Y: j.Of.Ideal[0] / 2, Z: j.Of.Ideal[1] / 2}), t)
		last.whole, last.sawn = n.Receiver, &pl
		last.part.Body = view.Behind(n.Receiver.Body, pl)
	}
	long, other := entererCameras(j, side)
	end := view.Camera{Right: long.Right, Up: long.Toward, Toward: long.Up.Neg()}
	of := func(c view.Camera, title ...string) *ortho {
		return &ortho{title: title, cam: c, part: n.Enterer, timber: j.Of, across: dim.Below, up: dim.RightOf}
	}
	face := g.FaceTitle(false, j.Of.FaceToward(long.Toward))
	enterer = []*ortho{of(long, j.Of.ID, face), of(end, "seen from "+j.Into.ID), of(other, j.Of.ID, asLaid(other, side))}
	receiver = []*ortho{{title: []string{j.Into.ID, entered}, cam: top, part: n.Receiver, timber: j.Into, across: dim.Above, up: dim.LeftOf}, last}
	share(j, enterer, receiver)
	switch {
	case len(enterer[2].dims) == 0:
		enterer = enterer[:2]
	case len(enterer[1].dims) == 0:
		enterer = []*ortho{enterer[0], enterer[2]}
	}
	for _, x := range append(enterer[:len(enterer):len(enterer)], receiver...) {
		x.render()
	}
	bevels(j, append(enterer[:len(enterer):len(enterer)], receiver...))
	return enterer, receiver
}

// startEnd says on which side of a view the start end of a timber lies, "" where
// the timber is seen end on.
func startEnd(t *geom.Timber, c view.Camera) string {
	x, y := t.Place.X.Dot(c.Right), t.Place.X.Dot(c.Up)
	switch {
	case max(math.Abs(x), math.Abs(y)) < 1e-6:
		return ""
	case math.Abs(x) < math.Abs(y) && y > 0:
		return "start end below"
	case math.Abs(x) < math.Abs(y):
		return "start end above"
	case x > 0:
		return "start end left"
	}
	return "start end right"
}

// asLaid says how the enterer lies in the second of its views from the side.
func asLaid(c, side view.Camera) string {
	if c == side {
		return "the same, as it stands"
	}
	return "the same, laid level"
}

// entererCameras returns the cameras that see the enterer from the side: as it
// stands in the joint, and turned so that it lies level as on trestles, the one
// first that shows more of its dimensions along the paper's x or y. Both are
// the same where it stands square to the paper already.
func entererCameras(j *geom.Joint, side view.Camera) (first, second view.Camera) {
	x := j.Of.Place.X
	if j.Broad {
		if x.Dot(side.Right) < 0 {
			x = x.Neg()
		}
		c := view.Camera{Right: x, Up: side.Up, Toward: x.Cross(side.Up)}
		return c, c
	}
	if math.Abs(x.Dot(side.Toward)) > 1e-6 {
		return side, side
	}
	if x.Dot(side.Right) < 0 {
		x = x.Neg()
	}
	if x.Dot(side.Right) > 1-1e-9 {
		return side, side
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
		return level, side
	}
	return side, level
}

// sideTitle names the receiver's face in the side view and says on which side
// of it the pegs enter.
func sideTitle(g scene.Group, t vec.V) string {
	j := g.First()
	n := j.Into.FaceToward(t)
	title := g.FaceTitle(true, n)
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
// paper's x or y: holes of the receiver to its side view, the rest to the first
// that can.
func share(j *geom.Joint, enterer, receiver []*ortho) {
	said := map[string]bool{}
	for _, d := range j.Dims {
		order := enterer
		if d.Timber == j.Into {
			order = receiver
			if d.Reader == geom.Borer {
				order = []*ortho{receiver[1], receiver[0]}
			}
		}
		key := d.Timber.ID + d.Label + draw.Number(d.Value(), 2)
		for _, v := range order {
			if !said[key] && v.lies(d) {
				v.dims = append(v.dims, d)
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
	v.items = scene.Register(v.items, v.cam, v.timber)
	if v.sawn != nil {
		for _, fig := range view.Section([]view.Part{v.whole}, *v.sawn, v.cam, view.Options{}) {
			for _, h := range fig.Hatch(45, 12) {
				v.items = append(v.items, h)
			}
		}
	}
	v.rooms = map[float64]room{}
	v.box = draw.NoBox()
	for _, it := range v.items {
		b := draw.ItemBounds(it)
		v.box = v.box.With(b.Min, b.Max)
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
