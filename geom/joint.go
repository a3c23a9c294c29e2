package geom

import (
	"pegwright/geom/finding"
	"pegwright/geom/peg"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Roles of the faces that joints make. A body's boundary and edges carry them.
const (
	RoleShoulder = "shoulder" // bears on the receiver, around a tenon
	RoleCheek    = "cheek"    // broad side of a tenon or tongue
	RoleBearing  = "bearing"  // floor of a housing, where the shoulder lands
	RoleNose     = "nose"     // cut square to the receiver at a brace's nose
	RoleWall     = "wall"     // broad side of a mortise or slot
	RoleFloor    = "floor"    // bottom of a mortise
	RoleEnd      = "end"      // end of a mortise, tenon or housing along the receiver
	RoleSeat     = "seat"     // level bearing under a rafter
	RoleTable    = "table"    // bearing along a rafter or scarf
	RoleButt     = "butt"     // bearing square to the thrust
	RoleReduced  = "reduced"  // brought to the ideal section
)

// Joint is an agreement between two timbers about the wood taken from each.
// All geometry is in frame axes unless said otherwise.
type Joint struct {
	ID, Kind, Mark string
	Into, Of       *Timber
	OfEnd          End
	At             finding.Pos
	Axes           Axes
	Entered        int         // face of Into that is entered, 1 to 4
	Bearing        solid.Plane // where the shoulder lands, facing the enterer
	Housing        float64     // depth of the bearing plane below the ideal face
	LetIn          float64     // depth of the bearing plane below the real face
	Proud          float64     // how far a through tenon is meant to stand beyond the ideal far face
	Tenon          solid.Convex
	Mortise        solid.Convex
	Moves          []Move
	Pieces         []Piece
	Pegs           []Peg
	Lines          []Line
	Dims           []Dim
	Places         []Place
	Tension        bool     // must hold tension, not only locate
	Broad          bool     // pegs are driven into the entered face, as through a lap, and not across it
	Slip           float64  // how far a tapered tail slides along its timber before it bites, in service, millimetres; 0 where none does
	Words          []string // sentences to print with the joint
}

// Flat returns the place of a frame point in the plane that the joint's pegs
// are seen in: along the receiver, and out of the entered face, or across that
// face where the joint is Broad. Peg windows and rules are in this plane.
func (j *Joint) Flat(p vec.V) vec.P {
	u, v, w := j.Axes.Of(p)
	if j.Broad {
		return vec.P{X: u, Y: v}
	}
	return vec.P{X: u, Y: w}
}

// Raised returns the frame point that lies at q in the plane of Flat and as
// deep along the pegs as the frame point like.
func (j *Joint) Raised(q vec.P, like vec.V) vec.V {
	_, v, w := j.Axes.Of(like)
	if j.Broad {
		return j.Axes.Point(q.X, q.Y, w)
	}
	return j.Axes.Point(q.X, v, q.Y)
}

// Axes are a joint's own axes: U along the receiver from its start end, V
// across the entered face from the receiver's reference face, W out of the
// entered face. O is where u, v and w are zero: the receiver's start end, its
// reference face, and its ideal entered face.
type Axes struct{ O, U, V, W vec.V }

// Point returns the frame point with joint coordinates u, v, w.
func (a Axes) Point(u, v, w float64) vec.V {
	return a.O.Add(a.U.Mul(u)).Add(a.V.Mul(v)).Add(a.W.Mul(w))
}

// Of returns the joint coordinates of the frame point p as u, v, w.
func (a Axes) Of(p vec.V) (u, v, w float64) {
	d := p.Sub(a.O)
	return a.U.Dot(d), a.V.Dot(d), a.W.Dot(d)
}

// Move is one straight leg of the motion by which the enterer closes the
// joint: a unit direction in frame axes and a length.
type Move struct {
	Direction vec.V
	Distance  float64
}

// Piece is wood that is added to a joint once its timbers are home: a wedge or
// a key. It fills wood that the joint has taken from both timbers.
type Piece struct {
	ID    string       // begins with the joint's id
	Kind  string       // "wedge" or "key"
	Solid solid.Convex // as driven home, frame axes
	Moves []Move       // straight legs by which it is driven, in order
}

// Peg is one peg of a joint with its holes, in frame axes. The tenon hole is
// set off from the mortise hole by Offset against Draw, the direction in which
// the driven peg pulls the enterer.
type Peg struct {
	ID          string
	From, To    vec.V   // axis of the mortise hole, from the entry face to the exit face (or bottom)
	Bore        float64 // diameter of the holes
	Length      float64 // of the peg, head and lead included
	Head, Lead  float64
	Offset      float64
	Draw        vec.V       // unit; zero when the hole is not offset
	Mortise     vec.V       // centre of the mortise hole, middle of the tenon
	Tenon       vec.V       // centre of the tenon hole
	A           float64     // bearing plane to the mortise hole
	B           float64     // shoulder to the tenon hole
	P           float64     // along the receiver, from the bearing edge or nose line to the mortise hole
	PFrom       string      // what P is measured from, such as "nose line"
	Relish      float64     // along the enterer's grain, tenon hole centre to the first free surface behind it
	Flush       bool        // sawn off level with both faces once driven, so that another timber can stand there
	Entry, Exit int         // faces of the receiver; Exit 0 for a blind bore
	Words       string      // which way the tenon hole is set: "toward the shoulder"
	AlongBrace  bool        // drawn along the brace's axis
	OffsetAt    finding.Pos // where the offset was written; no line where it was not
	Why         string      // how the offset was chosen, or why none serves
	Rules       []peg.Rule
	Window      peg.Window
}

// Line is a line scribed square round the receiver at coordinate X along it.
type Line struct {
	Name string // "bearing edge", "nose line", …
	X    float64
	Main bool // the one that templates register on
}

// Place is a point of layout along a timber, measured from its start end:
// a shoulder, a nose line, the heel of a rafter seat.
type Place struct {
	On    *Timber
	Label string // "shoulder on the reference arris", "heel on the underside", …
	X     float64
}

// Reader says who uses a dimension.
type Reader string

// Readers of a dimension.
const (
	Cutter Reader = "cutter"
	Borer  Reader = "borer"
)

// Dim asks for a dimension: the distance from one point to another along an
// axis of a timber, in that timber's axes.
type Dim struct {
	Timber   *Timber
	From, To vec.V
	Axis     vec.V // unit
	Label    string
	Reader   Reader
}

// Value returns the dimension in millimetres.
func (d Dim) Value() float64 {
	v := d.To.Sub(d.From).Dot(d.Axis)
	return max(v, -v)
}
