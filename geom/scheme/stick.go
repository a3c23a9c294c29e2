package scheme

import (
	"fmt"
	"math"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
	"pegwright/geom/wood"
)

// Stick is a timber being planned: its line is known, its ends not yet.
type Stick struct {
	Timber  *geom.Timber        // axes with the line's origin, sections, wood; neither length nor blank
	Lo, Hi  float64             // ends along the line, mm; replaced where a joint gives a tip
	Plumb   bool                // start end cut plumb
	Overall spec.TimberSettings // what the description says of it

	first  bool  // face 1 is the line's first reference face
	hull   *void // between the ends hullAt, once asked for
	hullAt [2]float64
}

// Line says where a stick lies: its reference arris runs through At along Dir.
// Out1 and Out2 are the outward directions of its two reference faces, and
// Size1 and Size2 the sizes of the stick measured off them, mm. Name1 to Name4
// are the words for the faces: the two references, and those opposite Out1 and
// Out2.
type Line struct {
	At, Dir                    vec.V
	Out1, Out2                 vec.V
	Size1, Size2               float64
	Name1, Name2, Name3, Name4 string
}

// place returns the timber axes of a line, its section and its face names in
// face order. Mirrored sticks swap faces 1 and 2 so that the axes stay
// right-handed.
func (l Line) place() (vec.Placement, [2]float64, [4]string) {
	i1, i2 := l.Out1.Neg(), l.Out2.Neg()
	if i1.Cross(i2).Dot(l.Dir) > 0 {
		return vec.Placement{X: l.Dir, Y: i1, Z: i2, O: l.At}, [2]float64{l.Size1, l.Size2}, [4]string{l.Name1, l.Name2, l.Name3, l.Name4}
	}
	return vec.Placement{X: l.Dir, Y: i2, Z: i1, O: l.At}, [2]float64{l.Size2, l.Size1}, [4]string{l.Name2, l.Name1, l.Name4, l.Name3}
}

// Add plans a stick on a line between two coordinates along it, with the wood
// and the ideal section that its role and settings give. A second stick of the
// same id is a fault, and the first is returned.
func (s *Scheme) Add(id, role string, at finding.Pos, l Line, lo, hi float64, set spec.TimberSettings) *Stick {
	if old, ok := s.Sticks[id]; ok {
		s.Fault(at, id, fmt.Sprintf("there is already a timber called %s", old.Timber.ID), "give this one another name")
		return old
	}
	pl, sec, names := l.place()
	t := &geom.Timber{ID: id, Role: role, At: at, Place: pl, Section: sec, FaceNames: names, Wood: s.timber, Species: s.timber.Name}
	st := &Stick{Timber: t, Lo: lo, Hi: hi, Overall: set, first: pl.Y == l.Out1.Neg()}
	s.Sticks[id] = st
	s.Order = append(s.Order, st)
	s.Trim(st, set)
	return st
}

// Trim settles the wood, moisture and ideal section of a stick from its
// settings, and what its role has where they are silent.
func (s *Scheme) Trim(st *Stick, set spec.TimberSettings) {
	t := st.Timber
	if set.Species.Set {
		t.Wood = s.Species(set.Species, "", wood.FramingNames)
		t.Species = t.Wood.Name
	}
	t.Trim = set.Trim.Or(0)
	t.Moisture = s.Frame.Stock.Green
	if set.Seasoning.Set || set.Species.Set {
		sea := s.Description.Wood.Seasoning
		if set.Seasoning.Set {
			sea = set.Seasoning
		}
		t.Moisture, _ = moisture(t.Wood, sea, "green")
	}
	reduce := s.reduceOf(t.Role)
	if set.Planed.Set && set.Planed.On {
		reduce = 0
	}
	reduce = set.Reduce.Or(reduce)
	t.Ideal = [2]float64{t.Section[0] - reduce, t.Section[1] - reduce}
	if t.Ideal[0] < 20 || t.Ideal[1] < 20 {
		s.Fault(t.At, t.ID, fmt.Sprintf("the ideal timber inside %s would be %s x %s", t.ID, s.Frame.Units.Format(t.Ideal[0]), s.Frame.Units.Format(t.Ideal[1])),
			"give a larger section or a smaller reduce")
	}
}

// Piece is a stick of its own, not yet among the scheme's, on part of a
// stick's line.
func (st *Stick) Piece(id string, lo, hi float64) *Stick {
	t := *st.Timber
	t.ID = id
	return &Stick{Timber: &t, Lo: lo, Hi: hi, Overall: st.Overall, first: st.first}
}

// At is the place of an end on the stick's line, in frame axes.
func (st *Stick) At(end geom.End) vec.V {
	x := st.Lo
	if end == geom.Finish {
		x = st.Hi
	}
	return st.Timber.Place.Out(vec.V{X: x})
}

// High is the extent of a stick's nominal section along a direction square to
// its length: the far side, in frame axes.
func (st *Stick) High(dir vec.V) float64 {
	t := st.Timber
	h := math.Inf(-1)
	for i := range 4 {
		c := vec.V{Y: t.Section[0] * float64(i&1), Z: t.Section[1] * float64(i>>1)}
		h = max(h, t.Place.Out(c).Dot(dir))
	}
	return h
}

// Low is the near side of a stick along a direction square to its length.
func (st *Stick) Low(dir vec.V) float64 { return -st.High(dir.Neg()) }

// Across is the ideal size of a stick along a direction square to its length, mm.
func (st *Stick) Across(dir vec.V) float64 {
	return st.Timber.Across(st.Timber.FaceToward(dir))
}

// FirstAlongY reports whether the first figure of the stick's section runs
// along its y axis. For level and sloping sticks the first figure is the
// level width; for plumb ones it is off the first reference face.
func (st *Stick) FirstAlongY() bool {
	t := st.Timber
	if math.Abs(t.Place.X.Z) > 0.999 {
		return st.first
	}
	return math.Abs(t.Place.Y.Z) < math.Abs(t.Place.Z.Z)
}

// DepthAxis is the index in Section and Ideal of the size that is plumb in a
// level stick.
func (st *Stick) DepthAxis() int {
	if st.FirstAlongY() {
		return 1
	}
	return 0
}
