package packet

import (
	"bytes"
	"runtime"
	"testing"

	"pegwright/geom/check"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// A packet has the same bytes whether its sheets are made one after the other
// or four at a time.
func TestSameBytesOnAnyProcessors(t *testing.T) {
	const name = "rail-and-post"
	src, _ := samples.Source(name)
	f := trial.Sample(t, name)
	var first *Packet
	before := runtime.GOMAXPROCS(0)
	defer runtime.GOMAXPROCS(before)
	for _, procs := range []int{1, 4} {
		runtime.GOMAXPROCS(procs)
		p, err := Build(Input{Frame: f, Findings: check.Check(f), Source: src, Name: name})
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = p
		}
		if len(p.Files) != len(first.Files) || p.Mark != first.Mark {
			t.Fatalf("%d files, mark %s; with one processor %d, %s", len(p.Files), p.Mark, len(first.Files), first.Mark)
		}
		for i, file := range p.Files {
			if file.Path != first.Files[i].Path || !bytes.Equal(file.Data, first.Files[i].Data) {
				t.Errorf("%s differs with %d processors", file.Path, procs)
			}
		}
	}
}
