package spec

import (
	"math"
	"strings"

	"gopkg.in/yaml.v3"

	"pegwright/geom/measure"
)

// bound is what a length must keep to.
type bound int

const (
	anyLength bound = iota
	notNegative
	positive
)

// Limits of lengths, in millimetres.
const (
	maxLength  = 1e6  // a kilometre
	maxSection = 1500 // five feet
	minSection = 10   // three eighths of an inch
	maxLegs    = 10e3
)

// scalar returns the text of a single value; want names it for the message.
func (r *reader) scalar(n *yaml.Node, want string) (string, bool) {
	switch {
	case n.Kind == yaml.AliasNode:
		return "", false
	case n.Kind != yaml.ScalarNode:
		r.fault(n, "", want+" is wanted here, not "+kindWord(n), "write "+want)
		return "", false
	case isNull(n) || strings.TrimSpace(n.Value) == "":
		r.fault(n, "", want+" is missing here", "write "+want)
		return "", false
	}
	return n.Value, true
}

// length reads a length or an expression that comes to one.
func (r *reader) length(n *yaml.Node, b bound) Length {
	s, ok := r.scalar(n, "a length")
	if !ok {
		return Length{}
	}
	mm, err := measure.ParseLength(s, r.scope)
	if err != nil {
		r.misread(n, err)
		return Length{}
	}
	if !r.bounded(n, mm, b) {
		return Length{}
	}
	return Length{MM: mm, At: r.pos(n), Src: s, Set: true}
}

// show writes a length in the units of the file.
func (r *reader) show(mm float64) string { return r.scope.Unit.Units().Format(mm) }

// bounded holds a length to its bound and to what a frame can need.
func (r *reader) bounded(n *yaml.Node, mm float64, b bound) bool {
	switch {
	case math.Abs(mm) > maxLength:
		r.fault(n, n.Value, "a length of more than a kilometre", r.unitMend())
	case b == positive && mm <= 0:
		r.fault(n, n.Value, "this length must be greater than zero", "write a length above zero")
	case b == notNegative && mm < 0:
		r.fault(n, n.Value, "this length must not be less than zero", "write zero or a length above it")
	default:
		return true
	}
	return false
}

// number reads a plain number from low to high.
func (r *reader) number(n *yaml.Node, low, high float64, whole bool) Number {
	s, ok := r.scalar(n, "a number")
	if !ok {
		return Number{}
	}
	v, err := measure.ParseNumber(s, r.scope)
	if err != nil {
		r.misread(n, err)
		return Number{}
	}
	if !(v >= low && v <= high) || whole && v != math.Trunc(v) {
		kind := "a number"
		if whole {
			kind = "a whole number"
		}
		r.fault(n, s, kind+" from "+plain(low)+" to "+plain(high)+" is wanted here", "write "+kind+" in that range")
		return Number{}
	}
	return Number{V: v, At: r.pos(n), Src: s, Set: true}
}

// flag reads a yes or a no.
func (r *reader) flag(n *yaml.Node) Flag {
	s, ok := r.scalar(n, "yes or no")
	if !ok {
		return Flag{}
	}
	on, known := yesNo(s)
	if !known {
		r.fault(n, s, "yes or no is wanted here", "write yes or no")
		return Flag{}
	}
	return Flag{On: on, At: r.pos(n), Set: true}
}

func yesNo(s string) (on, known bool) {
	switch strings.ToLower(s) {
	case "yes", "true":
		return true, true
	case "no", "false":
		return false, true
	}
	return false, false
}

func (r *reader) unitMend() string {
	return "check the unit: this file counts in " + r.scope.Unit.Plural()
}

// section reads the two sizes of a stick.
func (r *reader) section(n *yaml.Node) Section {
	return r.pair(n, "a size such as 6 x 8", "any stick", minSection, maxSection)
}

// pair reads A x B, each from low to high millimetres. of names what may not be
// larger or smaller.
func (r *reader) pair(n *yaml.Node, want, of string, low, high float64) Section {
	s, ok := r.scalar(n, want)
	if !ok {
		return Section{}
	}
	a, b, err := measure.ParseSection(s, r.scope)
	if err != nil {
		r.misread(n, err)
		return Section{}
	}
	switch {
	case min(a, b) <= 0:
		r.fault(n, s, "both sizes must be greater than zero", "write two sizes above zero")
	case min(a, b) < low:
		r.fault(n, s, "this is smaller than "+of+", "+r.show(low)+" at least", r.unitMend())
	case max(a, b) > high:
		r.fault(n, s, "this is larger than "+of+", "+r.show(high)+" at most", r.unitMend())
	default:
		return Section{A: a, B: b, At: r.pos(n), Src: s, Set: true}
	}
	return Section{}
}

