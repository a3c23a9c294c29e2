package geom

import (
	"fmt"
	"strings"
)

// Dump returns the frame as readable text, one line a timber, cut, bore,
// joint and peg, for golden files and for a developer's eye. Lengths are
// millimetres, rounded to 0.001.
func (f *Frame) Dump() string {
	var b strings.Builder
	fmt.Fprintf(&b, "frame %s\n", f.Title)
	for _, t := range f.Timbers {
		o := t.Place.O
		fmt.Fprintf(&b, "timber %s role %s length %s section %s x %s ideal %s x %s at %s %s %s net %.0f mm3\n", t.ID, t.Role, num(t.Length),
			num(t.Section[0]), num(t.Section[1]), num(t.Ideal[0]), num(t.Ideal[1]), num(o.X), num(o.Y), num(o.Z), t.NetVolume)
		for _, c := range t.Cuts {
			lo, hi := c.Solid.Bounds()
			fmt.Fprintf(&b, "  cut %s of %s x %s..%s y %s..%s z %s..%s\n", c.Name, c.Joint, num(lo.X), num(hi.X), num(lo.Y), num(hi.Y), num(lo.Z), num(hi.Z))
		}
		for _, h := range t.Bores {
			fmt.Fprintf(&b, "  bore %s dia %s from %s %s %s to %s %s %s face %d to %d\n", h.Peg, num(h.Diameter),
				num(h.From.X), num(h.From.Y), num(h.From.Z), num(h.To.X), num(h.To.Y), num(h.To.Z), h.Entry, h.Exit)
		}
	}
	for _, j := range f.Joints {
		fmt.Fprintf(&b, "joint %s %s mark %s: %s into %s face %d let in %s\n", j.ID, j.Kind, j.Mark, j.Of.ID, j.Into.ID, j.Entered, num(j.LetIn))
		for _, p := range j.Pegs {
			fmt.Fprintf(&b, "  peg %s bore %s length %s a %s b %s p %s offset %s relish %s %s\n", p.ID, num(p.Bore), num(p.Length),
				num(p.A), num(p.B), num(p.P), num(p.Offset), num(p.Relish), p.Window.Grade)
		}
	}
	return b.String()
}

// num writes a length to a thousandth, with no negative zero.
func num(x float64) string {
	s := fmt.Sprintf("%.3f", x)
	if s == "-0.000" {
		return "0.000"
	}
	return s
}
