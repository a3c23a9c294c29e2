package list

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

const in = 25.4

// stick is a 6 x 8 timber of the given length in inches, 800 kg/m³ as cut.
func stick(id string, length float64) *geom.Timber {
	w, _ := wood.Lookup("eastern white pine")
	s := [2]float64{6 * in, 8 * in}
	return &geom.Timber{
		ID: id, Role: "post", Mark: "IIII", Wood: w, Length: length * in, Section: s, Ideal: s,
		Blank: geom.BlankOf(length*in, s, s), Place: vec.Identity,
		FaceNames: [4]string{"outside", "toward bent 1", "inside", "away"},
		NetVolume: 1e8, Density: 800, DryDensity: 400,
	}
}

func pegWood() wood.Wood {
	w, _ := wood.Lookup("northern red oak")
	return w
}

// frame has two sticks, one with bores, and one joint with three pegs.
func frame(u measure.Units) *geom.Frame {
	long, short := stick("post-long", 142), stick("post-short", 94)
	long.Bores = []geom.Bore{
		// through, from face 2 to face 4, 40 in from the start and 2 in off face 1
		{Joint: "b", From: vec.V{X: 40 * in, Y: 2 * in, Z: -8}, To: vec.V{X: 40 * in, Y: 2 * in, Z: 8*in + 8}, Diameter: in, Entry: 2, Exit: 4},
		// blind, into face 3, 10 in from the start, 3 in off face 2, 4 in deep
		{Joint: "c", From: vec.V{X: 10 * in, Y: 6*in + 8, Z: 3 * in}, To: vec.V{X: 10 * in, Y: 2 * in, Z: 3 * in}, Diameter: in, Entry: 3},
		// through face 1, nearer the start than the first
		{Joint: "a", From: vec.V{X: 5 * in, Y: -8, Z: 4 * in}, To: vec.V{X: 5 * in, Y: 6*in + 8, Z: 4 * in}, Diameter: in, Entry: 1, Exit: 3},
	}
	p := geom.Peg{Bore: in, Length: 10 * in, Head: in, Lead: 3 * in, Entry: 1, Exit: 3}
	q := p
	q.Length = 9 * in
	return &geom.Frame{
		Title: "Test", Units: u, Timbers: []*geom.Timber{short, long},
		Joints: []*geom.Joint{{ID: "j", Into: long, Of: short, Pegs: []geom.Peg{p, q, p}}},
		Stock:  geom.Stock{Timber: "eastern white pine", Peg: "northern red oak", PegMC: 8, PegDry: "dry", PegWood: pegWood()},
		Offer:  geom.Offer{Lengths: []float64{96 * in, 144 * in, 192 * in}, Kerf: in / 8, Billet: [2]float64{6 * in, 24 * in}, LeadScrew: 0.75 * in},
	}
}

// A 6 x 8, 12 ft long, is 48 board feet: 6 x 8 x 12 / 12, the definition of the
// board foot in NIST PS 20, American Softwood Lumber Standard.
func TestBoardFeet(t *testing.T) {
	for _, c := range []struct{ a, b, feet, want float64 }{
		{6, 8, 12, 48}, {1, 12, 1, 1}, {2, 4, 8, 16. / 3}, {8, 8, 16, 256. / 3},
	} {
		got := BoardFeet([2]float64{c.a * in, c.b * in}, c.feet*12*in)
		if math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v x %v, %v ft: %v board feet, want %v", c.a, c.b, c.feet, got, c.want)
		}
	}
}