// pitch reads the pitch of a roof.
func (r *reader) pitch(n *yaml.Node) Pitch {
	s, ok := r.scalar(n, "a pitch such as 9 in 12")
	if !ok {
		return Pitch{}
	}
	p, err := measure.ParsePitch(s, r.scope)
	if err != nil {
		r.misread(n, err)
		return Pitch{}
	}
	if p.Degrees < 1 || p.Degrees > 75 {
		r.fault(n, s, "a roof pitch lies between 1 and 75 degrees", "write for example 9 in 12")
		return Pitch{}
	}
	return Pitch{Pitch: p, At: r.pos(n), Set: true}
}

// flare reads a dovetail's flare.
func (r *reader) flare(n *yaml.Node) Flare {
	s, ok := r.scalar(n, "a flare such as 1 in 7")
	if !ok {
		return Flare{}
	}
	p, err := measure.ParsePitch(s, r.scope)
	if err != nil {
		r.fault(n, s, "this is not a flare", "write a rise of one in a run, such as 1 in 7")
		return Flare{}
	}
	run := 1 / math.Tan(p.Degrees*math.Pi/180)
	run = math.Round(run*1e6) / 1e6
	if !(run >= 4 && run <= 12) {
		r.fault(n, s, "a flare lies between 1 in 4 and 1 in 12", "write for example 1 in 7")
		return Flare{}
	}
	return Flare{Run: run, At: r.pos(n), Set: true}
}

// word reads one of a choice of words.
func (r *reader) word(n *yaml.Node, words []string) Text {
	s, ok := r.scalar(n, "a word")
	if !ok {
		return Text{}
	}
	w := strings.ToLower(strings.Join(strings.Fields(s), " "))
	for _, c := range words {
		if w == c {
			return Text{S: c, At: r.pos(n), Set: true}
		}
	}
	r.fault(n, s, "this word has no meaning here", suggest(s, words))
	return Text{}
}

// role reads the name of a role, singular or plural.
func (r *reader) role(n *yaml.Node) Text {
	s, ok := r.scalar(n, "a role such as post")
	if !ok {
		return Text{}
	}
	name, known := RoleNamed(s)
	if !known {
		r.fault(n, s, "there is no such role", suggest(s, roleNames()))
		return Text{}
	}
	return Text{S: name, At: r.pos(n), Set: true}
}

// seasoning reads how dry a wood is: a word, or its moisture content.
func (r *reader) seasoning(n *yaml.Node) Seasoning {
	s, ok := r.scalar(n, "a seasoning such as green")
	if !ok {
		return Seasoning{}
	}
	if head, percent := strings.CutSuffix(strings.TrimSpace(s), "%"); percent {
		v, err := measure.ParseNumber(head, r.scope)
		if err != nil {
			r.misread(n, err)
			return Seasoning{}
		}
		if !(v > 0 && v <= 200) {
			r.fault(n, s, "a moisture content lies between 0 and 200 %", "write for example 19%")
			return Seasoning{}
		}
		return Seasoning{Percent: v, At: r.pos(n), Set: true}
	}
	t := r.word(n, seasonings())
	return Seasoning{Word: t.S, At: t.At, Set: t.Set}
}

// seasonings are the words for how dry a wood is.
func seasonings() []string { return []string{"green", "part seasoned", "dry"} }

// drawbore reads an offset between two holes, or who decides it.
func (r *reader) drawbore(n *yaml.Node) Drawbore {
	s, ok := r.scalar(n, "auto, none or a length")
	if !ok {
		return Drawbore{}
	}
	switch strings.ToLower(s) {
	case "auto":
		return Drawbore{Mode: DrawAuto, At: r.pos(n), Set: true}
	case "none", "no":
		return Drawbore{Mode: DrawNone, At: r.pos(n), Set: true}
	}
	l := r.length(n, notNegative)
	return Drawbore{Mode: DrawLength, MM: l.MM, At: l.At, Set: l.Set}
}

// along reads the place of the first hole along the bearing edge.
func (r *reader) along(n *yaml.Node) Along {
	s, ok := r.scalar(n, "a length or centred")
	if !ok {
		return Along{}
	}
	if w := strings.ToLower(s); w == "centred" || w == "centered" {
		return Along{Centred: true, At: r.pos(n), Set: true}
	}
	l := r.length(n, notNegative)
	return Along{MM: l.MM, At: l.At, Set: l.Set}
}

// point reads three lengths.
func (r *reader) point(n *yaml.Node) Point {
	var c []Length
	ok := r.items(n, "a point", 3, false, func(_ int, v *yaml.Node) { c = append(c, r.length(v, anyLength)) })
	if !ok {
		return Point{}
	}
	if len(n.Content) != 3 {
		r.fault(n, "", "a point has three lengths", "write [x, y, z]: along the building, across it, up")
		return Point{}
	}
	if len(c) < 3 {
		return Point{}
	}
	return Point{X: c[0], Y: c[1], Z: c[2], At: r.pos(n), Set: c[0].Set && c[1].Set && c[2].Set}
}
