// Package joint turns joint kinds into cuts. Each kind lives in a file of its
// own and answers two questions about a site, a receiver and an enterer placed
// in space: how far the enterer's line runs (Reach), and what wood each timber
// loses (Cut). Cuts are convex volumes whose faces carry roles; nothing after
// this package needs to know one kind from another.
package joint

import (
	"fmt"
	"math"
	"sort"

	"pegwright/geom"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Settings are the numbers of one joint, all resolved, in millimetres.
type Settings struct {
	Thickness   float64 // of the tenon, tongue or fork slot
	FromRef     float64 // receiver's reference face to the near cheek
	TenonLength float64 // bearing plane to tenon end
	Through     bool
	Housing     float64 // bearing plane below the receiver's ideal face
	HoldStart   float64 // tenon held back at the receiver's start side
	HoldEnd     float64 // tenon held back at the receiver's end side
	Deeper      float64 // mortise deeper than the tenon is long
	Clearance   float64 // mortise wider than the tenon is thick
	Bore        float64 // peg hole diameter
	Pegs        int
	OffShoulder float64 // bearing plane to the mortise hole
	Along       float64 // bearing edge or nose line to the mortise hole
	Centred     bool    // the hole is centred on the tenon's width instead
	Offset      float64 // drawbore
	Auto        bool    // Offset is to be chosen by the solver
	Square      bool    // an angled tenon is drawn square to its shoulder
	FromFace    int     // entry face of the receiver, 0 for the reference side
	Head, Lead  float64
	Steps       int     // of a step-lap seat
	BlindDepth  float64 // bore of a seat peg, below the seat, along its axis
	Flush       bool    // pegs are sawn level with both faces once driven
	PegOff      float64 // seat peg: off the enterer's reference side face; 0 for its middle
	LapDepth    float64 // depth that a lap is let into the receiver's face; 0 for half of what the two share
	IntoFace    int     // face of the receiver that a lap or pocket is let into; 0 where the joint chooses
	Flare       float64 // run of a dovetail's flare for a rise of one, such as 7 for 1 in 7
	Wedge       bool    // a dovetail is tightened by a wedge
	Bearing     float64 // length of a pocket, into the receiver's side
	PocketDepth float64 // of a pocket, down from the enterer's upper face; 0 for three quarters of the enterer
	Scarf       Scarf
	Drop        float64 // flare of a wedged tenon over its length; 0: a sixth of the length
	Taper       float64 // rise of its wedge over its length; 0: 1 in 12
	Haunch      float64 // length of the shallow tenon left where the tenon is held back; 0: none
	Proud       float64 // a through tenon beyond the receiver's ideal far face
	Diminished  bool    // the housing of an angled joint runs from its depth at the nose to nothing
	SquareEnd   bool    // the inner end of an angled mortise is cut square to the face
}

// Site is one joint about to be cut.
type Site struct {
	ID   string
	R, E *geom.Timber // receiver and enterer
	End  geom.End     // of the enterer; Mid where it crosses the receiver
	REnd geom.End     // of the receiver, for joints end to end
	Meet vec.V        // where the two lines end, frame axes, for joints in one line
	Set  Settings
}

// Result is what a kind says of a site.
type Result struct {
	Joint geom.Joint
	R, E  []geom.Cut // in each timber's own axes
	Bores []Hole
	Tail  Tail
	Warns []Warn
}

// Warn is a rule of a kind's own that a joint does not keep: what is wrong,
// and how to mend it.
type Warn struct{ Text, Mend string }

// Tail is a tail that a flare holds along its timber: its width, and the run
// of its flare for a rise of one. Zero where a joint has none.
type Tail struct{ Width, Run float64 }

// Hole is one bore of a result, on the receiver or on the enterer.
type Hole struct {
	On   *geom.Timber
	Bore geom.Bore
}

// Tips are the ends that a joint gives to the timbers' lines, as coordinates
// along each timber's x axis. NaN where the joint gives none.
type Tips struct{ R, E float64 }

// Kind is one kind of joint.
type Kind struct {
	Name  string
	Title string // as printed
	// Fits reports how the two timbers must lie, "" when they do.
	Fits  func(Site) string
	Reach func(Site) Tips
	Cut   func(Site) Result
}

// kinds is the table of joint kinds: a new kind is one file and one row.
func kinds() []Kind {
	return []Kind{
		{"mortise and tenon", "Mortise and tenon", fitsSquare, reachSquare, cutSquare},
		{"sill corner", "Sill corner", fitsSquare, reachSquare, cutSquare},
		{"brace mortise and tenon", "Angled mortise and tenon", fitsAngled, reachAngled, cutAngled},
		{"bridle", "Bridle", fitsBridle, reachBridle, cutBridle},
		{"half-lap scarf", "Half-lap scarf", fitsScarf, reachScarf, cutLapScarf},
		{"splayed scarf", "Stop-splayed scarf", fitsScarf, reachScarf, cutSplayedScarf},
		{"wedged through tenon", "Wedged half-dovetail through tenon", fitsSquare, reachWedged, cutWedged},
		{"step-lap seat", "Step-lap rafter seat", fitsSeat, reachNone, cutStepLap},
		{"birdsmouth seat", "Birdsmouth rafter seat", fitsSeat, reachNone, cutBirdsmouth},
		{"cross lap", "Cross lap", fitsCrossLap, reachNone, cutLap},
		{"half lap", "Half lap", fitsHalfLap, reachLap, cutLap},
		{"corner lap", "Corner lap", fitsCornerLap, reachLap, cutLap},
		{"half-dovetail lap", "Half-dovetail lap", fitsDovetail, reachLap, cutDovetail},
		{"drop-in pocket", "Drop-in pocket", fitsPocket, reachPocket, cutPocket},
		{"plain bearing", "Plain bearing", fitsBearing, reachBearing, cutBearing},
	}
}

// Names returns the names of all kinds, sorted.
func Names() []string {
	var r []string
	for _, k := range kinds() {
		r = append(r, k.Name)
	}
	sort.Strings(r)
	return r
}

// Lookup returns the kind with the given name.
func Lookup(name string) (Kind, bool) {
	for _, k := range kinds() {
		if k.Name == name {
			return k, true
		}
	}
	return Kind{}, false
}

const (
	inch = 25.4
	tol  = 1e-6
	// out is how far open sides and bores run past the blank.
	open = 10.0
	past = 8.0
	// entry is how far past the let-in depth the entering end is brought to
	// its ideal section: 1/8 in (common practice, no source).
	entry = inch / 8
)

// frameOf returns the joint axes of receiver r entered at face n.
func frameOf(r *geom.Timber, n int) geom.Axes {
	pl := r.Place
	w := r.IdealPlane(n)
	a := geom.Axes{U: pl.X, W: pl.OutDir(w.N)}
	a.V = pl.Z
	if n == 2 || n == 4 {
		a.V = pl.Y
	}
	a.O = pl.Out(w.N.Mul(w.D))
	return a
}

// planes of a timber's ideal section, in frame axes, by face number.
func ideal(t *geom.Timber, n int) solid.Plane { return t.IdealPlane(n).Moved(t.Place) }

// span returns the extent along dir, from o, of timber t's ideal section (its
// four long arrises at the x coordinate x), in frame axes.
func span(t *geom.Timber, x float64, o, dir vec.V) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for i := range 4 {
		p := vec.V{X: x, Y: t.Ideal[0] * float64(i&1), Z: t.Ideal[1] * float64(i>>1)}
		h := dir.Dot(t.Place.Out(p).Sub(o))
		lo, hi = min(lo, h), max(hi, h)
	}
	return
}

