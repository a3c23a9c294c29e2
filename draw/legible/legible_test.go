package legible

import (
	"math"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// rules are those of the planted sheets, with every rule in force.
func rules() Rules {
	box := draw.Box{Min: vec.P{X: 10, Y: 10}, Max: vec.P{X: 190, Y: 270}}
	return Rules{Items: box, Words: box, Least: 3.5, Figures: 2.5, Lines: true, Holes: true, Together: true,
		Loose: map[string]bool{"title": true}, Apart: map[string]bool{"border": true}}
}

// slanted writes two lines that rise at 45°, the second apart mm below the first.
func slanted(s *draw.Sheet, one, two string, apart float64) {
	at, down := vec.P{X: 60, Y: 110}, vec.P{X: math.Sqrt2 / 2, Y: -math.Sqrt2 / 2}
	s.Text(at, 3.5, one).Rot = math.Pi / 4
	s.Text(at.Add(down.Mul(apart)), 3.5, two).Rot = math.Pi / 4
}

// plants are faults, by the words that the checker must find for them, and
// nothing else; under "" stands what is right.
var plants = []struct {
	want  string
	plant func(s *draw.Sheet)
}{
	{"", func(s *draw.Sheet) { s.Text(vec.P{X: 50, Y: 100}, 3.5, `fits 6 1/2"`) }},
	{"", func(s *draw.Sheet) {
		s.Text(vec.P{X: 50, Y: 100}, 3.5, "one")
		s.Text(vec.P{X: 50, Y: 105.5}, 3.5, "two")
	}},
	{"", func(s *draw.Sheet) { // low lettering of the title block
		s.Text(vec.P{X: 50, Y: 100}, 2.5, "one").Layer = "title"
	}},
	{"", func(s *draw.Sheet) { // a narrow line, a line beside, a border
		s.Text(vec.P{X: 50, Y: 100}, 3.5, "word")
		s.Line(draw.Dimension, vec.P{X: 40, Y: 101}, vec.P{X: 90, Y: 102})
		s.Line(draw.Part, vec.P{X: 40, Y: 98}, vec.P{X: 90, Y: 98})
		s.Line(draw.FrameLine, vec.P{X: 40, Y: 101}, vec.P{X: 90, Y: 102}).Layer = "border"
	}},
	{"", func(s *draw.Sheet) { // a wide line passes the corner of a turned text
		t := s.Text(vec.P{X: 50, Y: 100}, 3.5, "a word on the slant")
		t.Rot = 0.7
		s.Line(draw.Part, vec.P{X: 60, Y: 100}, vec.P{X: 80, Y: 118})
	}},
	{"", func(s *draw.Sheet) {
		s.Circle(draw.Part, vec.P{X: 70, Y: 100}, 5)
		s.Text(vec.P{X: 76, Y: 99}, 3.5, "hole")
	}},
	{"overlap", func(s *draw.Sheet) {
		s.Text(vec.P{X: 50, Y: 100}, 3.5, "one")
		s.Text(vec.P{X: 53, Y: 101}, 3.5, "two")
	}},
	{"", func(s *draw.Sheet) { // two lines of one name on the slant: only the upright boxes about them meet
		slanted(s, "two lines of", "one long name", 5.5)
	}},
	{"", func(s *draw.Sheet) { // a word on the slant passes a hole
		s.Circle(draw.Part, vec.P{X: 70, Y: 100}, 5)
		s.Text(vec.P{X: 67, Y: 84}, 3.5, "beside the hole").Rot = math.Pi / 4
	}},
	{"overlap", func(s *draw.Sheet) { // the same too close together
		slanted(s, "two lines of", "one long name", 4)
	}},
	{"overlap", func(s *draw.Sheet) { // an upright word on one that slants
		s.Text(vec.P{X: 50, Y: 100}, 3.5, "a word on the slant").Rot = math.Pi / 4
		s.Text(vec.P{X: 57, Y: 112}, 3.5, "upright")
	}},
	{"lies on a hole", func(s *draw.Sheet) {
		s.Circle(draw.Part, vec.P{X: 70, Y: 100}, 5)
		s.Text(vec.P{X: 62, Y: 92}, 3.5, "on the hole").Rot = math.Pi / 4
	}},
	{"overlap", func(s *draw.Sheet) {
		s.Text(vec.P{X: 50, Y: 100}, 3.5, "upright").Rot = 1.5707963
		s.Text(vec.P{X: 44, Y: 106}, 3.5, "across")
	}},
	{"leaves the border", func(s *draw.Sheet) { s.Text(vec.P{X: 170, Y: 100}, 3.5, "far too long a word for here") }},
	{"item leaves", func(s *draw.Sheet) { s.Line(draw.Part, vec.P{X: 9, Y: 101}, vec.P{X: 90, Y: 102}) }},
	{"3.00 mm high", func(s *draw.Sheet) { s.Text(vec.P{X: 50, Y: 100}, 3, "low") }},
	{"figures of", func(s *draw.Sheet) { s.Text(vec.P{X: 50, Y: 100}, 2.5, `6 1/2"`).Layer = "title" }},
	{"no glyph", func(s *draw.Sheet) { s.Text(vec.P{X: 50, Y: 100}, 3.5, "漢") }},
	{"claims", func(s *draw.Sheet) { s.Text(vec.P{X: 50, Y: 100}, 3.5, "Safe to stand on") }},
	{"runs through", func(s *draw.Sheet) {
		s.Text(vec.P{X: 50, Y: 100}, 3.5, "struck")
		s.Line(draw.Part, vec.P{X: 40, Y: 101}, vec.P{X: 90, Y: 102})
	}},
	{"runs through", func(s *draw.Sheet) { // by the closing side of an outline
		s.Text(vec.P{X: 50, Y: 100}, 3.5, "struck")
		s.Poly(draw.Part, true, vec.P{X: 40, Y: 101}, vec.P{X: 60, Y: 150}, vec.P{X: 90, Y: 102})
	}},
	{"lies on a hole", func(s *draw.Sheet) {
		s.Circle(draw.Part, vec.P{X: 70, Y: 100}, 5)
		s.Text(vec.P{X: 71, Y: 99}, 3.5, "hole")
	}},
	{"", func(s *draw.Sheet) { // two groups apart, and a heading
		s.Text(vec.P{X: 50, Y: 100}, 3.5, "one").Group = "a"
		s.Text(vec.P{X: 90, Y: 100}, 5, "two").Group = "b"
		s.Text(vec.P{X: 50, Y: 106}, 5, "head").Bold = true
	}},
	{"lane is lettered 3.5 mm high", func(s *draw.Sheet) {
		s.Text(vec.P{X: 50, Y: 100}, 3.5, "one").Group = "lane"
		s.Text(vec.P{X: 90, Y: 140}, 5, "two").Group = "lane"
	}},
	{`"level", 3.5 mm high, stands beside`, func(s *draw.Sheet) {
		s.Text(vec.P{X: 50, Y: 100}, 3.5, "level")
		s.Text(vec.P{X: 65, Y: 100}, 5, "large")
	}},
	{`"over", 5 mm high, stands beside`, func(s *draw.Sheet) {
		s.Text(vec.P{X: 50, Y: 100}, 5, "over")
		s.Text(vec.P{X: 50, Y: 94}, 3.5, "small")
	}},
}

// The checker finds every kind of fault that is planted, and no other.
func TestFindsPlantedFaults(t *testing.T) {
	for i, c := range plants {
		s := draw.NewSheet("k", "planted", "t", 200, 280)
		c.plant(s)
		got := rules().Faults(s)
		switch {
		case c.want == "" && len(got) > 0:
			t.Errorf("%d: found %q where all is right", i, got)
		case c.want == "":
		case len(got) != 1 || !strings.HasPrefix(got[0], "planted: ") || !strings.Contains(got[0], c.want):
			t.Errorf("%d %q: found %q", i, c.want, got)
		}
	}
}

func TestSparse(t *testing.T) {
	field := draw.Box{Max: vec.P{X: 180, Y: 240}}
	apart := map[string]bool{"border": true}
	s := draw.NewSheet("k", "planted", "t", 200, 280)
	s.Rect(draw.FrameLine, field).Layer = "border"
	s.Line(draw.Part, vec.P{X: 60, Y: 10}, vec.P{X: 119, Y: 200})
	if len(Sparse(s, field, apart)) != 1 {
		t.Error("59 mm of 180 are not taken for nearly empty")
	}
	s.Line(draw.Part, vec.P{X: 60, Y: 10}, vec.P{X: 121, Y: 10})
	if got := Sparse(s, field, apart); got != nil {
		t.Errorf("61 of 180, 190 of 240: %q", got)
	}
}
