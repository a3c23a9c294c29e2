package list

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/measure"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// pair is a post with a mortise and a girt along x with a tenon at its start,
// 1 1/2 in thick along y; one 1 in peg along y, drawn 1/8 in. A rafter's seat
// is on the post too, without a tenon.
func pair() *geom.Frame {
	post, girt, rafter := stick("post", 94), stick("girt", 40), stick("rafter", 60)
	girt.Place = vec.Placement{X: vec.V{X: 1}, Y: vec.V{Y: 1}, Z: vec.V{Z: 1}, O: vec.V{X: 100}}
	post.Bores = []geom.Bore{
		{Joint: "g", Peg: "g-1", From: vec.V{X: 40 * in, Y: -8, Z: 4 * in}, To: vec.V{X: 40 * in, Y: 6*in + 8, Z: 4 * in}, Diameter: in, Entry: 1, Exit: 3},
		{Joint: "s", Peg: "s-1", From: vec.V{X: 9 * in, Y: 3 * in, Z: -8}, To: vec.V{X: 9 * in, Y: 3 * in, Z: 2 * in}, Diameter: in, Entry: 2},
	}
	girt.Bores = []geom.Bore{{Joint: "g", Peg: "g-1", From: vec.V{X: 2 * in, Y: -8, Z: 4 * in}, To: vec.V{X: 2 * in, Y: 6*in + 8, Z: 4 * in}, Diameter: in, Entry: 1, Exit: 3}}
	rafter.Bores = []geom.Bore{{Joint: "s", Peg: "s-1", From: vec.V{X: 2 * in, Y: 3 * in, Z: -8}, To: vec.V{X: 2 * in, Y: 3 * in, Z: 8*in + 8}, Diameter: in, Entry: 2, Exit: 4}}
	tenon := solid.Box(vec.V{X: 100, Y: 2 * in, Z: 0}, vec.V{X: 200, Y: 3.5 * in, Z: 8 * in})
	drawn := geom.Peg{ID: "g-1", Bore: in, Length: 11 * in, Head: in, Lead: 4 * in, Offset: in / 8, Words: "toward the shoulder", Entry: 1, Exit: 3}
	seat := geom.Peg{ID: "s-1", Bore: in, Length: 9 * in, Head: in, Words: "not offset", Entry: 2}
	return &geom.Frame{Timbers: []*geom.Timber{post, girt, rafter}, Joints: []*geom.Joint{
		{ID: "g", Into: post, Of: girt, Tenon: tenon, Pegs: []geom.Peg{drawn}},
		{ID: "s", Into: post, Of: rafter, Pegs: []geom.Peg{seat}},
	}}
}

// column returns the shown cells under a heading.
func column(t *testing.T, l Table, name string) []string {
	t.Helper()
	i, ok := columns(l)[name]
	if !ok {
		t.Fatalf("%s: no column %q", l.Name, name)
	}
	var cells []string
	for _, r := range l.Rows {
		cells = append(cells, r[i])
	}
	return cells
}

// want compares a column with what was worked out by hand from the fixture.
func want(t *testing.T, l Table, name string, cells ...string) {
	t.Helper()
	if got := column(t, l, name); !slices.Equal(got, cells) {
		t.Errorf("%s, %s: %q, want %q", l.Name, name, got, cells)
	}
}

// The post is 6 in thick along the bore and the tenon 1 1/2 in, whatever the
// girt's own 6 in; the seat's bore is 2 in deep and runs through 8 in.
func TestBoresSayWhatTheyGoThrough(t *testing.T) {
	f := pair()
	l := Bores(f, nil)
	want(t, l, "in", "mortise", "receiver", "tenon", "enterer")
	want(t, l, "bore", "through", "blind", "through", "through")
	want(t, l, "depth", `6"`, `2"`, `1 1/2"`, `8"`)
	want(t, l, "offset", "", "", `1/8"`, "")
	want(t, l, "which way", "", "", "to shoulder", "")
	want(t, l, "note", "", "", "", "")
	f.Units = measure.Metric
	want(t, Bores(f, nil), "offset", "", "", "3", "") // 3.175 mm, to the half
	f.Joints[0].Pegs[0].Offset = 0
	want(t, Bores(f, nil), "offset", "", "", "", "")
	want(t, Bores(f, nil), "which way", "", "", "", "")
}

// A tenon turned in the frame is as thick as before: the extent is taken along
// the bore in the frame, not in the girt's own axes.
func TestTenonThicknessFollowsThePlacement(t *testing.T) {
	f := pair()
	girt, turned := f.Timbers[1], vec.Placement{X: vec.V{Y: 1}, Y: vec.V{Z: 1}, Z: vec.V{X: 1}, O: vec.V{X: 7, Y: 8, Z: 9}}
	girt.Place = turned
	f.Joints[0].Tenon = solid.Box(vec.V{X: 0, Y: 2 * in, Z: 0}, vec.V{X: 100, Y: 3.5 * in, Z: 8 * in}).Moved(turned)
	want(t, Bores(f, nil), "depth", `6"`, `2"`, `1 1/2"`, `8"`)
}

