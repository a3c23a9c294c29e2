package solve_test

import (
	"math"
	"strings"
	"testing"

	"pegwright/samples/trial"
)

const lapSticks = `frame: Laps
units: in
timbers:
  beam: {role: beam, section: 6 x 10, from: [0, 0, 96], to: [240, 0, 96], faces: [top, south]}
  cross: {role: beam, section: 6 x 6, from: [120, -60, 96], to: [120, 60, 96], faces: [top, west]}
  joist: {role: joist, section: 4 x 8, from: [60, 6, 96], to: [60, 96, 96], faces: [top, west]}
  far: {role: beam, section: 6 x 6, from: [120, 60, 96], to: [120, 120, 96], faces: [top, west]}
  next: {role: beam, section: 6 x 6, from: [0, 6, 96], to: [240, 6, 96], faces: [top, south]}
  slope: {role: rafter, section: 4 x 6, from: [90, 6, 96], to: [90, 96, 140], faces: [top, west]}
joints:
  - {%s}
`

// Laps and pockets that cannot be cut are faulted once, at their own line.
func TestLapFaults(t *testing.T) {
	for _, c := range []struct{ name, joint, says string }{
		{"parallel", "kind: half lap, of: next, end: start, into: beam", "do not lie flat"},
		{"sloping on level", "kind: half lap, of: slope, end: start, into: beam", "do not lie flat"},
		{"short of each other", "kind: cross lap, of: far, into: beam", "do not cross"},
		{"three pegs", "kind: cross lap, of: cross, into: beam, pegs: 3", "two pegs"},
		{"through the receiver", "kind: cross lap, of: cross, into: beam, lap depth: 9 1/2", "do not meet"},
		{"deeper than the enterer", "kind: cross lap, of: cross, into: beam, lap depth: 8", "deeper than the enterer"},
		{"drawn", "kind: cross lap, of: cross, into: beam, drawbore: 1/8", "in line"},
		{"bored too wide", "kind: half-dovetail lap, of: joist, end: start, into: beam, bore: 3", "bore"},
		{"two pegs in a tail", "kind: half-dovetail lap, of: joist, end: start, into: beam, pegs: 2", "one peg"},
		{"pocket of a sloping stick", "kind: drop-in pocket, of: slope, end: start, into: beam", "square"},
		{"pocket through", "kind: drop-in pocket, of: joist, end: start, into: beam, bearing: 5 1/2", "through the receiver"},
		{"pocket deeper than the joist", "kind: drop-in pocket, of: joist, end: start, into: beam, pocket depth: 9", "deeper than the enterer"},
		{"two pegs in a pocket", "kind: drop-in pocket, of: joist, end: start, into: beam, pegs: 2", "one peg"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, faults := trial.Solve("laps.yaml", strings.Replace(lapSticks, "%s", c.joint, 1))
			if f != nil || len(faults) != 1 {
				t.Fatalf("%d faults, want one: %v", len(faults), faults)
			}
			if d := faults[0]; d.At.Line != 11 || !strings.Contains(d.Text, c.says) || d.Mend == "" {
				t.Errorf("%d: %q / %q, want line 11 and %q", d.At.Line, d.Text, d.Mend, c.says)
			}
		})
	}
}

// A lap is set as it is asked for, in the file's own units, and is never drawn
// by a layout that is meant for tenons.
func TestLapSettings(t *testing.T) {
	src := strings.Replace(lapSticks, "%s", "kind: cross lap, of: cross, into: beam, lap depth: 4, pegs: 2, bore: 1", 1)
	src = strings.Replace(src, "timbers:", "layout: {drawbore: 3/16, housing: 1/2}\ntimbers:", 1)
	j := trial.Frame(t, "test.yaml", src).Joint("cross-into-beam")
	if len(j.Pegs) != 2 {
		t.Fatalf("%d pegs, want 2", len(j.Pegs))
	}
	for _, p := range j.Pegs {
		trial.Near(t, "offset", p.Offset, 0, 0)
		trial.Near(t, "holes in line", p.Mortise.Dist(p.Tenon), 0, 1e-9)
		trial.Near(t, "bore", p.Bore, inch, 0)
		if d := p.To.Sub(p.From).Unit(); math.Abs(d.Z) < 1-1e-9 {
			t.Errorf("a peg runs along %v, not square to the lap", d)
		}
	}
	if j.Entered != 1 {
		t.Errorf("let into face %d, want 1, the top", j.Entered)
	}
	// The table lies 4 in below the top of the beam.
	for _, v := range j.Tenon.V {
		if v.Z < 92*inch-1e-6 {
			t.Errorf("the lap reaches down to %.3f in, want 92", v.Z/inch)
		}
	}
}

// A tail of green white pine, 6 in rough, 5-1/2 in ideal: 5-1/2 x 0.0366 x 6
// at 1 in 6 (tangential shrinkage 6.1 % of green, Wood Handbook table 13-4,
// 18/30 of it to 12 %).
func TestSlipOfASolvedTail(t *testing.T) {
	joint := "kind: half-dovetail lap, of: stud, end: start, into: beam, flare: 1 in 6, wedge: yes"
	src := strings.Replace(strings.Replace(lapSticks, "%s", joint, 1), "joist:", "stud:", 1)
	src = strings.Replace(src, "section: 4 x 8", "section: 6 x 8", 1)
	j := trial.Frame(t, "test.yaml", src).Joint("stud-into-beam")
	trial.Near(t, "slip", j.Slip, 5.5*0.061*18/30*6*inch, 0.01)
	if len(j.Pieces) != 1 || j.Pieces[0].Kind != "wedge" || len(j.Pieces[0].Moves) != 1 {
		t.Fatalf("pieces %v, want one wedge with one move", j.Pieces)
	}
	if w := strings.Join(j.Words, " "); !strings.Contains(w, "dry stock") || !strings.Contains(w, "first winter") {
		t.Errorf("words %q", w)
	}
	dry := trial.Frame(t, "test.yaml", strings.Replace(src, "timbers:", "wood: {timbers: {seasoning: dry}}\ntimbers:", 1)).Joint("stud-into-beam")
	if dry.Slip != 0 || len(dry.Words) != 0 {
		t.Errorf("dry stock slips %g: %q", dry.Slip, dry.Words)
	}
}
