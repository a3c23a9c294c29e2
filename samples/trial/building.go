package trial

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// dice draws the words and numbers of a description.
type dice struct {
	*rand.Rand
	k float64 // file units to the inch
	// top is the roof to be described, which also says what spans suit it.
	top    string
	leanTo string // the wall that a lean-to stands against
	b      strings.Builder
}

func (d *dice) line(format string, a ...any) { fmt.Fprintf(&d.b, format+"\n", a...) }

// len is a length of lo to hi inches in whole steps of the file's unit.
func (d *dice) len(lo, hi float64) string {
	return fmt.Sprintf("%.0f", (lo+d.Float64()*(hi-lo))*d.k)
}

func (d *dice) pick(list ...string) string { return list[d.IntN(len(list))] }

func (d *dice) size(lo, hi int) float64 { return float64(lo+d.IntN(hi-lo+1)) * d.k }

// some draws one or more of a list, in its order.
func (d *dice) some(list ...string) string {
	for {
		var r []string
		for _, x := range list {
			if d.IntN(2) == 0 {
				r = append(r, x)
			}
		}
		if len(r) > 0 {
			return strings.Join(r, ", ")
		}
	}
}

// Building describes a building such as a user might write, its sizes drawn
// at random within what a small pegged frame can have. Numbers are bare and
// take the file's unit.
func Building(r *rand.Rand) string {
	d := &dice{Rand: r, k: 1}
	d.top = d.pick("none", "none", "seat", "seat", "ridge", "shed", "king truss", "queen truss", "collars", "lean-tos", "over plates")
	unit := "in"
	if r.IntN(3) == 0 {
		unit, d.k = "mm", 25
	}
	d.line("frame: Random")
	d.line("units: %s", unit)
	longest := ""
	if r.IntN(4) == 0 {
		longest = ", longest: " + d.len(288, 384)
	}
	d.line("wood: {timbers: {species: %s, seasoning: %s%s}}", d.pick("eastern white pine", "eastern hemlock", "white oak", "norway spruce"), d.pick("green", "dry"), longest)
	d.sections()
	d.layout()
	d.line("building:")
	bays := d.body()
	sills := d.feet()
	d.walls()
	d.braces(sills)
	d.openings(bays)
	d.floors(sills)
	return d.b.String()
}

// layout writes variants of the usual joints.
func (d *dice) layout() {
	n := d.IntN(8)
	if n == 1 && (d.top == "queen truss" || d.top == "over plates") {
		return // ties that lie on their plates have no peg there
	}
	switch n {
	case 0:
		d.line("layout: {girt: {housing: %s}, brace: {draw: square}}", fmt.Sprint(0.25*d.k))
	case 1:
		d.line("layout: {tie: {housing: %g, pegs: 2}}", 0.5*d.k)
	case 2:
		d.line("layout: {brace: {housing: %g}}", 0.5*d.k)
	case 3:
		d.line("layout: {brace: {housing: %g, diminished: yes}}", 0.5*d.k)
	case 4:
		d.line("layout: {brace: {square end: yes}, post: {clearance: %g}}", d.k/32)
	}
}

func (d *dice) sections() {
	if d.IntN(3) == 0 {
		return
	}
	post, tie := d.size(6, 8), d.size(7, 9)
	plate := max(post, d.size(6, 8))
	d.line("sections: {post: %g x %g, plate: %g x %g, tie: %g x %g, girt: %g x %g, sill: %g x %g, brace: %g x %g}",
		post, post, plate, plate, post, tie, d.size(5, 6), d.size(5, 6), d.size(6, 8), d.size(8, 10), d.size(3, 4), d.size(4, 6))
}

// body writes span, bays, eave and roof and returns the number of bays.
func (d *dice) body() int {
	lo, hi, eave := 66.0, 192.0, 84.0
	switch d.top {
	case "king truss", "queen truss":
		lo, hi = 192, 288
	case "collars", "shed":
		lo, hi = 84, 132
	case "lean-tos":
		eave = 126
	}
	d.line("  span: %s", d.len(lo, hi))
	var bays []string
	for range 1 + d.IntN(1+d.IntN(1+d.IntN(5))) {
		bays = append(bays, d.len(72, 168))
	}
	d.line("  bays: [%s]", strings.Join(bays, ", "))
	d.line("  eave: %s", d.len(eave, 132))
	d.roof()
	return len(bays)
}

