package scene

import (
	"math"
	"slices"
	"testing"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// eachGroup runs a check on the drawn joint of every group of every sample.
func eachGroup(t *testing.T, check func(t *testing.T, f *geom.Frame, g Group)) {
	for _, name := range trial.Drawn() {
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
	eachGroup(t, func(t *testing.T, f *geom.Frame, g Group) {
		parts := Exploded(g.First())
		parts = parts[:len(parts)-1]
		for i := range parts {
			for k := range i {
				for _, a := range parts[i].Placed() {
					for _, b := range parts[k].Placed() {
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
	moved := 0
	eachGroup(t, func(t *testing.T, f *geom.Frame, g Group) {
		j := g.First()
		rest := Exploded(j)[1].Shift
		if len(j.Moves) == 0 {
			if rest != (vec.V{}) {
				t.Errorf("carried by %v with no move to undo", rest)
			}
			return
		}
		moved++
		for _, m := range j.Moves {
			rest = rest.Add(m.Direction.Mul(m.Distance))
		}
		if rest.Dot(j.Moves[0].Direction) > -10 || rest.Cross(j.Moves[0].Direction).Len() > 1e-6 {
			t.Errorf("left of the shift: %v, first move %v", rest, j.Moves[0])
		}
	})
	if moved == 0 {
		t.Error("no joint has a move: the test says nothing")
	}
}

// The camera looks into the mouth of what the receiver loses and sees the end
// that enters: of the receiver a part of some face that the joint made below the
// surface, of the enterer a good part of some face (the least shares are ours).
// Counted by rays from a grid over every face; the camera was chosen by other
// points.
func TestCameraShowsBothHalves(t *testing.T) {
	least := []float64{0.2, 0.25}
	eachGroup(t, func(t *testing.T, f *geom.Frame, g Group) {
		j := g.First()
		parts := Exploded(j)
		c := newStage(j, parts).camera(120, 160)
		before := screenOf(slices.Concat(parts[0].Placed(), parts[1].Placed()))
		before.face(c)
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
					if face.Plane.N.Dot(c.Toward) > 0.05 && before.clear(p.Add(part.Shift).Add(face.Plane.N.Mul(0.05)), before.all) {
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

// What does not reach before a face hides nothing of it: with the cells that a patch
// names the same is clear as with all of them, from every camera that it looks at.
func TestBeforeAPatch(t *testing.T) {
	eachGroup(t, func(t *testing.T, _ *geom.Frame, g Group) {
		parts := Exploded(g.First())
		s := newStage(g.First(), parts)
		// A screen of its own: one asks first what hid the point before.
		whole := screenOf(slices.Concat(parts[0].Placed(), parts[1].Placed()))
		for i := range s.shots {
			c := s.shots[i].cam
			s.screen.face(c)
			whole.face(c)
			for _, p := range slices.Concat(s.receiver, s.enterer) {
				if p.n.Dot(c.Toward) <= aslant {
					continue
				}
				for _, q := range p.spots {
					if some, all := s.screen.clear(q.at, p.before), whole.clear(q.at, whole.all); some != all {
						t.Fatalf("camera %d, %v on the face that looks to %v: clear %v with some, %v with all", i, q.at, p.n, some, all)
					}
				}
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
	eachGroup(t, func(t *testing.T, f *geom.Frame, g Group) {
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
	for _, name := range trial.Drawn() {
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

// Timbers share a sheet to 0.01 mm and not beyond, and not with another wood,
// role, or bore.
func TestSticksAlike(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	count := func(change func(c *geom.Timber)) int {
		a, b := *f.Timbers[4], *f.Timbers[4]
		b.Cuts = append([]geom.Cut(nil), b.Cuts...)
		b.Bores = append([]geom.Bore(nil), b.Bores...)
		b.ID = "other"
		change(&b)
		return len(AllSticks(&geom.Frame{Timbers: []*geom.Timber{&a, &b}}))
	}
	move := func(d float64) func(c *geom.Timber) {
		return func(c *geom.Timber) {
			pl := vec.Identity
			pl.O.X = d
			c.Cuts[3].Solid = c.Cuts[3].Solid.Moved(pl)
		}
	}
	for name, c := range map[string]struct {
		change func(c *geom.Timber)
		want   int
	}{
		"nothing":       {func(*geom.Timber) {}, 1},
		"mark":          {func(c *geom.Timber) { c.Mark = "Z" }, 1},
		"0.005 mm":      {move(0.005), 1},
		"0.02 mm":       {move(0.02), 2},
		"another order": {func(c *geom.Timber) { c.Cuts[0], c.Cuts[5] = c.Cuts[5], c.Cuts[0] }, 1},
		"wood":          {func(c *geom.Timber) { c.Wood.Name = "oak" }, 2},
		"role":          {func(c *geom.Timber) { c.Role = "strut" }, 2},
		"bore":          {func(c *geom.Timber) { c.Bores[0].Diameter += 3 }, 2},
		"entry":         {func(c *geom.Timber) { c.Bores[0].Entry, c.Bores[0].Exit = c.Bores[0].Exit, c.Bores[0].Entry }, 2},
	} {
		if got := count(c.change); got != c.want {
			t.Errorf("%s: %d groups, want %d", name, got, c.want)
		}
	}
}