// Finished 142 in with 1 in of trim at each end is a 12 ft stick: 48 board
// feet; 94 in is an 8 ft stick: 32. The mass is 0.1 m³ x 800 kg/m³ = 80 kg each,
// which is 176.37 lb (80 / 0.45359237).
func TestTimbers(t *testing.T) {
	l := Timbers(frame(measure.Imperial))
	if l.Rows[0][0] != "post-long" || l.Rows[1][0] != "post-short" {
		t.Errorf("not the longest first: %v", l.Rows)
	}
	at := columns(l)
	row := l.Rows[0]
	for name, want := range map[string]string{
		"section": "6 x 8", "finished length": `11'-10"`, "rough length": `12'-0"`,
		"volume with trim": "48.0", "weight as cut": "176.4", "mark": "IIII",
	} {
		if got := row[at[name]]; got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
	if want := "2 timbers: 80 board feet with trim, 353 lb as cut"; l.Totals[0] != want {
		t.Errorf("totals %q, want %q", l.Totals[0], want)
	}
	m := Timbers(frame(measure.Metric))
	// 142 in are 3606.8 mm; with 25 mm at each end 0.1524 x 0.2032 x 3.6568 m is
	// 0.11324 m³.
	if got := m.Rows[0][columns(m)["volume with trim"]]; got != "0.113" {
		t.Errorf("volume %q m³, want 0.113", got)
	}
	if got := m.Values[0][columns(m)["rough length"]].(float64); math.Abs(got-3656.8) > 1e-9 {
		t.Errorf("rough length %v mm, want 3656.8", got)
	}
}

func columns(t Table) map[string]int {
	at := map[string]int{}
	for i, c := range t.Columns {
		at[c.Name] = i
	}
	return at
}

func TestPegsAreCountedBySize(t *testing.T) {
	l := Pegs(frame(measure.Imperial), nil)
	at := columns(l)
	if len(l.Rows) != 2 {
		t.Fatalf("%d sizes, want 2", len(l.Rows))
	}
	for i, want := range []struct {
		length string
		count  int
	}{{`9"`, 1}, {`10"`, 2}} {
		if l.Rows[i][at["length"]] != want.length || l.Values[i][at["needed"]] != want.count {
			t.Errorf("row %d: %v, want %v", i, l.Rows[i], want)
		}
		if l.Values[i][at["make"]] != want.count+l.Values[i][at["spares"]].(int) {
			t.Errorf("row %d: to make is not needed and spares", i)
		}
	}
	// The square to rive holds the finished octagon, and the octagon's flats
	// stay under the bore so that it enters (common practice, no source).
	for _, v := range l.Values {
		most := v[at["most flats"]].(float64) * in
		if v[at["rive square"]].(float64) <= most || most >= in {
			t.Errorf("rive %v mm for flats %v mm in a bore of %v mm", v[at["rive square"]], most, in)
		}
	}
}

func TestBoresAreLaidOutFaceByFace(t *testing.T) {
	l := Bores(frame(measure.Imperial), nil)
	at := columns(l)
	want := [][2]string{
		// entry face, from start | off arris, depth, each by hand from the frame above
		{"1 outside|5\"", "4\" 1/2 through 6\" 3"},
		{"2 toward bent 1|3'-4\"", "2\" 1/2 through 8\" 4"},
		{"3 inside|10\"", "3\" 2/3 blind 4\" none"},
	}
	if len(l.Rows) != len(want) {
		t.Fatalf("%d bores, want %d", len(l.Rows), len(want))
	}
	for i, r := range l.Rows {
		a := r[at["entry face"]] + "|" + r[at["from start end"]]
		b := strings.Join([]string{r[at["off arris"]], r[at["arris"]], r[at["bore"]], r[at["depth"]], r[at["exit face"]]}, " ")
		if a != want[i][0] || b != want[i][1] || r[at["no."]] != strconv.Itoa(i+1) {
			t.Errorf("bore %d: %q %q, want %v", i+1, a, b, want[i])
		}
	}
}

// A bore that leans 30° from square passes thickness / cos 30° of wood and
// leaves the far face thickness · tan 30° further along: plane trigonometry.
func TestLocateALeaningBore(t *testing.T) {
	s := stick("x", 60)
	lean := math.Pi / 6
	from := vec.V{X: 20 * in, Y: 3 * in}
	d := vec.V{X: math.Sin(lean), Z: math.Cos(lean)}
	b := geom.Bore{From: from.Sub(d.Mul(30)), To: from.Add(d.Mul(500)), Diameter: in, Entry: 2, Exit: 4}
	w := Locate(s, b)
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"along", w.Along, 20 * in}, {"across", w.Across, 3 * in},
		{"depth", w.Depth, 8 * in / math.Cos(lean)}, {"lean", w.Lean, 30},
	} {
		if math.Abs(c.got-c.want) > 1e-6 {
			t.Errorf("%s %v, want %v", c.what, c.got, c.want)
		}
	}
}

