// Package geom is the solved frame as data: timbers placed in space, the wood
// that each joint takes from them, pegs and bores. It knows how a timber's
// faces, axes and planes are named; it knows nothing of descriptions, joint
// kinds or paper.
//
// Frame axes: x along the building (east), y across the span (north), z up.
// Timber axes: x along the timber from its start end, y and z across from the
// reference arris; the reference faces are y = 0 (face 1) and z = 0 (face 2),
// so that a coordinate in a timber's own axes is the dimension a framer
// scribes. Lengths are millimetres.
package geom

import (
	"pegwright/geom/finding"
	"pegwright/geom/measure"
	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

// Frame is a solved frame.
type Frame struct {
	Title    string
	Units    measure.Units
	Info     []Info // title-block texts as the user gave them, in file order
	Criteria []Info // design criteria as the user stated them, in file order
	Timbers  []*Timber
	Joints   []*Joint
	Supports []Support
	Steps    []Step // order of assembly, first step first; as far as it was found
	Stock    Stock
	Offer    Offer
	Notes    []finding.Finding // what the solver decided by itself, and what keeps the frame from being put together
	Paper    Paper
}

// Info is one text of the description that is shown and never computed with.
type Info struct{ Name, Text string }

// Paper names the sheet sizes asked for ("letter", "a4", "roll 24 in", …), and
// says what the full-scale sheets are to be like.
type Paper struct {
	Sheets, Templates string
	// Along and Across are what the printer makes of 100 mm along the long and
	// the short side of the paper, mm; 0 where it was not measured.
	Along, Across float64
	Poles         bool // story poles are drawn
	Hidden        bool // hidden edges are drawn dashed where they may be left out
}

// Stock is the wood that the whole frame is cut from.
type Stock struct {
	Timber, Peg       string // species names
	PegWood           wood.Wood
	Green             float64 // moisture content of the timbers when cut, percent
	PegMC             float64 // moisture content of the pegs when driven, percent
	Service           float64 // moisture content in service, percent
	Seasoning, PegDry string  // the words used for them
}

// Offer is what can be bought, and the tools that bear on how it is cut.
type Offer struct {
	Lengths   []float64  // stock lengths of timber, mm, shortest first
	Usual     bool       // Lengths are the usual ones: the description gives none
	Prices    []Price    // by wood, in the order written
	Kerf      float64    // wood that a saw cut takes between two pieces, mm
	Billet    [2]float64 // side and length of the square billets that pegs are riven from, mm
	LeadScrew float64    // length of the bits' lead screws, mm
}

// Price is what a volume of a wood costs: a board foot in a frame in feet and
// inches, a cubic metre in a metric one.
type Price struct {
	Wood string // shown name
	Cost float64
}

// PriceOf returns the price of the wood of that name; ok is false when none
// was given.
func (o Offer) PriceOf(name string) (cost float64, ok bool) {
	for _, p := range o.Prices {
		if p.Wood == name {
			return p.Cost, true
		}
	}
	return 0, false
}

// Support is a post foot that stands on something that is not a timber.
type Support struct {
	Timber string
	At     vec.V // middle of the foot, frame axes
	Size   [2]float64
}

// Timber returns the timber with the given id, or nil.
func (f *Frame) Timber(id string) *Timber {
	for _, t := range f.Timbers {
		if t.ID == id {
			return t
		}
	}
	return nil
}

// Joint returns the joint with the given id, or nil.
func (f *Frame) Joint(id string) *Joint {
	for _, j := range f.Joints {
		if j.ID == id {
			return j
		}
	}
	return nil
}

// JointsOf returns the joints that timber t takes part in, in frame order.
func (f *Frame) JointsOf(t *Timber) []*Joint {
	var r []*Joint
	for _, j := range f.Joints {
		if j.Into == t || j.Of == t {
			r = append(r, j)
		}
	}
	return r
}

// InfoText returns the title-block text with the given name, "" when not given.
func (f *Frame) InfoText(name string) string {
	for _, i := range f.Info {
		if i.Name == name {
			return i.Text
		}
	}
	return ""
}
