package timber

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/scene"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/samples/trial"
)

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
		for _, r := range tidy.ListRows(t, f, "lifting") {
			rows[fmt.Sprint(r["what"])] = r
		}
		for _, g := range scene.AllSticks(f) {
			id := g.Timbers[0].ID
			sheets := Sheets(f, g, nil)
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
