package spec

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pegwright/geom/finding"
	"pegwright/geom/measure"
)

func read(t *testing.T, src string) *Description {
	t.Helper()
	d, faults := Read("f.yaml", []byte(src), nil)
	if len(faults) > 0 {
		t.Fatalf("unexpected faults:\n%v", faults)
	}
	return d
}

// Values by hand: 1 in = 25.4 mm, 1 ft = 304.8 mm (NIST SP 811); 9 in 12 is
// the 3-4-5 triangle.
func TestReadValues(t *testing.T) {
	d := read(t, apiary)
	b := d.Building
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"span", b.Span.MM, 8 * 304.8},
		{"bay 1", b.Bays[0].MM, 10 * 304.8},
		{"bay 2", b.Bays[1].MM, 8 * 304.8},
		{"eave", b.Eave.MM, 80 * 25.4},
		{"tie height", b.TieHeight.MM, 74 * 25.4},
		{"girt", b.Girts.Heights[1].MM, 5 * 304.8},
		{"pitch", b.Roof.Pitch.Degrees, math.Atan(0.75) * 180 / math.Pi},
		{"door offset", b.Openings[0].From.MM, 3 * 25.4},
		{"post reduce", d.Wood.ReduceFor("post").MM, 12.7},
		{"tenon length", d.Layout.All.TenonLength.MM, 4 * 25.4},
		{"off shoulder", d.Layout.All.OffShoulder.MM, 1.5 * 25.4},
		{"peg moisture", d.Wood.PegSeasoning.Percent, 8},
		{"measured foot", d.Measured[0].Start.B, 5.9375 * 25.4},
		{"header y", d.Timbers[0].From.Y.MM, -304.8},
		{"brace legs", d.Timbers[1].Legs.B, 24 * 25.4},
		{"adjusted offset", d.Adjust[0].Joint.Drawbore.MM, 3.0 / 16 * 25.4},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
}

func TestReadWords(t *testing.T) {
	d := read(t, apiary)
	post, ok := d.Section("post")
	switch {
	case !ok || post.A != 152.4:
		t.Error("posts: 6 x 6 is not the section of the role post")
	case d.Note.S != "two lines of note":
		t.Errorf("note %q", d.Note.S)
	case d.Layout.For("brace").Drawbore.Mode != DrawNone || d.Layout.For("tie").Drawbore.Mode != DrawAuto:
		t.Error("the drawbore of braces does not lie over the common one")
	case d.Layout.For("brace").Bore.MM != 19.05 || !d.Layout.For("brace").Along.Centred:
		t.Error("braces lose the common bore, or their own place of the peg")
	case d.Layout.For("door post").Pegs.V != 1:
		t.Error("pegs: 1 is not a count")
	case d.Units != measure.Imperial || !d.Building.Sills.On || d.Paper.Sheets.S != "arch c":
		t.Error("units, sills or paper are wrong")
	case len(d.Design) != 2 || d.Design[0].Name.S != "ground snow load":
		t.Errorf("design %v", d.Design)
	}
}

// Places counted by hand in the text above; columns count characters.
func TestPlaces(t *testing.T) {
	d := read(t, apiary)
	for _, c := range []struct {
		at        finding.Pos
		line, col int
	}{
		{d.Title.At, 1, 8}, {d.Params[2].At, 7, 44}, {d.Building.Span.At, 19, 9},
		{d.Adjust[0].Joints.At, 37, 14}, {d.Timbers[0].ID.At, 30, 3},
	} {
		if c.at.Line != c.line || c.at.Col != c.col || c.at.File != "f.yaml" {
			t.Errorf("%v, want line %d column %d", c.at, c.line, c.col)
		}
	}
	d = read(t, "\ufeffframe: été\r\nunits: mm\r\nbuilding: {\"span\": 3000, bays: 3 m, eave: 2000}\r\n")
	if d.Building.Span.At.Col != 20 || d.Building.Span.At.Line != 3 || d.Title.At.Col != 8 {
		t.Errorf("span at %v, title at %v", d.Building.Span.At, d.Title.At)
	}
}