// away is the unit direction of the enterer from its jointed end into its own
// length, in frame axes.
func (s Site) away() vec.V {
	if s.End == geom.Finish {
		return s.E.Place.X.Neg()
	}
	return s.E.Place.X
}

// tip turns a coordinate along away() (from frame origin) into the enterer's x.
func (s Site) tip(p vec.V) float64 { return s.E.Place.In(p).X }

// tenonEnd returns the w of the tenon's end: a through tenon ends in the ideal
// far face of a receiver that is depth thick.
func (s Site) tenonEnd(depth float64) float64 {
	if s.Set.Through {
		return -depth - s.Set.Proud
	}
	return -s.Set.Housing - s.Set.TenonLength
}

// entered returns the face of the receiver that the enterer comes in through.
func (s Site) entered() int { return s.R.FaceToward(s.away()) }

// letIn returns how far the receiver's real face stands above the bearing
// plane, the most over the footprint u0..u1, v0..v1.
func letIn(s Site, a geom.Axes, n int, u0, u1, v0, v1 float64) float64 {
	pl := s.R.BlankPlane(n).Moved(s.R.Place)
	most := math.Inf(-1)
	for i := range 4 {
		u, v := u0, v0
		if i&1 == 1 {
			u = u1
		}
		if i>>1 == 1 {
			v = v1
		}
		p := a.Point(u, v, 0)
		// Height of the real face above the ideal face, square to it.
		most = max(most, -pl.Height(p)/pl.N.Dot(a.W))
	}
	return most + s.Set.Housing
}

// sizes are the ideal sizes of a timber along V and W of a joint in its face n.
func sizes(r *geom.Timber, n int) (across, depth float64) {
	if n == 1 || n == 3 {
		return r.Ideal[1], r.Ideal[0]
	}
	return r.Ideal[0], r.Ideal[1]
}

// sideFaces returns the receiver's faces at low and high v.
func sideFaces(n int) (low, high int) {
	if n == 1 || n == 3 {
		return 2, 4
	}
	return 1, 3
}

// rough reports whether the enterer's stick is larger than its ideal section on
// a face that bring cuts.
func (s Site) rough() bool {
	return outermost(s.E, 3).D-ideal(s.E, 3).D > 1e-3 || outermost(s.E, 4).D-ideal(s.E, 4).D > 1e-3
}

// arrisAt returns the coordinate along timber t where its reference arris meets
// the frame plane pl.
func arrisAt(t *geom.Timber, pl solid.Plane) float64 {
	return -pl.Height(t.Place.O) / pl.N.Dot(t.Place.X)
}

// base starts a result.
func base(s Site, a geom.Axes, n int, title string) Result {
	return Result{Joint: geom.Joint{
		ID: s.ID, Kind: title, Into: s.R, Of: s.E, OfEnd: s.End, Axes: a, Entered: n,
		Housing: s.Set.Housing,
		Bearing: solid.Plane{N: a.W, D: a.W.Dot(a.O) - s.Set.Housing},
	}}
}

func reachNone(Site) Tips { return Tips{math.NaN(), math.NaN()} }

// pegID names the i-th peg of a joint.
func pegID(joint string, i int) string { return fmt.Sprintf("%s-peg-%d", joint, i+1) }