func TestStoppedBoresAndPegsAreMarkedAndCountedApart(t *testing.T) {
	tables := Of(pair(), map[string]int{"g": 3})
	const no = "DO NOT BORE – finding 3"
	pegs, bores := tables[1], tables[2]
	want(t, bores, "note", no, "", no, "")
	want(t, bores, "offset", "", "", "", "")
	if got, exp := bores.Totals[0], "4 bores, of which 2 NOT to be bored until the finding named is mended"; got != exp {
		t.Errorf("%q, want %q", got, exp)
	}
	want(t, pegs, "note", "blind hole, short taper", no)
	want(t, pegs, "needed", "1", "1")
	want(t, pegs, "spares", "2", "0") // at least two: peg.Spares
	want(t, pegs, "make", "3", "0")
	if got := strings.Join(pegs.Totals, "|"); !strings.HasPrefix(got, "3 pegs with spares, 1 size|1 peg of joints under a stop finding NOT counted") {
		t.Errorf("totals %q", got)
	}
	text, err := JSON(tables)
	if err != nil || !json.Valid(text) || strings.Count(string(text), no) != 3 {
		t.Errorf("marks in JSON: %v\n%s", err, text)
	}
	f := pair() // both pegs of one size, one of them forbidden
	f.Joints[1].Pegs[0] = f.Joints[0].Pegs[0]
	want(t, Pegs(f, map[string]int{"g": 3}), "make", "3", "0")
	for _, l := range Of(pair(), nil) {
		if strings.Contains(l.Text(), "NOT") {
			t.Errorf("marked without a stop:\n%s", l.Text())
		}
	}
}

// Numbers are those of the sorted findings, stops first; the first stop of a
// joint counts, whatever the order in which they come.
func TestStopped(t *testing.T) {
	f := pair()
	at := func(line int, s finding.Severity, timbers, joints []string) finding.Finding {
		return finding.Finding{Severity: s, At: finding.Pos{Line: line}, Timbers: timbers, Joints: joints}
	}
	for name, c := range map[string]struct {
		finds []finding.Finding
		want  map[string]int
	}{
		"warnings do not stop":    {[]finding.Finding{at(1, finding.Warn, nil, []string{"g"}), at(2, finding.Note, nil, []string{"s"})}, map[string]int{}},
		"stops come first":        {[]finding.Finding{at(1, finding.Warn, nil, []string{"g"}), at(9, finding.Stop, nil, []string{"s"})}, map[string]int{"s": 1}},
		"by line":                 {[]finding.Finding{at(9, finding.Stop, nil, []string{"s"}), at(4, finding.Stop, nil, []string{"g"})}, map[string]int{"g": 1, "s": 2}},
		"the first of two counts": {[]finding.Finding{at(9, finding.Stop, nil, []string{"g"}), at(4, finding.Stop, nil, []string{"g"})}, map[string]int{"g": 1}},
		"a timber's joints":       {[]finding.Finding{at(1, finding.Stop, []string{"girt"}, nil)}, map[string]int{"g": 1}},
		"joints before timbers":   {[]finding.Finding{at(1, finding.Stop, []string{"post"}, []string{"s"})}, map[string]int{"s": 1}},
		"all joints of a post":    {[]finding.Finding{at(1, finding.Stop, []string{"post", "nobody"}, nil)}, map[string]int{"g": 1, "s": 1}},
		"neither":                 {[]finding.Finding{at(1, finding.Stop, nil, nil)}, map[string]int{}},
	} {
		got := Stopped(f, c.finds)
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
		for id, n := range c.want {
			if got[id] != n {
				t.Errorf("%s: %v, want %v", name, got, c.want)
			}
		}
	}
}

// Tip and taper by hand: the tip is 2/3 of the peg, or the opening D - e less
// 1/16 in where that is less, and the taper 1 in 8. At 1 in and 1/8 in: 2/3 in
// and 8 x 1/3 = 2 2/3 in; at 3/8 in: 5/8 - 1/16 = 9/16 in and 8 x 7/16 =
// 3 1/2 in. At 11/16 in 1/4 in is left, under a third of the peg: none enters.
func TestTaperFollowsTheLargestOffset(t *testing.T) {
	for _, c := range []struct {
		a, b        float64
		taper, tips string
	}{
		{1. / 8, 0, `2 21/32"`, `21/32"`}, {0, 3. / 8, `3 1/2"`, `9/16"`}, {3. / 8, 1. / 8, `3 1/2"`, `9/16"`}, {11. / 16, 0, "none", "none"},
	} {
		f := pair()
		j := f.Joints[0]
		j.Pegs = append(j.Pegs, j.Pegs[0])
		f.Joints = f.Joints[:1]
		j.Pegs[0].Offset, j.Pegs[1].Offset = c.a*in, c.b*in
		l := Pegs(f, nil)
		want(t, l, "needed", "2")
		want(t, l, "taper length", c.taper)
		want(t, l, "tip Ø", c.tips)
		want(t, l, "beyond far face", `4"`)
		if _, err := JSON([]Table{l}); err != nil {
			t.Error(err)
		}
	}
}

// Pegs of one size of which one is sawn flush are made alike: one row, and the
// spares of three pegs, two, not those of two and of one.
func TestFlushPegsAreMadeAlike(t *testing.T) {
	f := pair()
	j := f.Joints[0]
	j.Pegs = append(j.Pegs, j.Pegs[0], j.Pegs[0])
	j.Pegs[0].Flush = true
	f.Joints = f.Joints[:1]
	l := Pegs(f, nil)
	want(t, l, "note", "saw 1 flush both faces")
	want(t, l, "needed", "3")
	want(t, l, "spares", "2")
	if got := l.Totals[0]; !strings.HasSuffix(got, ", 1 size") {
		t.Errorf("totals %q", got)
	}
}
