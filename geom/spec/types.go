// Package spec reads a frame description: YAML in, typed values out, each with
// the place where it was written, so that any later finding can point at it.
// It knows keys, values and limits; what the values mean for wood is decided
// by the stages above.
package spec

import (
	"pegwright/geom/finding"
	"pegwright/geom/measure"
)

// Length is a length in millimetres. Set is false where the description says
// nothing; MM is then 0.
type Length struct {
	MM  float64
	At  finding.Pos
	Src string // as written
	Set bool
}

// Or returns the length in millimetres, or otherwise when none was written.
func (l Length) Or(otherwise float64) float64 {
	if l.Set {
		return l.MM
	}
	return otherwise
}

// Text is one written word or phrase.
type Text struct {
	S   string
	At  finding.Pos
	Set bool
}

// Or returns the text, or otherwise when none was written.
func (t Text) Or(otherwise string) string {
	if t.Set {
		return t.S
	}
	return otherwise
}

// Number is a plain number.
type Number struct {
	V   float64
	At  finding.Pos
	Src string
	Set bool
}

// Or returns the number, or otherwise when none was written.
func (n Number) Or(otherwise float64) float64 {
	if n.Set {
		return n.V
	}
	return otherwise
}

// Flag is a yes or a no.
type Flag struct {
	On  bool
	At  finding.Pos
	Set bool
}

// Or returns the answer, or otherwise when none was written.
func (f Flag) Or(otherwise bool) bool {
	if f.Set {
		return f.On
	}
	return otherwise
}

// Section is a pair of lengths in millimetres written A x B: the size of a
// stick, or the two legs of a brace.
type Section struct {
	A, B float64
	At   finding.Pos
	Src  string
	Set  bool
}

// Pitch is a roof slope, in degrees above level.
type Pitch struct {
	measure.Pitch
	At  finding.Pos
	Set bool
}

// Flare is how a dovetail widens: a rise of one in Run.
type Flare struct {
	Run float64
	At  finding.Pos
	Set bool
}

// Seasoning is how dry a timber is when it is cut: a word, or a moisture
// content in percent of oven-dry weight.
type Seasoning struct {
	Word    string  // "green", "part seasoned", "dry", or "" when a percentage was written
	Percent float64 // moisture content in percent; 0 when a word was written
	At      finding.Pos
	Set     bool
}

// DrawMode says how the offset of a drawbored joint is found.
type DrawMode int

// The three ways to give an offset.
const (
	DrawAuto   DrawMode = iota // chosen from wood and drying
	DrawNone                   // holes in line
	DrawLength                 // the length written
)

// Drawbore is the offset between mortise hole and tenon hole.
type Drawbore struct {
	Mode DrawMode
	MM   float64 // for DrawLength; 0 otherwise
	At   finding.Pos
	Set  bool
}

// Along is the place of the first hole along the receiver: a distance in
// millimetres from the bearing edge or nose, or the middle of the tenon.
type Along struct {
	Centred bool
	MM      float64
	At      finding.Pos
	Set     bool
}

// Param is a named parameter, in the order written.
type Param struct {
	Name  string
	Src   string // the expression, or what --set put in its place
	Value measure.Value
	At    finding.Pos // where the value was written (in the file, or "--set")
}

// Description is one frame as its owner wrote it.
type Description struct {
	Title    Text
	Unit     measure.Unit  // what a bare number means
	Units    measure.Units // how lengths are shown
	DrawnFor Text
	DrawnBy  Text
	Place    Text
	Date     Text
	Revision Text
	Note     Text
	Params   []Param
	Wood     Wood
	Woods    []OwnWood
	Stock    Stock
	Sections []RoleSection
	Layout   Layout
	Building Building
	Timbers  []Timber
	Joints   []Joint
	Measured []Measured
	Adjust   []Adjust
	Design   []Criterion
	Paper    Paper
}

// Section returns the section written for a role (singular name) under
// "sections".
func (d *Description) Section(role string) (Section, bool) {
	for _, s := range d.Sections {
		if s.Role.S == role {
			return s.Section, true
		}
	}
	return Section{}, false
}

// RoleSection is the section of every timber of one role.
type RoleSection struct {
	Role    Text // singular role name
	Section Section
}

