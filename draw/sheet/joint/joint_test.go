package joint

import (
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/scene"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// eachJoint runs a check on the drawn joint of every group of every sample.
func eachJoint(t *testing.T, check func(t *testing.T, f *geom.Frame, g scene.Group)) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		for _, g := range scene.Groups(f) {
			t.Run(name+"/"+g.First().ID, func(t *testing.T) { check(t, f, g) })
		}
	}
}

// viewsOf returns all orthographic views of a group's halves.
func viewsOf(g scene.Group) []*ortho {
	enterer, receiver := orthos(g)
	return append(enterer, receiver...)
}

// Every dimension that is drawn measures on paper, times the scale, what its
// figures say, and none is drawn twice.
func TestDrawnDimensionsAreTrue(t *testing.T) {
	eachJoint(t, func(t *testing.T, f *geom.Frame, g scene.Group) {
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
	eachJoint(t, func(t *testing.T, f *geom.Frame, g scene.Group) {
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

// The table of the joint sheet says every dimension of the joint.
func TestTableSaysEveryDimension(t *testing.T) {
	eachJoint(t, func(t *testing.T, f *geom.Frame, g scene.Group) {
		var texts []string
		for _, s := range Sheets(f, g, nil) {
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
	g := scene.Groups(f)[0]
	for _, s := range Sheets(f, g, map[string]int{g.First().ID: 3}) {
		if !strings.Contains(s.Dump(), "DO NOT CUT – see finding 3") {
			t.Errorf("%s does not say so", s.ID)
		}
	}
	for _, s := range Sheets(f, g, nil) {
		if strings.Contains(s.Dump(), "DO NOT CUT") {
			t.Errorf("%s says so without a reason", s.ID)
		}
	}
}

// A group with far more joints than the column holds lists every one, in order
// and apart.
func TestManyJointsServed(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	g := scene.Group{Joints: scene.Groups(f)[0].Joints[:1]}
	for n := range 140 {
		j := *g.Joints[0]
		j.Mark = strings.Repeat("X", 1+n/10)
		g.Joints = append(g.Joints, &j)
	}
	sheets := Sheets(f, g, nil)
	n := 0
	for _, s := range sheets {
		tidy.Check(t, s)
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
	for _, g := range scene.Groups(f) {
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

// A joint of four pegs, the most there can be, has room for its holes and for what
// is told of them; the holes of a row that stand alike are told once.
func TestFourPegs(t *testing.T) {
	trial.EachOther(t, func(t *testing.T, f *geom.Frame) {
		for _, g := range scene.Groups(f) {
			if len(g.First().Pegs) < 4 {
				continue
			}
			sheets := Sheets(f, g, nil)
			for _, s := range sheets {
				if err := s.Valid(); err != nil {
					t.Error(err)
				}
			}
			tidy.Sheets(t, sheets)
			alike := strings.Contains(strings.ReplaceAll(tidy.TextsOn(sheets, ""), "\n", " "), "Holes 1, 2, 3 and 4: workable")
			if whole := strings.HasSuffix(t.Name(), "four_pegs"); alike != whole {
				t.Errorf("%v: told once: %v", whole, alike)
			}
		}
	})
}
