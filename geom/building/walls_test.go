package building_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/samples/trial"
)

// ofBays is a frame of the given bays with more keys of its building.
func ofBays(bays, more string) string {
	return fmt.Sprintf("frame: F\nunits: in\nbuilding:\n  span: 12'\n  bays: [%s]\n  eave: 9'\n%s", bays, more)
}

func said(f *geom.Frame, words string) bool {
	for _, n := range f.Notes {
		if n.Severity != finding.Stop && strings.Contains(n.Text, words) {
			return true
		}
	}
	return false
}

// A 6 in post with an ideal of 5-1/2 in leaves opposed tenons 2-1/4 in, too
// short for a 3/4 in peg (1.5 diameters to the shoulder and 2 to the end, 2-5/8
// in); an 8 in post leaves them 3-1/4 in. Girts of the second bay lie 5 + 2 in
// lower in the first and level in the second. Closed form.
func TestGirtsStaggerInSlenderPosts(t *testing.T) {
	for _, c := range []struct {
		post string
		drop float64
	}{{"6 x 6", 7}, {"8 x 8", 0}} {
		f := trial.Frame(t, "test.yaml", "sections: {post: "+c.post+"}\n"+ofBays("10', 10'", "  girts: {height: [4'], in: [south]}\n"))
		a, b := f.Timber("girt-south-1"), f.Timber("girt-south-2")
		trial.Near(t, "first girt", a.Place.O.Z, 48*inch, 1e-6)
		trial.Near(t, "second girt", b.Place.O.Z, (48-c.drop)*inch, 1e-6)
		if f.Timber("girt-north-1") != nil || f.Timber("girt-west-1") != nil {
			t.Error("girts in walls that were not named")
		}
		if said(f, "lie 7\" lower") != (c.drop > 0) {
			t.Errorf("post %s: notes %v", c.post, f.Notes)
		}
	}
}

// Joists across the building: the field between the cross sills, divided into
// as few even parts as the spacing allows. Between 6 in sills of a 10 ft bay
// lie 108 in: at most 24 in apart they stand 21.6 in apart. Closed form.
func TestFloorJoists(t *testing.T) {
	f := trial.Frame(t, "test.yaml", ofBays("10'", "  sills: yes\n  floor: {spacing: 24\"}\n"))
	for i := range 4 {
		j := f.Timber(fmt.Sprint("joist-", i+1))
		if j == nil {
			t.Fatalf("no joist %d", i+1)
		}
		trial.Near(t, j.ID, j.Place.O.X+j.Section[1]/2, (6+21.6*float64(i+1))*inch, 2*inch)
		trial.Near(t, "top", j.Place.O.Z, 0, 1e-6)
		// 2 in of bearing at each end beyond the sills' ideal faces, 5-1/2 in
		// from the outside.
		trial.Near(t, "length", j.Length, (144-2*5.5+2*2)*inch, 1e-6)
	}
	if f.Timber("joist-5") != nil {
		t.Error("more joists than the spacing asks for")
	}
}

// Braces of several sets: down braces stand on the sills, inner bents alone
// can have theirs, and legs of 24 x 18 run from nose to nose by Pythagoras.
func TestBraceSets(t *testing.T) {
	f := trial.Frame(t, "test.yaml", ofBays("10', 10'", `  sills: yes
  braces:
    - {legs: 24 x 18, in: [inner bents]}
    - {legs: 20 x 20, in: [walls], go: down, sides: [north], bays: [2]}
`))
	var got []string
	for _, tm := range f.Timbers {
		if tm.Role == "brace" {
			got = append(got, tm.ID)
		}
	}
	want := "brace-2-south brace-2-north brace-north-2a-foot brace-north-2b-foot"
	if strings.Join(got, " ") != want {
		t.Errorf("braces %v, want %s", got, want)
	}
	foot := f.Joint("brace-north-2a-foot-into-sill-north")
	if foot == nil {
		t.Fatal("the down brace does not stand on its sill")
	}
	for _, line := range foot.Lines {
		if line.Main { // 10 ft bay line, 5-1/2 in of post, 20 in leg
			trial.Near(t, "nose line on the sill", line.X, (120+5.5+20)*inch, 0.6*inch)
		}
	}
	var nose []float64
	for _, id := range []string{"brace-2-south-into-post-2-south", "brace-2-south-into-tie-2"} {
		for _, p := range f.Joint(id).Places {
			if p.Label == "nose line on the outer edge" {
				nose = append(nose, p.X)
			}
		}
	}
	trial.Near(t, "nose to nose", nose[1]-nose[0], math.Hypot(24, 18)*inch, 1e-6)
}

// Bent braces that would meet under a short tie are made shorter or left out,
// and the frame says so.
func TestBracesUnderAShortTie(t *testing.T) {
	f := trial.Frame(t, "test.yaml", strings.Replace(ofBays("10'", "  braces: {legs: 30 x 30, in: [bents]}\n"), "span: 12'", "span: 66", 1))
	if !said(f, "these braces have others") && !said(f, "no room for") {
		t.Errorf("no word of it: %v", f.Notes)
	}
}

// A plate longer than the longest stick is made of pieces no longer than it,
// with a scarf at least 2 in clear of the pockets beside it.
func TestLongPlateIsScarfed(t *testing.T) {
	src := "wood: {timbers: {species: eastern white pine, longest: 24'}}\n" + ofBays("12', 12', 12'", "  braces: {legs: 24 x 24, in: [walls]}\n")
	f := trial.Frame(t, "test.yaml", src)
	n := 0
	for _, tm := range f.Timbers {
		if tm.Role == "plate" {
			n++
			if tm.Length > 24*12*inch+1e-6 {
				t.Errorf("%s is %g in long", tm.ID, tm.Length/inch)
			}
		}
	}
	if n != 4 || f.Joint("plate-south-2-into-plate-south-1") == nil {
		t.Errorf("%d plates", n)
	}
	if post := f.Joint("post-4-south-into-plate-south-2"); post == nil {
		t.Error("the last post does not stand under the second piece")
	}
	whole := trial.Frame(t, "test.yaml", strings.Replace(src, "longest: 24'", "longest: 40'", 1))
	if whole.Timber("plate-south") == nil {
		t.Error("a plate that is short enough was divided")
	}
}

// Piers under a sill stand under the bents and no farther apart between them
// than the spacing asks for.
func TestPiersUnderSills(t *testing.T) {
	f := trial.Frame(t, "test.yaml", ofBays("10'", "  sills: yes\n  piers: {size: 12 x 12, spacing: 4'}\n"))
	n := 0
	for _, s := range f.Supports {
		if s.Timber == "sill-south" {
			n++
			trial.Near(t, "pier", s.At.Z, -8*inch, 1e-6)
		}
	}
	// 120 in less a 6 in post are 114 in: three parts of 38 in.
	if n != 4 {
		t.Errorf("%d piers under the south sill, want 4", n)
	}
}
