package scheme

import (
	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/spec"
	"pegwright/geom/wood"
)

const inch = 25.4 // mm, exactly

// Limits of one frame. They lie far above any frame that is cut by hand, and
// keep a slip of the pen from asking for a million sticks.
const (
	MaxLength = 30000.0 // of one timber, mm
	MaxSticks = 5000    // of a frame
)

// Scheme is a frame being planned. Sticks and pacts are kept in the order in
// which they were laid, which is the order of the lists that come out of it.
type Scheme struct {
	Description *spec.Description
	Frame       *geom.Frame // its stock, notes and supports so far; no timbers yet
	Faults      finding.Faults
	Sticks      map[string]*Stick // by the id of their timber
	Order       []*Stick
	Pacts       []*Pact
	Std         Standard

	timber wood.Wood   // of sticks that have none of their own
	owned  []wood.Wood // described by the user
}

// New begins the frame of a description: its woods are settled and nothing is
// laid. A wood that is in no table is among its faults.
func New(d *spec.Description) *Scheme {
	s := &Scheme{Description: d, Frame: &geom.Frame{Title: d.Title.Or("Frame"), Units: d.Units}, Sticks: map[string]*Stick{}, Std: standardFor(d.Units)}
	s.woods()
	return s
}

// Fault says why the description makes no frame. The same text at the same
// place is said once.
func (s *Scheme) Fault(at finding.Pos, source, text, mend string) {
	for _, f := range s.Faults {
		if f.At == at && f.Text == text {
			return
		}
	}
	s.Faults = append(s.Faults, finding.Fault{At: at, Source: source, Text: text, Mend: mend})
}

// Note says what was settled otherwise than asked, or than one might expect.
func (s *Scheme) Note(at finding.Pos, text, mend string, timbers ...string) {
	s.Frame.Notes = append(s.Frame.Notes, finding.Finding{Severity: finding.Note, Rule: "generated", At: at, Text: text, Mend: mend, Timbers: timbers})
}
