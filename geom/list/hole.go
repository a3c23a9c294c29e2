package list

import (
	"strings"

	"pegwright/geom"
)

// hole says what a bore goes through at its joint.
type hole struct {
	in        string  // "mortise", "tenon", "receiver", "enterer" or ""
	thickness float64 // mm of tenon along the bore, 0 where it is no tenon
	offset    any     // mm from the hole of the receiver, nil where it is not offset
	way       string  // which way it is offset
}

// holeOf returns what bore b of timber t goes through. Where the joint has a
// tenon it is the tenon of the timber that enters and the mortise of the other;
// else the two timbers themselves.
func holeOf(f *geom.Frame, t *geom.Timber, b geom.Bore) hole {
	j := f.Joint(b.Joint)
	switch {
	case j == nil:
		return hole{}
	case j.Of != t && (j.Broad || j.Tenon.Empty()):
		return hole{in: "receiver"}
	case j.Of != t:
		return hole{in: "mortise"}
	}
	h := hole{in: "enterer"}
	h.offset, h.way = offset(j, b.Peg)
	if !j.Broad && !j.Tenon.Empty() {
		lo, hi := j.Tenon.Extent(t.Place.OutDir(b.To.Sub(b.From).Unit()))
		h.in, h.thickness = "tenon", hi-lo
	}
	return h
}

// offset returns how far the hole of a drawn peg is set off from that of the
// receiver, in mm, and which way, in few words; nil and "" where it is not.
func offset(j *geom.Joint, id string) (mm any, words string) {
	for _, p := range j.Pegs {
		if p.ID == id && p.Offset > 0 {
			return p.Offset, strings.NewReplacer("toward the ", "to ", "back up", "up").Replace(p.Words)
		}
	}
	return nil, ""
}
