package templates

import (
	"slices"
	"strings"

	"pegwright/draw"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// plan is a template laid out in its view and not yet on paper.
type plan struct {
	kind    string // "near", "far", "flap", "through", "tenon", "mate" or "end"
	joint   *geom.Joint
	v       view
	holes   []hole
	shapes  []shape
	guides  []guide
	strokes []stroke
	dims    []dimension
	windows [][]vec.P
	arrow   *arrow
	end     geom.End // of an end pattern, the end of its timber
	endName string   // what line J is
	tip     float64  // of the pattern of a finished end, from line J to the tip, mm
	part    part     // where the template comes in parts
	housed  bool     // a housing takes the register arris away
	need    []vec.P  // must show
	ends    []vec.P  // should show first of all: where dimensions end
	most    []vec.P  // should show
	want    []vec.P  // is shown where there is room
	serves  []plan   // all plans that this template serves, itself first
}

// hole is a peg hole on the view.
type hole struct {
	peg    *geom.Peg
	n      int // which hole of its joint, from 1
	c      vec.P
	bore   float64
	shadow bool  // the mortise hole on a tenon
	other  vec.P // the mortise hole that belongs to a tenon hole
	mark   string
}

// shape is an outline that lies behind or on the face.
type shape struct {
	name  string
	pts   []vec.P
	class draw.Class
	mark  string
}

// stroke is a line without words.
type stroke struct {
	a, b  vec.P
	class draw.Class
	mark  string
}

// guide is a straight line with its meaning.
type guide struct {
	name  string
	a, b  vec.P
	class draw.Class
	mark  string
	below bool // its name stands to the right of the way from a to b
}

// edge reports whether the guide is a line of the timber, of an end pattern.
func (g guide) edge() bool { return strings.HasPrefix(g.mark, "edge:") }

// dimension is a distance on the view: from a to b, set off to the left of the
// way, with a word before its figure.
type dimension struct {
	a, b vec.P
	off  float64
	word string
}

// arrow is a broad arrow with a word.
type arrow struct {
	base, d vec.P
	word    string
}

// far is a length beyond every sheet, mm.
const far = 5000.0

// infinite returns the guide along d through p.
func infinite(p, d vec.P) (a, b vec.P) { return p.Sub(d.Mul(far)), p.Add(d.Mul(far)) }

// role replaces the id of the enterer by its role, so that joints that look the
// same share their words.
func role(j *geom.Joint, name string) string {
	return strings.ReplaceAll(name, j.Of.ID, enterer(j))
}

// enterer is the word for the timber that enters a joint: its role, or its id
// where it has none.
func enterer(j *geom.Joint) string {
	if j.Of.Role == "" {
		return j.Of.ID
	}
	return j.Of.Role
}

// anyEnterer is the word where a template serves joints with enterers of
// several roles.
const anyEnterer = "entering timber"

// called puts another word for the enterer into the name of a line.
func called(name string, j *geom.Joint, word string) string {
	return strings.ReplaceAll(name, " "+enterer(j), " "+word)
}

// number returns which of the joint's pegs a peg is, from 1.
func number(j *geom.Joint, g *geom.Peg) int {
	return 1 + slices.IndexFunc(j.Pegs, func(q geom.Peg) bool { return q.ID == g.ID })
}

// mark makes the key by which a measured thing is found again.
func mark(what string, j *geom.Joint, p *geom.Peg) string {
	if p == nil {
		return what + ":" + j.ID
	}
	return what + ":" + j.ID + ":" + p.ID
}
