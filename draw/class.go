package draw

// Class is what an item means, and so how it is drawn.
type Class string

// The classes of items, with their line types after ISO 128-2.
const (
	Part      Class = "part"      // visible edge: continuous wide (01.2)
	Hidden    Class = "hidden"    // hidden edge: dashed narrow (02.1)
	Dimension Class = "dimension" // dimension, extension, leader: continuous narrow (01.1)
	Centre    Class = "centre"    // centre line: long-dash dot narrow (04.1)
	Hatch     Class = "hatch"     // hatching of cut wood: continuous fine
	FrameLine Class = "frame"     // border and title block: continuous wide
	TextClass Class = "text"      // lettering
	Phantom   Class = "phantom"   // adjacent or removed part: long-dash double-dot narrow (05.1)
	Register  Class = "register"  // line laid on an arris or a scribed line: continuous, one width above wide
	Trace     Class = "trace"     // path of a part pulled out: long dashes, fine
	Fill      Class = "fill"      // light tone, no line
)

// Classes returns all classes in the order in which they are painted when they
// lie on each other: tone first, lettering last.
func Classes() []Class {
	return []Class{Fill, Hatch, Trace, Phantom, Hidden, Centre, Part, Register,
		Dimension, FrameLine, TextClass}
}

// Pen is a line: width and dash lengths in millimetres, grey 0 black to 1
// white. A nil Dash is a continuous line.
type Pen struct {
	Width float64
	Dash  []float64
	Grey  float64
}

// Widths of ISO 128-2, millimetres, each √2 times the one before, from fine on
// a small sheet up.
var widths = [...]float64{0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0}

// Wide, narrow and fine as places in the list of widths: 4 : 2 : √2.
const (
	fine   = 0
	narrow = 1
	wide   = 3
	heavy  = 4
)

// PenFor returns the pen of class c. Step 0 is for sheets up to A4 and Letter
// (wide 0.5, narrow 0.25, fine 0.18 mm); each further step is the next width of
// ISO 128 (step 1: 0.7, 0.35, 0.25), up to step 3. Dashes are multiples of the
// line width d: dash 12d, long dash 24d, gap 3d, dot 0.5d.
func PenFor(c Class, step int) Pen {
	step = max(0, min(step, len(widths)-1-heavy))
	w := func(place int) float64 { return widths[place+step] }
	switch c {
	case Part, FrameLine:
		return Pen{Width: w(wide)}
	case Register:
		return Pen{Width: w(heavy)}
	case Hidden:
		return dashed(w(narrow), 12, 3)
	case Centre:
		return dashed(w(narrow), 24, 3, 0.5, 3)
	case Phantom:
		return dashed(w(narrow), 24, 3, 0.5, 3, 0.5, 3)
	case Trace:
		return dashed(w(fine), 24, 3)
	case Hatch:
		return Pen{Width: w(fine)}
	case Fill:
		return Pen{}
	}
	return Pen{Width: w(narrow)}
}

// dashed returns a pen of width d whose dashes are multiples of d.
func dashed(d float64, multiples ...float64) Pen {
	p := Pen{Width: d, Dash: make([]float64, len(multiples))}
	for i, m := range multiples {
		p.Dash[i] = float64(m * d)
	}
	return p
}

// stepFor returns the line width step for a sheet of w by h millimetres: 0 up
// to A4, Letter and Legal, 1 above.
func stepFor(w, h float64) int {
	if min(w, h) > 220 {
		return 1
	}
	return 0
}
