package sheet

import (
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// eachJoint runs a check on the drawn joint of every group of every sample.
func eachJoint(t *testing.T, check func(t *testing.T, f *geom.Frame, g Group)) {
	for _, name := range drawnSamples() {
		f := trial.Sample(t, name)
		for _, g := range Groups(f) {
			t.Run(name+"/"+g.First().ID, func(t *testing.T) { check(t, f, g) })
		}
	}
}

// An exploded view shows parts that do not touch: no cell of one part shares
// volume with a cell of another. Thickness of the common part is an independent
// measure: the view never asks for it.
func TestExplodedPartsAreApart(t *testing.T) {
	eachJoint(t, func(t *testing.T, f *geom.Frame, g Group) {
		parts := exploded(g.First())
		parts = parts[:len(parts)-1]
		for i := range parts {
			for k := range i {
				for _, a := range placed(parts[i]) {
					for _, b := range placed(parts[k]) {
						if c := solid.Common(a, b); !c.Empty() && c.Thickness() > 1e-3 {
							t.Fatalf("%s and %s overlap by %.2f mm", parts[i].Owner, parts[k].Owner, c.Thickness())
						}
					}
				}
			}
		}
	})
}

// The enterer is carried back exactly along its moves: what is left of the
// shift when the moves are taken away lies along the first move, outward.
func TestExplodedAlongTheMoves(t *testing.T) {
	eachJoint(t, func(t *testing.T, f *geom.Frame, g Group) {
		j := g.First()
		if len(j.Moves) == 0 {
			t.Skip("no moves")
		}
		rest := exploded(j)[1].Shift
		for _, m := range j.Moves {
			rest = rest.Add(m.Direction.Mul(m.Distance))
		}
		if rest.Dot(j.Moves[0].Direction) > -10 || rest.Cross(j.Moves[0].Direction).Len() > 1e-6 {
			t.Errorf("left of the shift: %v, first move %v", rest, j.Moves[0])
		}
	})
}

// The camera looks into the mouth of what the receiver loses and sees the end
// that enters: of the receiver a part of some face that the joint made below the
// surface, of the enterer a good part of some face (the least shares are ours).
// Counted by rays from a grid over every face; the camera was chosen by other
// points.
func TestCameraShowsBothHalves(t *testing.T) {
	least := []float64{0.2, 0.25}
	eachJoint(t, func(t *testing.T, f *geom.Frame, g Group) {
		j := g.First()
		parts := exploded(j)
		c := bestCamera(j, parts, 120, 160)
		cells := append(placed(parts[0]), placed(parts[1])...)
		for i, part := range parts[:2] {
			best, any := 0.0, false
			for _, face := range part.Body.Boundary() {
				if !madeBy(face, j.ID) {
					continue
				}
				any = true
				seen, all := 0, 0
				for _, p := range gridOn(face) {
					all++
					if face.Plane.N.Dot(c.Toward) > 0.05 && clear(p.Add(part.Shift).Add(face.Plane.N.Mul(0.05)), c.Toward, cells) {
						seen++
					}
				}
				if all > 5 {
					best = max(best, float64(seen)/float64(all))
				}
			}
			if any && best < least[i] {
				t.Errorf("%s: no more than %.2f of a face is seen", part.Owner, best)
			}
		}
	})
}

// gridOn returns points of a square grid inside the outer loop of a face
// (even-odd), 7 mm apart.
func gridOn(f solid.Polygon) []vec.V {
	u := f.Outer[1].Sub(f.Outer[0]).Unit()
	v := f.Plane.N.Cross(u)
	o := f.Outer[0]
	var loop []vec.P
	b := draw.NoBox()
	for _, p := range f.Outer {
		q := vec.P{X: p.Sub(o).Dot(u), Y: p.Sub(o).Dot(v)}
		loop = append(loop, q)
		b = b.With(q)
	}
	var out []vec.V
	for x := b.Min.X + 1.3; x < b.Max.X; x += 7 {
		for y := b.Min.Y + 1.1; y < b.Max.Y; y += 7 {
			in := false
			for i, p := range loop {
				q := loop[(i+1)%len(loop)]
				if (p.Y <= y) != (q.Y <= y) && p.X+(q.X-p.X)*(y-p.Y)/(q.Y-p.Y) > x {
					in = !in
				}
			}
			if in {
				out = append(out, o.Add(u.Mul(x)).Add(v.Mul(y)))
			}
		}
	}
	return out
}

// viewsOf returns all orthographic views of a group's halves.
func viewsOf(g Group) []*ortho {
	enterer, receiver := orthos(g)
	return append(enterer, receiver...)
}

// Every dimension that is drawn measures on paper, times the scale, what its
// figures say, and none is drawn twice.
func TestDrawnDimensionsAreTrue(t *testing.T) {
	eachJoint(t, func(t *testing.T, f *geom.Frame, g Group) {
		const k = 1.0 / 4
		drawn := 0
		for _, v := range viewsOf(g) {
			x, y := v.requests(k, f)
			want := map[string]bool{}
			for _, d := range v.dims {
				want[f.Units.PlainJoint(d.Value())] = true
			}
			for i, r := range append(x, y...) {
				d := r.To.Sub(r.From)
				l := math.Abs(d.X)
				if i >= len(x) {
					l = math.Abs(d.Y)
				}
				if got := f.Units.PlainJoint(l / k); got != r.Text || !want[r.Text] {
					t.Errorf("%s: %s on paper says %s", strings.Join(v.title, " "), got, r.Text)
				}
				drawn++
			}
		}
		labels := map[string]bool{}
		for _, d := range g.First().Dims {
			labels[d.Timber.ID+d.Label+draw.Number(d.Value(), 2)] = true
		}
		if drawn > len(labels) {
			t.Errorf("%d drawn, %d asked for", drawn, len(labels))
		}
		if drawn*2 < len(labels) {
			t.Errorf("only %d of %d dimensions are drawn", drawn, len(labels))
		}
	})
}

// Third angle (ISO 5456-2): the view from above stands above the view from the
// front, so both show every point at the same place across the paper, and the
// directions of view stand square to each other.
func TestViewsLineUp(t *testing.T) {
	eachJoint(t, func(t *testing.T, f *geom.Frame, g Group) {
		e, r := orthos(g)
		for _, pair := range [][2]*ortho{{r[0], r[1]}, {e[0], e[1]}} {
			a, b := pair[0].cam, pair[1].cam
			if last := pair[1].title; strings.HasPrefix(last[len(last)-1], "the same, ") {
				// The same side again, turned on the paper: one of the two has
				// the enterer level.
				if x := g.First().Of.Place.X; a.Toward.Sub(b.Toward).Len() > 1e-9 || max(math.Abs(x.Dot(a.Right)), math.Abs(x.Dot(b.Right))) < 1-1e-9 {
					t.Errorf("cameras %v and %v are not the same view, turned", a, b)
				}
				continue
			}
			if a.Right.Sub(b.Right).Len() > 1e-9 || math.Abs(a.Toward.Dot(b.Toward)) > 1e-9 {
				t.Errorf("cameras %v and %v do not line up", a, b)
			}
			for _, c := range []vec.V{a.Right.Cross(a.Up).Sub(a.Toward), b.Right.Cross(b.Up).Sub(b.Toward)} {
				if c.Len() > 1e-9 {
					t.Errorf("a view is mirrored: %v %v", a, b)
				}
			}
			// The upper view is seen from what is up in the lower one, or the
			// lower from what is down in the upper.
			if math.Abs(a.Toward.Dot(b.Up)) < 1-1e-9 || a.Toward.Dot(b.Up) < 0 {
				t.Errorf("the upper view looks from %v, up in the lower is %v", a.Toward, b.Up)
			}
		}
	})
}

// turned returns a copy of the joint's frame data carried by a rigid motion.
func turned(j *geom.Joint, pl vec.Placement) *geom.Joint {
	c := *j
	into, of := *j.Into, *j.Of
	into.Place, of.Place = j.Into.Place.Then(pl), j.Of.Place.Then(pl)
	c.Into, c.Of = &into, &of
	a := j.Axes
	c.Axes = geom.Axes{O: pl.Out(a.O), U: pl.OutDir(a.U), V: pl.OutDir(a.V), W: pl.OutDir(a.W)}
	c.Pegs = nil
	for _, p := range j.Pegs {
		p.From, p.To, p.Draw = pl.Out(p.From), pl.Out(p.To), pl.OutDir(p.Draw)
		c.Pegs = append(c.Pegs, p)
	}
	c.Dims = nil
	for _, d := range j.Dims {
		if d.Timber == j.Into {
			d.Timber = c.Into
		} else {
			d.Timber = c.Of
		}
		c.Dims = append(c.Dims, d)
	}
	return &c
}

// A joint carried anywhere is the same joint; one with any number changed is
// not.
func TestIdentityOfJoints(t *testing.T) {
	eachJoint(t, func(t *testing.T, f *geom.Frame, g Group) {
		j := g.First()
		quarter := vec.Placement{X: vec.V{Y: 1}, Y: vec.V{X: -1}, Z: vec.V{Z: 1}, O: vec.V{X: 1234, Y: -77, Z: 5}}
		if a, b := identity(j), identity(turned(j, quarter)); a != b {
			t.Errorf("turned by a quarter it is another joint:\n%s\n%s", a, b)
		}
		deeper := turned(j, vec.Identity)
		deeper.Into.Cuts = append([]geom.Cut(nil), j.Into.Cuts...)
		changed := false
		for i, c := range deeper.Into.Cuts {
			if c.Joint == j.ID {
				c.Solid = c.Solid.Grow(1)
				deeper.Into.Cuts[i] = c
				changed = true
				break
			}
		}
		if changed && identity(deeper) == identity(j) {
			t.Error("a cut 1 mm larger all round makes no difference")
		}
		bigger := turned(j, vec.Identity)
		for i := range bigger.Pegs {
			bigger.Pegs[i].Bore += 25.4 / 4
		}
		if len(j.Pegs) > 0 && identity(bigger) == identity(j) {
			t.Error("a larger bore makes no difference")
		}
	})
}

// Members of a group are congruent, and those that the sheets call of opposite
// hand are the mirror images, no others: the signed volumes of tetrahedra on
// corresponding corners of their tenons and mortises agree, or are the
// negative.
func TestGroupsTellMirrorImages(t *testing.T) {
	seen := 0
	for _, name := range drawnSamples() {
		for _, g := range Groups(trial.Sample(t, name)) {
			for _, j := range g.Joints[1:] {
				a, b := sense(g.First()), sense(j)
				if g.opposite(j) {
					seen++
					b = -b
				}
				if math.Abs(a-b) > 1e-3*math.Abs(a)+1 {
					t.Errorf("%s and %s: %v and %v", g.First().ID, j.ID, a, b)
				}
			}
		}
	}
	if seen == 0 {
		t.Error("no mirror images to check")
	}
}

// sense is a signed volume that a mirror turns round: that of the directions
// from the corner of the receiver's reference arris in the joint to the middle
// of the mortise, along the move, and to the middle of the enterer's reference
// arris.
func sense(j *geom.Joint) float64 {
	if j.Mortise.Empty() {
		return 0
	}
	m := j.Mortise.Centroid()
	arris := j.Into.Place.Out(vec.V{X: j.Into.Place.In(m).X})
	other := j.Of.Place.Out(vec.V{X: j.Of.Place.In(m).X})
	return m.Sub(arris).Cross(j.Moves[0].Direction.Mul(100)).Dot(other.Sub(arris))
}

// The table of the joint sheet says every dimension of the joint.
func TestTableSaysEveryDimension(t *testing.T) {
	eachJoint(t, func(t *testing.T, f *geom.Frame, g Group) {
		var texts []string
		for _, s := range Joint(f, g, nil) {
			for _, it := range s.Items {
				if x, ok := it.(*draw.Text); ok {
					texts = append(texts, x.S)
				}
			}
		}
		all := "\n" + strings.Join(texts, "\n") + "\n"
		for _, d := range g.First().Dims {
			if !strings.Contains(all, "\n"+f.Units.FormatJoint(d.Value())+"\n") {
				t.Errorf("%s %s is missing", d.Label, f.Units.FormatJoint(d.Value()))
			}
		}
		if !strings.Contains(all, "\n"+g.First().Mark+"\n") {
			t.Error("the joiner's mark is missing")
		}
	})
}

// Stopped joints say so on every sheet, with the number on the cover.
func TestStoppedSheets(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	g := Groups(f)[0]
	for _, s := range Joint(f, g, map[string]int{g.First().ID: 3}) {
		if !strings.Contains(s.Dump(), "DO NOT CUT – see finding 3") {
			t.Errorf("%s does not say so", s.ID)
		}
	}
	for _, s := range Joint(f, g, nil) {
		if strings.Contains(s.Dump(), "DO NOT CUT") {
			t.Errorf("%s says so without a reason", s.ID)
		}
	}
}

// A group with far more joints than the column holds lists every one, in order
// and apart.
func TestManyJointsServed(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	g := Group{Joints: Groups(f)[0].Joints[:1]}
	for n := range 140 {
		j := *g.Joints[0]
		j.Mark = strings.Repeat("X", 1+n/10)
		g.Joints = append(g.Joints, &j)
	}
	sheets := Joint(f, g, nil)
	n := 0
	for _, s := range sheets {
		checkLayout(t, s)
		for _, it := range s.Items {
			if x, ok := it.(*draw.Text); ok && strings.HasPrefix(x.S, g.First().Of.ID+" into "+g.First().Into.ID+",") && x.Layer != "title" {
				n++
			}
		}
	}
	if n < len(g.Joints) {
		t.Errorf("%d of %d joints listed on %d sheets", n, len(g.Joints), len(sheets))
	}
}

// The face that a rafter lands on is seen from above. With the south wall's
// outer face at the left, north is at the right and so west is up: the start end
// of a plate, the one with the smaller x, lies above.
func TestViewAcrossTellsTheStartEnd(t *testing.T) {
	f := trial.Sample(t, "apiary-store")
	for _, g := range Groups(f) {
		if g.First().ID != "rafter-1-south-on-plate-south" {
			continue
		}
		_, receiver := orthos(g)
		if r := receiver[0].cam.Right; r.Y < 1-1e-9 {
			t.Fatalf("the paper's right is %v, not north", r)
		}
		if got := receiver[0].title[1]; !strings.HasSuffix(got, ", start end above") {
			t.Errorf("title %q", got)
		}
		return
	}
	t.Fatal("no such joint")
}
