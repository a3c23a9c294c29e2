package draw

import "pegwright/geom/vec"

// Meta says what an item is, apart from its shape.
type Meta struct {
	// Class decides the pen and the layer unless these are given.
	Class Class
	// Owner is the id of the thing that the item shows, "" if none.
	Owner string
	// Layer is the name of the layer; "" means the name of the class.
	Layer string
	// Pen replaces the pen of the class; nil means PenFor(Class, Sheet.Step).
	// A pen of width 0 draws no line.
	Pen *Pen
	// Mark is a machine-readable key such as "hole:mortise:J12".
	Mark string
	// Group names the lettering that a text stands with, "" if it stands alone:
	// all texts of a group on a sheet are of one height.
	Group string
}

// Head returns m itself: every item embeds a Meta and so is an Item.
func (m *Meta) Head() *Meta { return m }

// LayerName returns the layer, or the class where no layer is named.
func (m *Meta) LayerName() string {
	if m.Layer != "" {
		return m.Layer
	}
	return string(m.Class)
}

// PenAt returns the pen that draws the item on a sheet of line width step step.
func (m *Meta) PenAt(step int) Pen {
	if m.Pen != nil {
		return *m.Pen
	}
	return PenFor(m.Class, step)
}

// Item is one mark on a sheet: *Path, *Circle, *Arc, *Ellipse or *Text.
type Item interface{ Head() *Meta }

// Path is a chain of straight lines, or an area bounded by one.
type Path struct {
	Meta
	// Pts are the corners, millimetres.
	Pts []vec.P
	// Closed joins the last point to the first.
	Closed bool
	// Filled fills the area with Grey, less the Holes (even-odd rule).
	Filled bool
	// Grey is the tone of the filling, 0 black to 1 white.
	Grey float64
	// Holes are further closed loops of the same area.
	Holes [][]vec.P
}

// Circle is a full circle.
type Circle struct {
	Meta
	// C is the centre and R the radius, millimetres.
	C vec.P
	R float64
	// Filled fills the disc with Grey, 0 black to 1 white.
	Filled bool
	Grey   float64
}

// Arc is a part of a circle, counter-clockwise from From to To.
type Arc struct {
	Meta
	// C is the centre and R the radius, millimetres.
	C vec.P
	R float64
	// From and To are radians, counter-clockwise from the x axis. A To that
	// is less than From gains full turns until it is not.
	From, To float64
}

// Ellipse is an ellipse or a part of one, as a circle shows in an axonometric
// view: the point at parameter t is C + RX cos t along the axis turned by Rot
// plus RY sin t across it.
type Ellipse struct {
	Meta
	// C is the centre; RX and RY are the half axes, millimetres.
	C      vec.P
	RX, RY float64
	// Rot turns the RX axis, radians counter-clockwise.
	Rot float64
	// From and To are parameters (not angles) in radians. From == To draws
	// the whole ellipse; a To that is less than From gains full turns.
	From, To float64
	// Filled fills a whole ellipse with Grey, 0 black to 1 white.
	Filled bool
	Grey   float64
}

// Anchor says which point of a line of text lies at its place.
type Anchor int

// The three anchors: the start, the middle or the end of the base line.
const (
	Start Anchor = iota
	Middle
	End
)

// Text is one line of lettering.
type Text struct {
	Meta
	// At is the anchor on the base line, millimetres.
	At vec.P
	// Height is the nominal height: that of the capitals, millimetres
	// (ISO 3098: 1.8, 2.5, 3.5, 5, 7, 10, 14, 20).
	Height float64
	// S is the text; figures of the form 6 1/2 are set as a fraction.
	S string
	// Bold asks for the bold face.
	Bold bool
	// Anchor is Start, Middle or End.
	Anchor Anchor
	// Rot turns the base line about At, radians counter-clockwise.
	Rot float64
	// Halo backs the text with white, so that lines do not run through it.
	Halo bool
}
