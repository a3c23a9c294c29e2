package permit

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/legible"
	"pegwright/draw/scene"
	"pegwright/draw/sheet/plan"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/geom/measure"
	"pegwright/geom/strength"
	"pegwright/geom/vec"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// Criteria are printed as written, and what a reviewer looks for beyond them
// has a line to write on (the list of what is asked for: common practice).
func TestPermitPrintsCriteriaAsWritten(t *testing.T) {
	f := trial.Sample(t, samples.Default())
	f.Criteria = []geom.Info{{Name: "ground snow load", Text: "p_g = 50 psf (town office)"}, {Name: "Wind Speed", Text: "115 mph"},
		{Name: "frost depth", Text: "not stated"}, {Name: "roof snow, drifted", Text: "by others"}}
	sheets := Sheets(f, plan.Of(f), scene.Groups(f))
	text := legible.Line(sheets[:1])
	for _, c := range f.Criteria {
		if !strings.Contains(text, c.Name+" "+c.Text) && !(strings.Contains(text, c.Name) && strings.Contains(text, c.Text)) {
			t.Errorf("%q: %q is not printed as written", c.Name, c.Text)
		}
	}
	want := map[string]bool{"wind exposure": true, "seismic category": true, "soil bearing": true, "dead loads": true, "live loads": true,
		"species and grade": true, "code and edition": true, "designer of record": true, "ground snow load": false, "wind speed": false, "frost depth": false}
	open := strings.Join(unstated(f), "|") + "|"
	blanks := 0
	for _, it := range sheets[0].Items {
		if it.Head().Mark == "blank" {
			blanks++
		}
	}
	for name, is := range want {
		if strings.Contains(open, name+"|") != is {
			t.Errorf("%s is left open: %v", name, !is)
		}
		if is && !strings.Contains(text, name) {
			t.Errorf("%s is not on the cover", name)
		}
	}
	if least := len(unstated(f)) + 1; blanks < least { // and one for the frost depth
		t.Errorf("%d lines to write on, want %d", blanks, least)
	}
	if !strings.Contains(text, "not reviewed by an engineer unless sealed") {
		t.Error("the cover does not say that nobody has reviewed it")
	}
}

// A criterion is about another only where its words are.
func TestCriteriaAreKnownByTheirWords(t *testing.T) {
	known := map[string]string{}
	for _, c := range criteria() {
		known[c.name] = strings.Join(c.known, ",")
	}
	for _, x := range []struct {
		criterion, stated string
		is                bool
	}{
		{"ground snow load", "Ground snow load, pg", true},
		{"ground snow load", "roof snow load", false},
		{"wind speed", "wind speed Vult", true},
		{"wind speed", "wind exposure", false},
		{"wind exposure", "exposure category", true},
		{"dead loads", "dead load, roof", true},
		{"code and edition", "building code", true},
		{"code and edition", "barcode", false},
		{"designer of record", "engineer", true},
	} {
		c := criterion{x.criterion, strings.Split(known[x.criterion], ",")}
		if c.about(x.stated) != x.is {
			t.Errorf("%q about %q: %v", x.stated, x.criterion, !x.is)
		}
	}
}

// The reference values on the sheet are those of the list, which the command
// line writes as JSON, and of the joints that the row counts; a joint that has
// none says why.
func TestPermitCapacitiesAreTheList(t *testing.T) {
	for _, name := range samples.Names() {
		f := trial.Sample(t, name)
		data, err := list.JSON(list.Of(f, nil))
		if err != nil {
			t.Fatal(err)
		}
		want := capacitiesIn(t, data)
		p := &set{f: f, kinds: jointKinds(scene.Groups(f))}
		got := map[string]int{}
		joints := 0
		for _, r := range p.tableRows() {
			n := 0
			fmt.Sscan(r[2], &n)
			joints += n
			if r[6] != "–" {
				got[r[5]+" "+r[6]] += n
				if !strings.Contains(r[8], strength.Words) {
					t.Errorf("%s: %v has a value and no status", name, r)
				}
			} else if !strings.Contains(r[8], "no reference value") {
				t.Errorf("%s: %v has no value and no reason", name, r)
			}
		}
		if joints != len(f.Joints) {
			t.Errorf("%s: the table counts %d joints of %d", name, joints, len(f.Joints))
		}
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s: sheet %v, list %v", name, got, want)
		}
	}
}

// capacitiesIn counts the joints by the values of the JSON list, one peg and
// all, to the pound or to three decimals in kilonewtons.
func capacitiesIn(t *testing.T, data []byte) map[string]int {
	t.Helper()
	var doc struct {
		Lists []struct {
			Name    string
			Columns []struct{ Name, Unit string }
			Rows    [][]any
		}
	}
	if err := json.Unmarshal(data, &doc); err != nil {
		t.Fatal(err)
	}
	for _, l := range doc.Lists {
		if l.Name != "capacities" {
			continue
		}
		at, form := map[string]int{}, "%.0f"
		for i, c := range l.Columns {
			if at[c.Name] = i; c.Unit == "kN" {
				form = "%.3f"
			}
		}
		out := map[string]int{}
		for _, r := range l.Rows {
			if all, ok := r[at["all pegs"]].(float64); ok {
				out[fmt.Sprintf(form+" "+form, r[at["one peg"]], all)] += int(r[at["joints"]].(float64))
			}
		}
		return out
	}
	t.Fatalf("no list of capacities in %.300s", data)
	return nil
}

