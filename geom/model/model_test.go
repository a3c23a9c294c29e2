package model_test

import (
	"bytes"
	"encoding/json"
	"math"
	"regexp"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/model"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// frame is one post, turned and shifted, with a mortise and a blind bore, and a
// joint with one peg drawn along -x.
func frame() *geom.Frame {
	s := [2]float64{152.4, 203.2}
	post := &geom.Timber{ID: "post-1", Role: "post", Length: 2000, Section: s, Ideal: s,
		Blank: geom.BlankOf(2000, s, s), NetVolume: 6e7, Density: 800,
		Place: vec.Placement{X: vec.V{Z: 1}, Y: vec.V{X: 1}, Z: vec.V{Y: 1}, O: vec.V{X: 10, Y: -0.0000001, Z: 30}},
	}
	hole := solid.Box(vec.V{X: 500, Y: 50, Z: -10}, vec.V{X: 650, Y: 90, Z: 100})
	hole.Faces[0].Role = geom.RoleEnd
	post.Cuts = []geom.Cut{{Joint: "j", Name: "mortise", Solid: hole}}
	post.Bores = []geom.Bore{{Joint: "j", Peg: "j-peg-1", From: vec.V{X: 570, Y: -8, Z: 40}, To: vec.V{X: 570, Y: 120, Z: 40}, Diameter: 25.4, Entry: 1}}
	tie := &geom.Timber{ID: "tie-1", Role: "tie", Blank: post.Blank, Place: vec.Identity}
	j := &geom.Joint{ID: "j", Kind: "Mortise and tenon", Mark: "IIII", Into: post, Of: tie,
		Moves: []geom.Move{{Direction: vec.V{X: 0 - 1}, Distance: 101.6}},
		Pegs: []geom.Peg{{ID: "j-peg-1", To: vec.V{Y: 150}, Bore: 25.4, Length: 250, Offset: 3.175, Draw: vec.V{X: -1},
			Mortise: vec.V{X: 1, Y: 2, Z: 3}, Tenon: vec.V{X: 4.175, Y: 2, Z: 3}}},
	}
	return &geom.Frame{Title: "A <b>&", Timbers: []*geom.Timber{post, tie}, Joints: []*geom.Joint{j}}
}

func write(t *testing.T, f *geom.Frame, finds ...finding.Finding) []byte {
	t.Helper()
	out, err := model.JSON(f, finds)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// shape is the contract as an outsider would read it.
type shape struct {
	Format, Title string
	Timbers       []struct {
		ID, Role, Mark, Species string
		Length                  float64
		Section, Ideal          [2]float64
		Blank                   struct {
			Vertices [][3]float64
			Faces    [][]int
		}
		Placement [3][4]float64
		Cuts      []struct {
			Joint    string
			Vertices [][3]float64
			Faces    []struct {
				Loop []int
				Role string
			}
		}
		Bores []struct {
			Joint, Peg string
			From, To   [3]float64
			Diameter   float64
			Entry      *int `json:"entry_face"`
			Exit       *int `json:"exit_face"`
		}
		Volume float64 `json:"net_volume_mm3"`
		Weight float64 `json:"weight_kg"`
	}
	Joints []struct {
		ID, Kind, Into, Of, Mark string
		Moves                    []struct {
			Direction [3]float64
			Distance  float64
		}
		Pieces []any
		Pegs   []struct {
			ID       string
			From     [3]float64 `json:"axis_from"`
			To       [3]float64 `json:"axis_to"`
			Diameter float64
			Length   float64
			Offset   float64
			Draw     [3]float64 `json:"draw_direction"`
			Mortise  [3]float64 `json:"mortise_hole"`
			Tenon    [3]float64 `json:"tenon_hole"`
		}
	}
	Steps    []any
	Findings []struct {
		Severity, Rule  string
		Timbers, Joints []string
		Line, Column    int
		Text, Mend      string
	}
}

func read(t *testing.T, text []byte) shape {
	t.Helper()
	var s shape
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&s); err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return s
}

func TestTheContractCanBeReadStrictly(t *testing.T) {
	s := read(t, write(t, frame(), finding.Finding{Severity: finding.Stop, Rule: "overlap", Timbers: []string{"post-1"},
		At: finding.Pos{File: "f", Line: 12, Col: 5}, Text: "text", Mend: "mend"}))
	if s.Format != "pegwright-model/1" || s.Title != "A <b>&" || s.Steps == nil {
		t.Errorf("format %q, title %q, steps %v", s.Format, s.Title, s.Steps)
	}
	p := s.Timbers[0]
	if p.Weight != 48 { // 0.06 m³ x 800 kg/m³
		t.Errorf("weight %v kg, want 48", p.Weight)
	}
	if b := p.Bores[0]; b.Exit != nil || b.Entry == nil || *b.Entry != 1 {
		t.Errorf("entry and exit of a blind bore: %v %v", b.Entry, b.Exit)
	}
	f := s.Findings[0]
	if f.Severity != "stop" || f.Line != 12 || f.Column != 5 || f.Joints == nil {
		t.Errorf("finding %+v", f)
	}
	g := s.Joints[0].Pegs[0]
	for i := range 3 { // the contract: tenon_hole = mortise_hole - offset * draw_direction
		if want := g.Mortise[i] - g.Offset*g.Draw[i]; math.Abs(g.Tenon[i]-want) > 1e-9 {
			t.Errorf("tenon hole %v, want %v on axis %d", g.Tenon[i], want, i)
		}
	}
}

// The volume within closed face loops is a sixth of the sum of the triple
// products of a fan of triangles (divergence theorem); it comes out positive
// only when the loops run counter-clockwise seen from outside.
func TestLoopsRunCounterClockwise(t *testing.T) {
	p := read(t, write(t, frame())).Timbers[0]
	var cut [][]int
	for _, f := range p.Cuts[0].Faces {
		cut = append(cut, f.Loop)
	}
	for _, c := range []struct {
		name  string
		v     [][3]float64
		loops [][]int
		want  float64
	}{
		{"blank", p.Blank.Vertices, p.Blank.Faces, 2000 * 152.4 * 203.2},
		{"mortise", p.Cuts[0].Vertices, cut, 150 * 40 * 110},
	} {
		six := 0.0
		for _, l := range c.loops {
			for i := 1; i+1 < len(l); i++ {
				a, b, d := c.v[l[0]], c.v[l[i]], c.v[l[i+1]]
				six += a[0]*(b[1]*d[2]-b[2]*d[1]) - a[1]*(b[0]*d[2]-b[2]*d[0]) + a[2]*(b[0]*d[1]-b[1]*d[0])
			}
		}
		if math.Abs(six/6-c.want) > 1e-6*c.want {
			t.Errorf("%s encloses %v mm³, want %v", c.name, six/6, c.want)
		}
	}
}

// The placement's matrix carries timber axes to frame axes: the point (1, 2, 3)
// of a timber whose x runs up, y east and z north is 2 east, 3 north, 1 up.
func TestPlacement(t *testing.T) {
	m := read(t, write(t, frame())).Timbers[0].Placement
	p := [4]float64{1, 2, 3, 1}
	want := [3]float64{10 + 2, 3, 30 + 1}
	for i, row := range m {
		got := 0.0
		for k := range row {
			got += row[k] * p[k]
		}
		if math.Abs(got-want[i]) > 1e-6 {
			t.Errorf("row %d gives %v, want %v", i, got, want[i])
		}
	}
}

func TestNumbersAreShortAndPlain(t *testing.T) {
	f := frame()
	f.Timbers[0].Length = 0.1 + 0.2
	f.Timbers[0].Ideal = [2]float64{-1e-9, 1e15}
	text := string(write(t, f))
	for _, want := range []string{`"length":0.3,`, `"ideal":[0,1000000000000000]`, `"title": "A <b>&"`} {
		if !strings.Contains(text, want) {
			t.Errorf("no %s in\n%s", want, text)
		}
	}
	if bad := regexp.MustCompile(`[-+]0[,\]}]|[0-9][eE][-+]?[0-9]`).FindString(text); bad != "" {
		t.Errorf("%q stands in the model", bad)
	}
}

func TestWhatIsNotANumberIsRefused(t *testing.T) {
	f := frame()
	f.Timbers[0].Cuts[0].Solid.V[0].X = math.Inf(1)
	if _, err := model.JSON(f, nil); err == nil {
		t.Error("an infinite coordinate was written")
	}
}

func TestSameBytes(t *testing.T) {
	a, b := write(t, frame()), write(t, frame())
	if !bytes.Equal(a, b) {
		t.Error("the same frame gave different bytes")
	}
}

func TestFindingsAlone(t *testing.T) {
	for _, finds := range [][]finding.Finding{nil, {{Text: "a"}, {Text: "b"}}} {
		out, err := model.Findings(finds)
		if err != nil {
			t.Fatal(err)
		}
		var doc struct {
			Format   string
			Findings []map[string]any
		}
		if err := json.Unmarshal(out, &doc); err != nil || doc.Format != "pegwright-findings/1" || len(doc.Findings) != len(finds) || doc.Findings == nil {
			t.Errorf("%v: %s", err, out)
		}
	}
}
