package sheet

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/scene"
	"pegwright/draw/sheet/timber"
	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/geom/measure"
	"pegwright/samples/trial"
)

// listRows reads the rows of one list out of the JSON of all, each by the names
// of its columns.
func listRows(t *testing.T, f *geom.Frame, name string) []map[string]any {
	t.Helper()
	text, err := list.JSON(list.Of(f, nil))
	if err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Lists []struct {
			Name    string
			Columns []struct{ Name string }
			Rows    [][]any
		}
	}
	if err := json.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	var out []map[string]any
	for _, l := range doc.Lists {
		for _, r := range l.Rows {
			row := map[string]any{}
			for c, v := range r {
				row[l.Columns[c].Name] = v
			}
			if l.Name == name {
				out = append(out, row)
			}
		}
	}
	return out
}

var (
	weighs   = regexp.MustCompile(`^about (\d+) (lb|kg)$`)
	balances = regexp.MustCompile(`^about (.+) from 0$`)
)

// stated finds what a pattern captures in the texts of the sheets.
func stated(sheets []*draw.Sheet, p *regexp.Regexp) string {
	for _, s := range sheets {
		for _, it := range s.Items {
			if x, ok := it.(*draw.Text); ok {
				if m := p.FindStringSubmatch(x.S); m != nil {
					return m[1]
				}
			}
		}
	}
	return ""
}

// The weight and the balance point on a stick's sheets are those of the list in
// the JSON, to half of the step that is printed: 1 lb or kg, 1/2 in or 10 mm.
func TestTimberSheetsWeighAsTheListDoes(t *testing.T) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		rows := map[string]map[string]any{}
		for _, r := range listRows(t, f, "lifting") {
			rows[fmt.Sprint(r["what"])] = r
		}
		for _, g := range scene.AllSticks(f) {
			id := g.Timbers[0].ID
			sheets := timber.Sheets(f, g, nil)
			weight, err := strconv.ParseFloat(stated(sheets, weighs), 64)
			if err != nil || rows[id] == nil {
				t.Fatalf("%s: %s has no weight or no row: %v", name, id, err)
			}
			if w := rows[id]["weight green"].(float64); math.Abs(w-weight) > 0.5+1e-6 {
				t.Errorf("%s: %s weighs %g on its sheet and %g in the list", name, id, weight, w)
			}
			step := 12.7
			if f.Units == measure.Metric {
				step = 10
			}
			at, err := measure.ParseLength(strings.TrimSpace(stated(sheets, balances)), measure.Scope{Unit: shownUnit(f)})
			if b := rows[id]["balance along"].(float64); err != nil || math.Abs(at-b) > step/2+1e-3 {
				t.Errorf("%s: %s balances at %g on its sheet and %g in the list (%v)", name, id, at, b, err)
			}
		}
	}
}

func shownUnit(f *geom.Frame) measure.Unit {
	word := "in"
	if f.Units == measure.Metric {
		word = "mm"
	}
	u, _ := measure.ParseUnit(word)
	return u
}

// The lead that a drawbore sheet draws has the tip and the taper that the list
// of pegs has for a peg of that bore and length.
func TestDrawboreSheetsTaperAsTheListDoes(t *testing.T) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		rows := listRows(t, f, "pegs")
		n := 0
		for _, g := range scene.Groups(f) {
			d, ok := newBored(f, g)
			if !ok || !d.enters {
				continue
			}
			n++
			found := false
			for _, r := range rows {
				found = found || isLength(r["bore"], d.p.Bore) && isLength(r["length"], d.p.Length) && isLength(r["tip Ø"], d.lead.Tip) && isLength(r["taper length"], d.lead.Length)
			}
			if !found {
				t.Errorf("%s: no row of the list has the tip %.2f and the taper %.2f of %s", name, d.lead.Tip, d.lead.Length, d.p.ID)
			}
		}
		if n == 0 {
			t.Errorf("%s: no drawbore sheet was looked at", name)
		}
	}
}

func isLength(v any, mm float64) bool {
	x, ok := v.(float64)
	return ok && math.Abs(x-mm) < 0.01
}
