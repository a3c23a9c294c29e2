// Package draw is the drawing model: sheets of paper and the marks on them.
//
// It knows nothing of timber. All coordinates are millimetres on paper, the
// origin is the lower left corner of the sheet and y points up; angles are
// radians counter-clockwise. A renderer (draw/svg, draw/pdf) turns a Sheet into
// bytes and adds nothing of its own.
//
// Every item carries a Meta: its class (which decides the pen, after ISO 128),
// its owner, its layer, and a mark, a key by which a measuring test finds it
// again in the rendered sheet. Items are used by pointer:
//
//	s.Add(&draw.Circle{Meta: draw.Meta{Class: draw.Part, Mark: "hole:J12"}, C: c, R: r})
package draw