// The permit set of every sample keeps its layout, has one cover sheet, and
// tables every step of the load path that its roles have, with empty cells.
func TestPermitOfAllSamples(t *testing.T) {
	for _, name := range samples.Names() {
		f := trial.Sample(t, name)
		sheets := Sheets(f, plan.Of(f), scene.Groups(f))
		tidy.Write(t, "permit-"+name, sheets)
		ids := map[string]bool{}
		for i, s := range sheets {
			block.Number(s, i+1, len(sheets), "0123456789ab")
			tidy.Check(t, s)
			if ids[s.ID] || s.Kind != "permit" || !strings.HasPrefix(s.Title, fmt.Sprintf("P%d ", i+1)) {
				t.Errorf("%s: sheet %d is %s %q %q", name, i+1, s.Kind, s.ID, s.Title)
			}
			ids[s.ID] = true
		}
		text := legible.Line(sheets)
		for _, step := range [][2]string{{"rafter", "plate"}, {"plate", "post"}, {"post", "sill"}} {
			row := step[0] + " – " + step[1]
			if there := anyOf(f, step[0]) && anyOf(f, step[1]); strings.Contains(text, row) != there {
				t.Errorf("%s: a row %q: %v, the roles are there: %v", name, row, !there, there)
			}
		}
		for _, must := range []string{"– foundation", "Lateral system", "connector", "Whose word counts", "Seal and signature"} {
			if !strings.Contains(text, must) && !(must == "– foundation" && !anyOf(f, "sill") && len(f.Supports) == 0) {
				t.Errorf("%s: no %q", name, must)
			}
		}
	}
}

// The places of support of the load path are those of the frame, each once,
// whatever kind of sill stands on them.
func TestFoundationCountsEverySupport(t *testing.T) {
	for _, name := range samples.Names() {
		f := trial.Sample(t, name)
		n := 0
		p := &set{f: f}
		for _, r := range p.path() {
			if strings.HasSuffix(r[0], "– foundation") && r[2] != "" {
				x, err := strconv.Atoi(r[2])
				if err != nil {
					t.Fatal(err)
				}
				n += x
			}
		}
		if n != len(f.Supports) {
			t.Errorf("%s: the load path counts %d places of support of %d", name, n, len(f.Supports))
		}
	}
}

// The schedule counts every timber once, and its sections are those of the
// timbers: counted here by hand over the frame.
func TestScheduleCountsEveryTimber(t *testing.T) {
	for _, name := range samples.Names() {
		f := trial.Sample(t, name)
		got, want := map[string]int{}, map[string]int{}
		for _, r := range memberRows(f) {
			n := 0
			fmt.Sscan(r[1], &n)
			got[r[0]+" "+r[2]] += n
		}
		for _, b := range f.Timbers {
			lo, hi := min(b.Section[0], b.Section[1]), max(b.Section[0], b.Section[1])
			if f.Units == measure.Metric {
				want[fmt.Sprintf("%s %.5g x %.5g", b.Role, lo, hi)]++
			} else {
				want[fmt.Sprintf("%s %.5g x %.5g", b.Role, lo/25.4, hi/25.4)]++
			}
		}
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s: schedule %v, frame %v", name, got, want)
		}
	}
}

// Piers stand on the drawing where the frame has them: the distance between the
// middles of two, over the scale, is theirs.
func TestFoundationIsToScale(t *testing.T) {
	n := 0
	for _, name := range samples.Names() {
		f := trial.Sample(t, name)
		if len(f.Supports) < 2 {
			continue
		}
		g := newGround(f)
		s, field := block.ForFrame(f, "permit", "x", block.TitleFor(f, "x", "", ""))
		g.choose(f, g.drawing(field))
		g.draw(s, g.drawing(field))
		var on []vec.P
		for _, it := range s.Items {
			if p, ok := it.(*draw.Path); ok && p.Mark == "pier" {
				on = append(on, p.Pts[0].Lerp(p.Pts[2], 0.5))
			}
		}
		if len(on) != len(f.Supports) {
			t.Fatalf("%s: %d piers drawn of %d", name, len(on), len(f.Supports))
		}
		for i, x := range f.Supports {
			a := vec.P{X: x.At.X - f.Supports[0].At.X, Y: x.At.Y - f.Supports[0].At.Y}
			if b := on[i].Sub(on[0]).Mul(1 / g.k); a.Dist(b) > 1e-6 {
				t.Errorf("%s: pier %d stands at %v, drawn at %v", name, i+1, a, b)
			}
		}
		n++
	}
	if n == 0 {
		t.Fatal("no sample stands on piers")
	}
}
