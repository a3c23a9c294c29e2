package scene

import (
	"fmt"
	"strings"

	"pegwright/geom"
)

// right reports whether the joint's own axes are right-handed.
func right(j *geom.Joint) bool { return j.Axes.U.Cross(j.Axes.V).Dot(j.Axes.W) > 0 }

// opposite reports whether a joint of the group is the mirror image of the one
// that is drawn: it has the same numbers from the same arrises, and is laid out
// the other way round.
func (g Group) opposite(j *geom.Joint) bool { return right(j) != right(g.First()) }

// Hands parts the group: the joints that are as drawn, and the mirror images.
func (g Group) Hands() (same, mirror []*geom.Joint) {
	for _, j := range g.Joints {
		if g.opposite(j) {
			mirror = append(mirror, j)
		} else {
			same = append(same, j)
		}
	}
	return same, mirror
}

// Alike says in brackets how many joints share a sheet, "" for one alone.
func (g Group) Alike() string {
	same, mirror := g.Hands()
	var ws []string
	if n := len(same); n > 1 {
		ws = append(ws, fmt.Sprintf("%d alike", n))
	}
	if n := len(mirror); n > 0 {
		ws = append(ws, fmt.Sprintf("%d of opposite hand", n))
	}
	if len(ws) == 0 {
		return ""
	}
	return " (" + strings.Join(ws, ", ") + ")"
}

// mostMirrored is how many joints of opposite hand are named beside a view; on
// the sheet that lists what it serves they all are.
const mostMirrored = 12

// MirrorWords says which joints are the mirror images of what is drawn, "" for
// none; of many it says how many, and where they are named.
func (g Group) MirrorWords(where string) string {
	_, mirror := g.Hands()
	if len(mirror) == 0 {
		return ""
	}
	which := JoinersMarks(mirror)
	if len(mirror) > mostMirrored {
		which = fmt.Sprintf("%d joints, named %s", len(mirror), where)
	}
	return "Opposite hand, the mirror image of what is drawn, every number from the same arris: " + which + "."
}

// JoinersMarks lists the joiner's marks of joints.
func JoinersMarks(js []*geom.Joint) string {
	var ms []string
	for _, j := range js {
		ms = append(ms, j.Mark)
	}
	return strings.Join(ms, ", ")
}