// Wood is what the sticks and the pegs are made of.
type Wood struct {
	Species         Text
	Seasoning       Seasoning
	Planed          Flag
	Reduce          Length       // for every role that has none of its own
	ReduceBy        []RoleLength // reduction by role
	Longest         Length       // longest stick to be had
	ServiceMoisture Number       // percent in service
	PegSpecies      Text
	PegSeasoning    Seasoning
}

// OwnWood is a wood that the description gives itself.
type OwnWood struct {
	Name       Text
	Gravity    Number // oven-dry mass over green volume
	Tangential Number // shrinkage green to oven-dry, percent
	Radial     Number // the same
	Volumetric Number // the same
	Moisture   Number // when green, percent
	Hardwood   Flag
}

// Stock is what can be bought, and the tools that bear on how it is cut.
type Stock struct {
	Lengths   []Length // stock lengths of timber
	Prices    []Price
	Kerf      Length
	Billet    Section // side x length of the square billets for pegs
	LeadScrew Length  // of the bits
}

// Price is what a board foot (files in inches or feet) or a cubic metre of a
// wood costs.
type Price struct {
	Wood Text
	Cost Number
}

// RoleLength is a length that holds for one role.
type RoleLength struct {
	Role   Text // singular role name
	Length Length
}

// ReduceFor returns the reduction written for a role: its own, or the common
// one. Set is false when neither was written.
func (w Wood) ReduceFor(role string) Length {
	for _, r := range w.ReduceBy {
		if r.Role.S == role {
			return r.Length
		}
	}
	return w.Reduce
}

// Layout is how joints are laid out unless a joint says otherwise.
type Layout struct {
	All   JointSettings
	Roles []RoleSettings // by role of the entering timber, in the order written
}

// RoleSettings are joint settings for every timber of one role that enters
// another.
type RoleSettings struct {
	Role     Text // singular role name
	Settings JointSettings
}

// For returns the settings written for a role, laid over the common ones.
func (l Layout) For(role string) JointSettings {
	return l.All.With(l.Role(role))
}

// Role returns the settings written for a role alone.
func (l Layout) Role(role string) JointSettings {
	for _, r := range l.Roles {
		if r.Role.S == role {
			return r.Settings
		}
	}
	return JointSettings{}
}

// JointSettings are all the things that can be set on a joint. Each is absent
// unless written.
type JointSettings struct {
	Thickness     Length   // tenon thickness
	FromReference Length   // reference face to the near cheek
	TenonLength   Length   // bearing plane to tenon end
	Through       Flag     // tenon through the receiver
	Stub          Flag     // short tenon without a peg
	Housing       Length   // bearing plane below the ideal face
	HoldBackStart Length   // tenon narrower on the receiver's start side
	HoldBackEnd   Length   // tenon narrower on the receiver's end side
	Bore          Length   // hole diameter
	Pegs          Number   // how many
	OffShoulder   Length   // bearing plane to hole
	Along         Along    // bearing edge or nose to hole
	Head          Length   // peg standing proud where it is driven
	Lead          Length   // peg beyond the far face
	Drawbore      Drawbore // offset of the holes
	Draw          Text     // "along the brace" or "square"
	FromFace      Number   // face from which the peg is driven, 1 to 4
	Clearance     Length   // mortise wider than the tenon
	Steps         Number   // notches of a step-lap seat, 1 or 2
	SeatDepth     Length   // depth of a rafter seat, square to the plate
	Legs          Section  // legs of a brace
	LapDepth      Length   // how deep a lap is let into the receiver
	IntoFace      Number   // face of the receiver that a lap or pocket is let into, 1 to 4
	Flare         Flare    // of a dovetail
	Wedge         Flag     // a dovetail is tightened by a wedge
	Bearing       Length   // length of a pocket, into the receiver
	PocketDepth   Length   // of a pocket, down from the enterer's upper face
	Haunch        Length   // shallow tenon left where the tenon is held back
	Proud         Length   // through tenon beyond the far face
	Diminished    Flag     // housing of an angled joint runs out at the inner edge
	SquareEnd     Flag     // inner end of an angled mortise square to the face
	Scarf         Scarf
	Drop          Length // flare of a wedged tenon
	Taper         Number // its wedge rises 1 in this many
}

// Scarf is what can be set on a scarf.
type Scarf struct {
	Length   Length // of the table
	Undercut Number // butts lean 1 in this many; 0: square
	Butt     Length // height of the butts of a splayed scarf
	Key      Text   // "none", "key" or "wedges"
	KeySize  Length
	Upright  Flag // the table stands on edge
}

