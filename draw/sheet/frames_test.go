package sheet

import (
	"strings"
	"testing"

	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/samples/trial"
)

// Plans and elevations keep their layout in other frames, and tell every timber's
// name.
func TestOtherFrames(t *testing.T) {
	trial.EachOther(t, func(t *testing.T, f *geom.Frame) {
		surveys := append(Apart(f), Surveys(f)...)
		all := wordsOn(surveys, "")
		for _, x := range f.Timbers {
			if !strings.Contains(all, "\n"+x.ID+"\n") {
				t.Errorf("%s is not named", x.ID)
			}
		}
		tidy.Sheets(t, surveys)
	})
}