func TestSets(t *testing.T) {
	d, faults := Read("f", []byte(apiary), map[string]string{"width": "length - 2'", "n": "4"})
	if len(faults) > 0 || d.Building.Span.MM != 8*304.8 || d.Building.Openings[0].From.MM != 4*25.4 {
		t.Errorf("span %v, %v", d.Building.Span, faults)
	}
	for set, want := range map[string]string{"widht": "did you mean width", "eave": "nothing joins"} {
		_, faults = Read("f", []byte(apiary), map[string]string{set: "6 6"})
		if len(faults) != 1 || faults[0].At.File != "--set" || !strings.Contains(faults[0].Error(), want) {
			t.Errorf("--set %s: %v", set, faults)
		}
	}
}

func TestSelectors(t *testing.T) {
	for src, want := range map[string]Selector{
		"all":                               {All: true},
		"braces":                            {Roles: []string{"brace"}},
		"door posts into sills":             {Roles: []string{"door post"}, IntoRoles: []string{"sill"}},
		"braces and ties into post-1-north": {Roles: []string{"brace", "tie"}, IntoIDs: []string{"post-1-north"}},
		"tie-2 of bent 2":                   {IDs: []string{"tie-2"}, Bent: 2},
		"girts in bay 3 in the north wall":  {Roles: []string{"girt"}, Bay: 3, Wall: "north"},
		"all of bent 1":                     {All: true, Bent: 1},
		"into plates":                       {All: true, IntoRoles: []string{"plate"}},
		"Braces INTO King Posts of bent 12": {Roles: []string{"brace"}, IntoRoles: []string{"king post"}, Bent: 12},
		"lintel":                            {IDs: []string{"lintel"}},
	} {
		src2 := strings.Replace(plainFrame, "ADJUST", "{joints: "+src+", bore: 1}", 1)
		got := read(t, src2).Adjust[0].Joints
		got.Src, got.At, got.Set = "", finding.Pos{}, false
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%q: %+v, want %+v", src, got, want)
		}
	}
}

// plainFrame has one timber with a plain id, and a place for an adjustment.
const plainFrame = `frame: One stick
units: in
timbers: {lintel: {role: header, section: 4 x 6, from: [0, 0, 0], to: [60, 0, 0]}}
adjust: [ADJUST]
`

// Every Set value of the sample appears in the dump, twice the same.
func TestDump(t *testing.T) {
	d := read(t, apiary)
	text := d.Dump()
	for _, want := range []string{"Building.Span = 2438.4000 mm @19:9", `Title = "Apiary store" @1:8`, "Params[3]", "Adjust[1].Timber.Planed = true"} {
		if !strings.Contains(text, want) {
			t.Errorf("the dump lacks %q:\n%s", want, text)
		}
	}
	if text != read(t, apiary).Dump() {
		t.Error("two dumps differ")
	}
}

// The published table names every key once, each with a line of its own.
func TestKeys(t *testing.T) {
	var paths []string
	for _, k := range Keys() {
		if k.Type == "" || k.Doc == "" || strings.ContainsAny(k.Doc, "\n") {
			t.Errorf("%s: type %q, doc %q", k.Path, k.Type, k.Doc)
		}
		paths = append(paths, k.Path)
	}
	for _, want := range []string{"frame", "building.roof.pitch", "building.openings[].wall", "timbers.<id>.role",
		"layout.tenon.length", "layout.<role>.pegs.bore", "joints[].into", "adjust[].joints", "wood.pegs.species"} {
		if !slices.Contains(paths, want) {
			t.Errorf("no key %s", want)
		}
	}
	slices.Sort(paths)
	for i := 1; i < len(paths); i++ {
		if paths[i] == paths[i-1] && !strings.HasPrefix(paths[i], "adjust[]") {
			t.Errorf("%s twice", paths[i])
		}
	}
}

// With lays every setting over, none forgotten: all fields by reflection.
func TestWithForgetsNothing(t *testing.T) {
	var over JointSettings
	setAll(reflect.ValueOf(&over).Elem())
	if got := (JointSettings{}).With(over); got != over {
		t.Errorf("%+v", got)
	}
	if got := over.With(JointSettings{}); got != over {
		t.Errorf("absent settings overwrite: %+v", got)
	}
}

// setAll marks every setting as written, those of groups too.
func setAll(v reflect.Value) {
	for i := range v.NumField() {
		if set := v.Field(i).FieldByName("Set"); set.IsValid() {
			set.SetBool(true)
		} else {
			setAll(v.Field(i))
		}
	}
}
