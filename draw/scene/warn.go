package scene

import (
	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/geom"
)

// Warn writes over the group's sheets that they must not be cut from, where a stop
// finding names one of its joints: stops has the number of the finding by the id
// of the joint.
func (g Group) Warn(stops map[string]int, sheets ...*draw.Sheet) { warn(g.Joints, stops, sheets) }

// Warn writes over the sheets of the sticks that they must not be cut from, where a
// stop finding names a joint of one of them: stops has the number of the finding by
// the id of the joint.
func (g Sticks) Warn(f *geom.Frame, stops map[string]int, sheets ...*draw.Sheet) {
	var joints []*geom.Joint
	for _, t := range g.Timbers {
		joints = append(joints, f.JointsOf(t)...)
	}
	warn(joints, stops, sheets)
}

// warn writes the least of the numbers by which some joints are stopped over their
// sheets.
func warn(joints []*geom.Joint, stops map[string]int, sheets []*draw.Sheet) {
	least := 0
	for _, j := range joints {
		if n := stops[j.ID]; n > 0 && (least == 0 || n < least) {
			least = n
		}
	}
	if least == 0 {
		return
	}
	for _, s := range sheets {
		block.DoNotCut(s, least)
	}
}
