package geom

import (
	"slices"

	"pegwright/geom/vec"
)

// Motion is the way in which timbers are moved home in one step of assembly.
type Motion string

// The motions that a crew can make.
const (
	Straight Motion = "straight" // one straight move
	Legs     Motion = "legs"     // one or two straight moves of a joint's own, such as in and then down
	Rear     Motion = "rear"     // a bent turned up about the line of its feet
)

// Step is one step in putting the frame together: timbers that are already
// joined to each other move as one, some joints close, and what holds those
// joints is driven. Ids name timbers, joints, pegs and pieces of the frame.
type Step struct {
	Name    string   // what moves, such as "bent 1", "tie-2" or "plate-south"
	Group   string   // the sub-assembly being put together flat ("bent 1"), "" for work on the standing frame
	Move    []string // timbers that move, in frame order
	Onto    []string // timbers that the closing joints join them to; empty for the first of a group
	Motion  Motion
	Legs    []Move // straight legs in order, frame axes; a rear is told as its straight likeness
	Joints  []string
	Pieces  []string // wedges and keys driven once the joints are closed
	Pegs    []string // pegs driven at the end of this step
	Drop    float64  // for a rear: how far the feet come down as the bent comes up, millimetres
	Text    string   // the step in a sentence that a helper understands
	Support bool     // set on sills, piers or the ground: nothing of the frame carries it
}

// Direction returns the direction of a step's last leg, zero when it has none.
func (s Step) Direction() vec.V {
	if len(s.Legs) == 0 {
		return vec.V{}
	}
	return s.Legs[len(s.Legs)-1].Direction
}

// Closing returns the step that closes a joint, and whether the joint's enterer is
// what moves in it; nil where no step does.
func (f *Frame) Closing(j *Joint) (s *Step, enters bool) {
	for i := range f.Steps {
		if s := &f.Steps[i]; slices.Contains(s.Joints, j.ID) {
			return s, slices.Contains(s.Move, j.Of.ID)
		}
	}
	return nil, false
}
