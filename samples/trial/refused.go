package trial

import (
	"strings"
	"testing"
	"time"

	"pegwright/geom/solve"
	"pegwright/geom/spec"
)

// Refused holds a description that can be read and makes no frame to what must
// be said of it: a fault at the line of the word that is wrong, and every fault
// with a place and a mend. The line is the last that holds the text given; says
// is part of what is said about it.
func Refused(t *testing.T, name, src, line, says string) {
	t.Run(name, func(t *testing.T) {
		d, faults := spec.Read("test.yaml", []byte(src), nil)
		if len(faults) > 0 {
			t.Fatalf("the reader already refuses it: %v", faults)
		}
		f, faults := solve.Solve(d)
		if len(faults) == 0 || f != nil {
			t.Fatalf("%d faults, frame %v", len(faults), f != nil)
		}
		want, said := 0, false
		for i, l := range strings.Split(src, "\n") {
			if strings.Contains(l, line) {
				want = i + 1
			}
		}
		for _, x := range faults {
			if x.At.File != "test.yaml" || x.At.Line == 0 || x.At.Col == 0 {
				t.Errorf("no place: %v", x)
			}
			if strings.TrimSpace(x.Mend) == "" {
				t.Errorf("no mend: %v", x)
			}
			said = said || x.At.Line == want && strings.Contains(x.Text, says)
		}
		if !said {
			t.Errorf("no fault at line %d says %q:\n%v", want, says, faults)
		}
	})
}

// RefusedSoon holds a description that asks for too much to a fault at its first
// word that is wrong, found within five seconds.
func RefusedSoon(t *testing.T, name, src, line, source, says string) {
	t.Run(name, func(t *testing.T) {
		begun := time.Now()
		_, faults := Solve("test.yaml", src)
		if took := time.Since(begun); took > 5*time.Second {
			t.Errorf("it took %v to refuse it", took)
		}
		if len(faults) == 0 {
			t.Fatal("it is not refused")
		}
		x := faults[0]
		at := strings.Split(src, "\n")[max(x.At.Line-1, 0)]
		if !strings.Contains(at, line) || x.Source != source || !strings.Contains(x.Text, says) || x.Mend == "" {
			t.Errorf("at %q: %q, %s (%s)", at, x.Source, x.Text, x.Mend)
		}
	})
}