func TestTextIsAligned(t *testing.T) {
	for _, u := range []measure.Units{measure.Imperial, measure.Metric} {
		for _, l := range Of(frame(u), nil) {
			if len(l.Rows) == 0 {
				continue // tensions: the fixture has no tenon
			}
			lines := strings.Split(l.Text(), "\n")
			head, row := lines[2], lines[4]
			for i, c := range l.Columns {
				before, _, _ := strings.Cut(head, c.Name)
				end := utf8.RuneCountInString(before + c.Name)
				if c.Numeric() && l.Rows[0][i] != "" && (len([]rune(row)) < end || strings.HasSuffix(string([]rune(row)[:end]), " ")) {
					t.Errorf("%s: column %d does not end under its heading:\n%s\n%s", l.Name, i, head, row)
				}
			}
			for _, line := range lines {
				if strings.TrimRight(line, " ") != line {
					t.Errorf("%s: trailing spaces in %q", l.Name, line)
				}
			}
		}
	}
}

// The CSV is read back with the standard library's reader.
func TestCSV(t *testing.T) {
	f := frame(measure.Imperial)
	f.Timbers[1].Role = `=cmd|'/c calc',"x"` + "\n"
	rows, err := csv.NewReader(bytes.NewReader(Timbers(f).CSV())).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 3 {
		t.Fatalf("%d rows, want a heading and two timbers", len(rows))
	}
	if rows[0][5] != "finished length (in)" || rows[1][5] != "142" || rows[1][4] != "6 x 8" {
		t.Errorf("heading %q, length %q, section %q", rows[0][5], rows[1][5], rows[1][4])
	}
	if want := "'" + f.Timbers[1].Role; rows[1][2] != want {
		t.Errorf("role %q, want %q: a spreadsheet must not run it", rows[1][2], want)
	}
}

func TestJSONHasMillimetresAndOneShape(t *testing.T) {
	text, err := JSON(Of(frame(measure.Imperial), nil))
	if err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Format string
		Lists  []struct {
			Name    string
			Columns []struct{ Name, Unit string }
			Rows    [][]any
		}
	}
	if err := json.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	if doc.Format != "pegwright-lists/1" || len(doc.Lists) != len(Names()) {
		t.Fatalf("format %q with %d lists", doc.Format, len(doc.Lists))
	}
	for i, l := range doc.Lists {
		if l.Name != Names()[i] {
			t.Errorf("list %d is %q", i, l.Name)
		}
		for _, r := range l.Rows {
			if len(r) != len(l.Columns) {
				t.Errorf("%s: %d cells under %d headings", l.Name, len(r), len(l.Columns))
			}
		}
	}
	if got := doc.Lists[0].Rows[0][5]; got != 142*in || doc.Lists[0].Columns[5].Unit != "mm" {
		t.Errorf("length %v %s, want %v mm", got, doc.Lists[0].Columns[5].Unit, 142*in)
	}
}

func TestJSONRefusesWhatIsNotANumber(t *testing.T) {
	f := frame(measure.Metric)
	f.Timbers[0].NetVolume = math.NaN()
	if _, err := JSON(Of(f, nil)); err == nil {
		t.Error("a weight that is not a number was written")
	}
}

func TestAnEmptyFrame(t *testing.T) {
	f := &geom.Frame{}
	for _, l := range Of(f, nil) {
		if l.Text() == "" || len(l.CSV()) == 0 || len(l.Rows) != 0 {
			t.Errorf("%s of an empty frame: %q", l.Name, l.Text())
		}
	}
}

// Long texts run on in further lines of their column: every word is there, in
// its order, and no line is wider than a column may be.
func TestTextRunsOn(t *testing.T) {
	var words []string
	for i := range 60 {
		words = append(words, strings.Repeat("x", 1+i%9))
	}
	l := Table{Title: "T", Columns: []Column{{Name: "what"}}, Rows: [][]string{{strings.Join(words, " ")}}}
	lines := strings.Split(l.Text(), "\n")[4:]
	if got := strings.Fields(strings.Join(lines, " ")); !slices.Equal(got, words) {
		t.Errorf("words are %v", got)
	}
	for _, line := range lines {
		if len(line) > widest {
			t.Errorf("%d columns: %s", len(line), line)
		}
	}
}
