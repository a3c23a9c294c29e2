package templates

import (
	"math"
	"strings"

	"pegwright/draw"
	"pegwright/geom/vec"
)

// name writes the meaning of a line beside it, along the line.
func (c *canvas) name(g guide) {
	a, b, ok := clipSegment(c.seen(), g.a, g.b)
	if !ok {
		return
	}
	d := b.Sub(a).Unit()
	rot := math.Atan2(d.Y, d.X)
	side := 1.0 // to the left of the way from a to b
	if g.below {
		side = -1
	}
	if rot > math.Pi/2+1e-6 || rot <= -math.Pi/2+1e-6 {
		rot -= math.Copysign(math.Pi, rot)
		side = -side
	}
	up := vec.P{X: -math.Sin(rot), Y: math.Cos(rot)}
	near := func(s float64) vec.P {
		if s > 0 {
			return up.Mul(1.2 + 0.35*lettering)
		}
		return up.Mul(-1.2 - 1.2*lettering)
	}
	ks := [...]float64{0.5, 0.35, 0.65, 0.25, 0.75, 0.3, 0.7, 0.4, 0.6, 0.2, 0.8, 0.15, 0.85, 0.1, 0.9}
	spots := make([]spot, 0, 2*len(ks))
	for _, s := range [...]float64{side, -side} {
		for _, k := range ks {
			spots = append(spots, spot{a.Lerp(b, k).Add(near(s)), draw.Middle, rot})
		}
	}
	bold := g.class == draw.Register || g.class == draw.Part
	at := []pass{{0, ofAll}, {0, ofHeavy}, {2, ofHeavy}}
	if c.search(at, g.name, lettering, bold, spots) || c.nameInTwo(g, spots, up, bold) {
		return
	}
	if c.nameFlat(g, a, b, bold) || c.label(g.name, lettering, bold, spots...) {
		c.leader(a.Lerp(b, 0.5)) // it found no place at its line
	}
}

// nameInTwo writes a long name in two lines along its line, where no heavy line
// crosses them.
func (c *canvas) nameInTwo(g guide, spots []spot, up vec.P, bold bool) bool {
	two := inTwo(g.name)
	if two == g.name {
		return false
	}
	high := append([]spot(nil), spots...)
	for i := range high { // the second line stands below the first
		if up.Dot(high[i].p.Sub(g.a)) > 0 {
			high[i].p = high[i].p.Add(up.Mul(lettering * lead))
		}
	}
	return c.search([]pass{{0, ofAll}, {0, ofHeavy}, {2, ofHeavy}}, two, lettering, bold, high)
}

// inTwo breaks a name after its colon, else at the space nearest to its middle.
func inTwo(name string) string {
	if i := strings.Index(name, ": "); i > 0 {
		return name[:i+1] + "\n" + name[i+2:]
	}
	if i := strings.Index(name, " ("); i > 0 {
		return name[:i] + "\n" + name[i+1:]
	}
	best := -1
	for i, r := range name {
		if r == ' ' && (best < 0 || abs(float64(2*i-len(name))) < abs(float64(2*best-len(name)))) {
			best = i
		}
	}
	if best < 0 {
		return name
	}
	return name[:best] + "\n" + name[best+1:]
}

// nameWide is how wide a name stands that finds no room in two lines, mm.
const nameWide = 30.0

// nameFlat writes a name level beside its line, where no heavy line crosses it,
// in as many lines as it takes.
func (c *canvas) nameFlat(g guide, a, b vec.P, bold bool) bool {
	var spots []spot
	for _, k := range []float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9} {
		p := a.Lerp(b, k).Sub(vec.P{Y: lettering / 2})
		spots = append(spots, spot{p.Add(vec.P{X: 4}), draw.Start, 0}, spot{p.Sub(vec.P{X: 4}), draw.End, 0})
	}
	return c.search([]pass{{0, ofAll}, {0, ofHeavy}}, g.name, lettering, bold, spots) ||
		c.search([]pass{{0, ofHeavy}, {40, ofHeavy}}, inTwo(g.name), lettering, bold, spots) ||
		c.search([]pass{{40, ofHeavy}, {60, ofFirm}}, strings.Join(wrap(g.name, nameWide, lettering, bold), "\n"), lettering, bold, spots)
}

