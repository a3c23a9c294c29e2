package naming_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/font"
	"pegwright/draw/naming"
	"pegwright/draw/scene"
	"pegwright/draw/sheet/tidy"
	"pegwright/draw/view"
	"pegwright/geom/vec"
	"pegwright/samples/trial"
)

// The first two places at which a timber may be pointed to in a picture show its
// wood, and Owner says so: by walking along the line of sight.
func TestSpotsShowTheirWood(t *testing.T) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		found := 0
		for _, cam := range []view.Camera{view.Front(), view.IsometricFrom(-1, -1)} {
			sight, walk := naming.NewSight(cam, scene.FrameParts(f)), tidy.NewWalker(f.Timbers)
			for _, x := range f.Timbers {
				spots := sight.Spots(x, vec.V{}, 1)
				for _, s := range spots[:min(2, len(spots))] {
					seen := walk.First(cam, s.At, func(vec.V) bool { return false })
					if found++; seen != x.ID || s.Owner != x.ID || sight.Owner(s.At) != x.ID {
						t.Errorf("%s: %s is pointed to at %v, where %q shows", name, x.ID, s.At, seen)
					}
				}
			}
		}
		if found < 2*len(f.Timbers)/3 {
			t.Errorf("%s: only %d places", name, found)
		}
	}
}

// Names of invented things among lines drawn at random stand in the field, on no
// line, on no word and not on each other, and all are set or returned. Boxes are
// compared by their sides; lines by points a quarter of a millimetre apart.
func TestNamesStandClear(t *testing.T) {
	for seed := range uint64(8) {
		rng := rand.New(rand.NewPCG(seed, 3))
		s, field := block.New("letter", true, "plan", "x", block.Title{Frame: "f", Sheet: "s"})
		anywhere := func() vec.P {
			return vec.At(field.X0+rng.Float64()*field.W(), field.Y0+rng.Float64()*field.H())
		}
		for range 25 {
			a := anywhere()
			s.Line(draw.Part, a, a.Add(vec.At(rng.Float64()*60-30, rng.Float64()*60-30)))
		}
		s.Text(anywhere(), 5, "a word")
		before := len(s.Items)
		var names []naming.Name
		for i := range 30 {
			id := fmt.Sprintf("thing-%d", i)
			names = append(names, naming.Name{Text: id, Owner: id, Spots: []naming.Spot{{At: anywhere(), Owner: id}}})
		}
		left := naming.Set(s, field, func(vec.P) string { return "" }, names)
		set := textsIn(s.Items[before:])
		if len(set)+len(left) != len(names) || len(left) > 10 {
			t.Errorf("%d set and %d left of %d", len(set), len(left), len(names))
		}
		clear(t, s.Items[:before], set, field)
		if n, faults := tidy.Leaders(s); n < 10 || len(faults) > 0 {
			t.Errorf("%d leaders: %v", n, faults)
		}
	}
}

func textsIn(items []draw.Item) []*draw.Text {
	var out []*draw.Text
	for _, it := range items {
		if x, ok := it.(*draw.Text); ok {
			out = append(out, x)
		}
	}
	return out
}

// clear fails for texts that leave the field or stand on something.
func clear(t *testing.T, items []draw.Item, set []*draw.Text, field block.Field) {
	t.Helper()
	words := textsIn(items)
	for i, x := range set {
		b := font.Turned(x)
		if b.Min.X < field.X0 || b.Max.X > field.X1 || b.Min.Y < field.Y0 || b.Max.Y > field.Y1 {
			t.Errorf("%s leaves the field: %v", x.S, b)
		}
		for _, o := range append(words[:len(words):len(words)], set[:i]...) {
			if c := font.Turned(o); min(b.Max.X, c.Max.X) > max(b.Min.X, c.Min.X) && min(b.Max.Y, c.Max.Y) > max(b.Min.Y, c.Min.Y) {
				t.Errorf("%s stands on %s", x.S, o.S)
			}
		}
		for _, it := range items {
			l, ok := it.(*draw.Path)
			if !ok || l.Class != draw.Part {
				continue
			}
			for d, long := 0.0, l.Pts[0].Dist(l.Pts[1]); d < long; d += 0.25 {
				if p := l.Pts[0].Lerp(l.Pts[1], d/long); p.X > b.Min.X && p.X < b.Max.X && p.Y > b.Min.Y && p.Y < b.Max.Y {
					t.Errorf("%s stands on a line", x.S)
					break
				}
			}
		}
	}
}

// Without keeps order, and tells names apart by text and owner.
func TestWithout(t *testing.T) {
	a, b, c := naming.Name{Text: "2 posts", Owner: "post-1"}, naming.Name{Text: "2 posts", Owner: "post-2"}, naming.Name{Text: "sill", Owner: "sill"}
	got := naming.Without([]naming.Name{a, b, c}, []naming.Name{b})
	if len(got) != 2 || got[0].Owner != a.Owner || got[1].Owner != c.Owner {
		t.Errorf("%v", got)
	}
}