func (d *dice) roof() {
	flat, steep := 5, 14
	more := "shape: gable"
	switch d.top {
	case "none":
		return
	case "seat":
		more += ", seat: " + d.pick("step-lap", "birdsmouth")
	case "ridge":
		more += ", ridge: beam, king posts: " + d.pick("every bent", "gables")
	case "shed":
		flat, steep = 3, 8
		more = "shape: shed, high wall: " + d.pick("north", "south")
	case "king truss":
		flat, steep = 7, 13
		more += ", truss: king post"
	case "queen truss":
		flat, steep = 7, 13
		more += ", truss: queen posts, purlin spacing: " + d.len(36, 60)
	case "collars":
		flat, steep = 10, 14
		more += fmt.Sprintf(", collars: {height: %s}", d.len(6, 12))
	case "lean-tos":
		more += ", ridge: beam"
		d.leanTo = d.pick("north", "south")
		d.line("  lean-tos: [{wall: %s, span: %s, pitch: %s}]", d.leanTo, d.len(48, 84), d.slope(2, 4))
	case "over plates":
		d.line("  ties: over plates")
	}
	if d.top != "queen truss" {
		more += ", rafter spacing: " + d.len(28, 40)
	}
	d.line("  roof: {pitch: %s, overhang: %s, tail: %s, %s}", d.slope(flat, steep), d.len(4, 14), d.pick("square", "plumb"), more)
}

// slope is a pitch of flat to steep in 12, in degrees where the file is metric.
func (d *dice) slope(flat, steep int) string {
	rise := flat + d.IntN(steep-flat+1)
	if d.k > 1 {
		return fmt.Sprintf("%.0f deg", math.Atan2(float64(rise), 12)*180/math.Pi)
	}
	return fmt.Sprintf("%d in 12", rise)
}

func (d *dice) feet() (sills bool) {
	if d.IntN(2) == 0 {
		d.line("  piers: {size: %s x %s}", d.len(10, 12), d.len(10, 12))
		return false
	}
	d.line("  sills: yes")
	if d.IntN(2) == 0 {
		d.line("  cross sills: %s", d.pick("at gables", "at bents"))
	}
	if d.IntN(2) == 0 {
		d.line("  piers: {size: %s x %s, spacing: %s}", d.len(10, 12), d.len(10, 12), d.len(48, 96))
	}
	return true
}

func (d *dice) walls() {
	if d.IntN(3) == 0 {
		return
	}
	heights := d.len(20, 60)
	if d.IntN(3) == 0 {
		heights += ", " + d.len(36, 66)
	}
	d.line("  girts: {height: [%s], in: [%s]}", heights, d.some("eave walls", "gable walls", "north", "east"))
}

func (d *dice) braces(sills bool) {
	legs := func(lo, hi float64) string {
		a := d.len(lo, hi)
		if d.IntN(3) > 0 {
			return a + " x " + a
		}
		return a + " x " + d.len(lo, hi)
	}
	switch d.IntN(5) {
	case 0:
	case 1:
		d.line("  braces:")
		d.line("    - {legs: %s, in: [%s]}", legs(18, 36), d.some("bents", "gables", "walls"))
		if sills {
			d.line("    - {legs: %s, in: [%s], go: down}", legs(18, 30), d.some("gables", "walls"))
		} else {
			d.line("    - {legs: %s, in: [inner bents, walls], sides: [%s], bays: [1]}", legs(18, 30), d.some("north", "south"))
		}
	default:
		d.line("  braces: {legs: %s, in: [%s]}", legs(16, 40), d.some("bents", "walls"))
	}
}

func (d *dice) openings(bays int) {
	if d.IntN(2) == 0 {
		return
	}
	d.line("  openings:")
	wall := d.pick("south", "north")
	if d.leanTo != "" { // its ledger is in the way there
		wall = map[string]string{"south": "north", "north": "south"}[d.leanTo]
	}
	d.line("    - {name: door, wall: %s, bay: %d, width: %s, height: %s}", wall, 1+d.IntN(bays), d.len(26, 36), d.len(54, 66))
	gables := []string{"east", "west"}
	d.Shuffle(2, func(i, j int) { gables[i], gables[j] = gables[j], gables[i] })
	if d.IntN(2) == 0 {
		d.line("    - {name: window, wall: %s, width: %s, height: %s, sill: %s}", gables[0], d.len(16, 30), d.len(48, 56), d.len(24, 40))
	}
	if d.IntN(3) == 0 {
		d.line("    - {name: gable door, wall: %s, width: %s, height: %s, from: %s}", gables[1], d.len(20, 26), d.len(48, 56), d.len(8, 12))
	}
}

func (d *dice) floors(sills bool) {
	if sills && d.IntN(2) == 0 {
		d.line("  floor: {direction: %s, spacing: %s}", d.pick("across", "along"), d.len(16, 36))
	}
	if d.IntN(3) == 0 {
		d.line("  loft: {spacing: %s}", d.len(18, 40))
	}
}