// names writes what the outlines and the window are.
func (p plan) names(c *canvas) {
	for i, s := range p.shapes {
		area := clipArea(c.seen(), s.pts)
		if len(area) < 3 {
			continue
		}
		spots := inside(area)
		if i > 0 && p.kind == "flap" { // the mouth is no part of what this names
			if c.areaName(s.name, outside(p.shapes[0].pts, spots)) {
				continue
			}
		}
		if !c.areaName(s.name, spots) {
			c.label(inTwo(s.name), lettering, false, spots...)
		}
	}
	for i, w := range p.windows {
		area := clipArea(c.seen(), w)
		if i > 0 || len(area) < 3 {
			continue
		}
		c.windowName(area)
	}
}

// windowName writes what the area of a peg window is: in it, else beside it with
// a leader.
func (c *canvas) windowName(area []vec.P) {
	const text = "peg window (tone)"
	spots := inside(area)
	if c.search([]pass{{0, ofAll}}, text, lettering, false, spots) {
		return
	}
	mid := spots[len(spots)-1].p.Add(vec.P{Y: lettering / 2})
	c.aim = func(q patch) (from, to vec.P) {
		from = q.nearest(c.at(mid))
		for k := 0.0; k < 1; k += 0.02 {
			if to = from.Lerp(c.at(mid), k); offArea(area, to.Sub(c.o)) < -1 {
				break
			}
		}
		return from, to
	}
	aim := c.aim
	beside := c.search([]pass{{30, ofAll}, {30, ofHeavy}}, text, lettering, false, spots)
	c.aim = nil
	if beside {
		from, to := aim(c.busy[len(c.busy)-1])
		c.s.Line(draw.Dimension, from, to).Mark = "leader:" + c.owner
		c.led(from, to)
	} else if c.label(text, lettering, false, spots...) {
		c.leader(mid)
	}
}

// areaName writes the name of an outline at one of the spots or near the first,
// in one line or in more.
func (c *canvas) areaName(name string, spots []spot) bool {
	if len(spots) == 0 {
		return false
	}
	texts := [3]*lettered{letter(name, lettering, false)}
	for _, at := range [][]pass{{{0, ofAll}}, {{0, ofHeavy}}, {{8, ofHeavy}}} {
		for i := range texts {
			switch {
			case texts[i] != nil:
			case i == 1:
				texts[i] = letter(inTwo(name), lettering, false)
			case i == 2:
				texts[i] = letter(strings.Join(wrap(name, nameWide, lettering, false), "\n"), lettering, false)
			}
			if c.place(texts[i], at, spots) {
				return true
			}
		}
	}
	return false
}

// outside returns the spots at which lettering stands outside a convex outline.
func outside(loop []vec.P, spots []spot) []spot {
	var out []spot
	for _, s := range spots {
		if offArea(loop, s.p.Add(vec.P{Y: lettering / 2})) > lettering {
			out = append(out, s)
		}
	}
	return out
}

// offArea returns how far p lies outside the farthest side of a convex outline
// that runs counter-clockwise; it is negative inside.
func offArea(loop []vec.P, p vec.P) float64 {
	d := math.Inf(-1)
	for i, a := range loop {
		d = max(d, -turn(a, loop[(i+1)%len(loop)], p))
	}
	return d
}

// inside returns spots for a name within an area: toward its sides and corners
// first, where the name is least in the way.
func inside(area []vec.P) []spot {
	var mid vec.P
	for _, p := range area {
		mid = mid.Add(p.Mul(1 / float64(len(area))))
	}
	low := vec.P{Y: -lettering / 2}
	ks, ts := [...]float64{0.7, 0.55, 0.85, 0.4, 0.25, 0}, [...]float64{0.5, 0, 0.25, 0.75}
	out := make([]spot, 0, len(ks)*len(area)*len(ts))
	for _, k := range ks {
		for i, p := range area {
			q := area[(i+1)%len(area)]
			for _, t := range ts {
				out = append(out, spot{mid.Lerp(p.Lerp(q, t), k).Add(low), draw.Middle, 0})
			}
		}
	}
	return out
}
