package sheet

import (
	"strings"
	"testing"

	"pegwright/draw/sheet/plan"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/samples/trial"
)

// Plans and elevations keep their layout in other frames, and tell every timber's
// name.
func TestOtherFrames(t *testing.T) {
	trial.EachOther(t, func(t *testing.T, f *geom.Frame) {
		surveys := append(Apart(f), plan.Of(f).Sheets()...)
		all := tidy.TextsOn(surveys, "")
		for _, x := range f.Timbers {
			if !strings.Contains(all, "\n"+x.ID+"\n") {
				t.Errorf("%s is not named", x.ID)
			}
		}
		tidy.Sheets(t, surveys)
	})
}

// Every timber is named on a plan, on an elevation or where the frame is pulled
// apart, or in the views of the whole frame.
func TestEveryTimberIsNamed(t *testing.T) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		all := tidy.TextsOn(append(append(plan.Of(f).Sheets(), Apart(f)...), Views(f)...), "")
		for _, x := range f.Timbers {
			if !strings.Contains(all, "\n"+x.ID+"\n") {
				t.Errorf("%s: %s is not named", name, x.ID)
			}
		}
	}
}