// Building is the frame in the words of the common case.
type Building struct {
	At         finding.Pos
	Set        bool
	Span       Length
	Bays       []Length
	Eave       Length
	TieHeight  Length // top of tie above the datum
	Ties       Text   // "dropped" between the posts, or "over plates"
	LeanTos    []LeanTo
	Roof       Roof
	Sills      Flag
	CrossSills Text // where sills run across: "at gables" or "at bents"
	Piers      Piers
	Floor      Floor
	Loft       Loft
	Girts      Girts
	Braces     Braces
	Openings   []Opening
}

// Roof is the roof of a building.
type Roof struct {
	At            finding.Pos
	Set           bool
	Shape         Text   // "gable" or "shed"
	HighWall      Text   // of a shed roof: "north" or "south"
	Ridge         Text   // "beam" or "none"
	KingPosts     Text   // under a ridge beam: "every bent" or "gables"
	Truss         Text   // on the ties: "king post", "queen posts" or "none"
	Heel          Length // wood of the tie behind the foot of a principal rafter
	PurlinSpacing Length // along the slope
	Collars       Collars
	Pitch         Pitch
	Overhang      Length // rafter tail beyond the wall, level
	GableOverhang Length // plate beyond the gable
	RafterSpacing Length
	Seat          Text // "step-lap" or "birdsmouth"
	Tail          Text // "square" or "plumb"
}

// Collars tie the pairs of rafters together above their feet.
type Collars struct {
	At     finding.Pos
	Set    bool
	Height Length // underside above the plates
	On     Text   // "every pair" or "every second pair"
}

// LeanTo is a lower roof against an eave wall, on posts of its own.
type LeanTo struct {
	At     finding.Pos
	Wall   Text // "north" or "south"
	Span   Length
	Pitch  Pitch
	Height Length // top of the ledger above the datum; under the braces when not set
}

// Point is a place in the frame's axes.
type Point struct {
	X, Y, Z Length
	At      finding.Pos
	Set     bool
}

// TimberSettings are what can be set on a timber, in its own entry or by an
// adjustment.
type TimberSettings struct {
	Section   Section
	Species   Text
	Seasoning Seasoning
	Planed    Flag
	Reduce    Length
	Trim      Length // extra length ordered at each end
}

// Timber is one stick described by itself, with two points or, for a brace,
// with the two timbers it stands between.
type Timber struct {
	ID      Text
	At      finding.Pos
	Role    Text // singular role name
	From    Point
	To      Point
	Faces   []Text // the two reference faces, none or two
	Between []Text // receivers of a brace, none or two
	Legs    Section
	// OffReference is where the brace's own reference face lies, measured from
	// the reference face of its receivers.
	OffReference Length
	// Toward is the side of the first receiver on which a brace stands, as a
	// compass word; needed only where both sides are possible.
	Toward Text
	TimberSettings
}

// Joint is one joint described by itself.
type Joint struct {
	At   finding.Pos
	ID   Text
	Kind Text
	Of   Text // the entering timber
	End  Text // "start" or "end"
	Into Text // the receiver
	JointSettings
}

// Measured is the true size of one stick at its ends.
type Measured struct {
	ID         Text
	Start, End Section
}

// Adjust changes the settings of the joints or timbers that a selector picks.
// Exactly one of Joints and Timbers is set.
type Adjust struct {
	At      finding.Pos
	Joints  Selector
	Timbers Selector
	Joint   JointSettings  // used with Joints
	Timber  TimberSettings // used with Timbers
}

// Selector picks joints or timbers in plain words.
type Selector struct {
	Src       string
	At        finding.Pos
	Set       bool
	All       bool
	Roles     []string // singular role names
	IDs       []string
	IntoRoles []string
	IntoIDs   []string
	Bent      int    // 0: any
	Bay       int    // 0: any
	Wall      string // north, south, east, west; "": any
}

// Criterion is one line of the design criteria, kept as written.
type Criterion struct{ Name, Value Text }

// Paper is the size of the sheets and of the full-scale templates, what a
// printer makes of 100 mm, and whether story poles and hidden lines are drawn.
type Paper struct {
	Sheets, Templates Text
	Along, Across     Length // measured on the print, along the long side of the paper and along the short
	Poles, Hidden     Flag
}
