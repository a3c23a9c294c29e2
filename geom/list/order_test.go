package list

import (
	"math"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// Finished 142 and 94 in with 1 in of trim at both ends are 12 and 8 ft of
// 6 x 8: one stick of each, 48 and 32 board feet, nothing left over. At 800 and
// 400 kg/m³ the first weighs 0.0254³ x 6 x 8 x 144 m³ x 800 = 90.61 kg green,
// which is 199.8 lb, and half of that dry. At 2 a board foot it costs 96.
func TestOrder(t *testing.T) {
	f := frame(measure.Imperial)
	f.Offer.Prices = []geom.Price{{Wood: "eastern white pine", Cost: 2}}
	l := Order(f)
	want(t, l, "stock length", `12'-0"`, `8'-0"`)
	want(t, l, "section", "6 x 8", "6 x 8")
	want(t, l, "cut into", `post-long 12'-0"`, `post-short 8'-0"`)
	want(t, l, "left over", `0"`, `0"`)
	want(t, l, "volume", "48.0", "32.0")
	want(t, l, "weight green", "199.8", "133.2")
	want(t, l, "weight dry", "99.9", "66.6")
	want(t, l, "cost", "96.00", "64.00")
	text := strings.Join(l.Totals, "|")
	for _, says := range []string{"2 sticks to buy: 80 board feet as bought in stock lengths, 333 lb green", "0.0 % of what is bought", "no cutting buys less", "cost 160.00"} {
		if !strings.Contains(text, says) {
			t.Errorf("totals %q lack %q", text, says)
		}
	}
}

// Two sticks of 6 x 8 turned a quarter are one lot; another wood or seasoning
// is another. With 20 ft on offer and a kerf of 1/8 in, 12 and 8 ft need a
// stick each; with trims of their own of 1/2 in they come out of one.
func TestLots(t *testing.T) {
	f := frame(measure.Imperial)
	f.Offer.Lengths = []float64{240 * in}
	want(t, Order(f), "stick", "1", "2")
	for _, s := range f.Timbers {
		s.Trim = in / 2
	}
	l := Order(f)
	want(t, l, "cut into", `post-long 11'-11", post-short 7'-11"`)
	want(t, l, "left over", `1 7/8"`)
	f.Timbers[0].Section = [2]float64{8 * in, 6 * in}
	want(t, Order(f), "stick", "1")
	f.Timbers[0].Density = 500
	want(t, Order(f), "stick", "1", "2")
	f.Timbers[0].Density = 800
	f.Timbers[0].Wood.Name = "red pine"
	want(t, Order(f), "stick", "1", "2")
}

// An L of two boxes, 2 x 1 x 1 and 1 x 1 x 1 on its far end: the centre lies
// at (1 x 2 + 1.5 x 1)/3 along and (0.5 x 2 + 1.5 x 1)/3 up: 7/6 and 5/6.
func TestBalanceOfAnL(t *testing.T) {
	s := stick("l", 2)
	s.Blank = geom.BlankOf(2000, [2]float64{1000, 2000}, [2]float64{1000, 2000})
	s.Net = solid.NewBody(s.Blank)
	s.Net.Subtract(solid.Box(vec.V{X: -10, Y: -10, Z: 1000}, vec.V{X: 1000, Y: 1010, Z: 2010}), "j")
	got := balance(s)
	for _, c := range []struct{ got, want float64 }{{got.X, 7000. / 6}, {got.Y, 500}, {got.Z, 5000. / 6}} {
		if math.Abs(c.got-c.want) > 1e-6 {
			t.Errorf("balance %v, want %g", got, c.want)
		}
	}
}

// Two sticks of 80 kg (176.4 lb), 142 and 94 in long, on the ground and the
// second set 10 in east and 20 in up: together 352.7 lb, balanced at
// (71 + 10 + 47)/2 = 64 in from the west and (4 + 20 + 4)/2 = 14 in up. A third
// of 20 kg may be lifted by one person.
func TestLifting(t *testing.T) {
	f := frame(measure.Imperial)
	f.Timbers[0].Place.O = vec.V{X: 10 * in, Y: 500, Z: 20 * in}
	f.Timbers[1].Place.O = vec.V{Y: 500}
	light := stick("light", 20)
	light.NetVolume = 2.5e7
	f.Timbers = append(f.Timbers, light)
	f.Steps = []geom.Step{{Name: "bent 1", Move: []string{"post-short", "post-long"}}, {Name: "light", Move: []string{"light"}}}
	l := Lifting(f)
	const team = "mechanical help or a team"
	want(t, l, "what", "post-short", "post-long", "light", "bent 1, as it is moved")
	want(t, l, "weight green", "176.4", "176.4", "44.1", "352.7")
	want(t, l, "weight dry", "88.2", "88.2", "22.0", "176.4")
	want(t, l, "balance along", `3'-11"`, `5'-11"`, `10"`, `5'-4"`)
	want(t, l, "balance up", `4"`, `4"`, `4"`, `1'-2"`)
	want(t, l, "balance across", `3"`, `3"`, `3"`, `3"`)
	want(t, l, "note", team, team, "", team)
	if !strings.Contains(l.Totals[0], "3 loads above 51 lb (23 kg)") {
		t.Errorf("totals %q", l.Totals)
	}
	f.Steps = nil
	if got := Lifting(f).Totals; !strings.Contains(got[len(got)-1], "no order of assembly") {
		t.Errorf("totals %q", got)
	}
}

// One bit: 1 in through 6, 8 and 2 in (blind) of posts, rafter and 1 1/2 in of
// tenon; the mortise is 1 9/16 in wide, 2 in off the reference face.
func TestTools(t *testing.T) {
	f := pair()
	f.Joints[0].Axes = geom.Axes{U: vec.V{X: 1}, V: vec.V{Y: 1}, W: vec.V{Z: 1}, O: vec.V{Y: 100}}
	f.Joints[0].Mortise = solid.Box(vec.V{Y: 100 + 2*in}, vec.V{X: 100, Y: 100 + (3+9./16)*in, Z: 100})
	want(t, Tools(f), "tool", "bit") // a box without walls is no mortise to chop
	for i, w := range f.Joints[0].Mortise.Faces {
		if math.Abs(w.Plane.N.Y) == 1 {
			f.Joints[0].Mortise.Faces[i].Role = geom.RoleWall
		}
	}
	l := Tools(f)
	want(t, l, "tool", "bit", "chisel", "gauge", "gauge")
	want(t, l, "size", `1"`, `1 9/16"`, `3 9/16"`, `2"`)
	want(t, l, "least length", `8"`, "", "", "")
	want(t, l, "times used", "4", "1", "1", "1")
	want(t, l, "for", "bores", "mortises of this width", "far side of mortises", "near side of mortises")
}

// 6 in and 8 in through with a lead screw of 3/4 in: it shows at 5 1/4 and
// 7 1/4 in. Each degree off square sets a bit of 6 in off by 6 x tan 1° =
// 0.1047 in, 8 in by 0.1396 in (a table of tangents), to 1/32 in.
func TestLeadScrewAndWander(t *testing.T) {
	f := pair()
	f.Offer.LeadScrew = 0.75 * in
	l := Bores(f, nil)
	want(t, l, "first side", `5 1/4"`, "", `3/4"`, `7 1/4"`)
	want(t, l, "wander per 1°", `3/32"`, `1/32"`, `1/32"`, `1/8"`)
	f.Offer.LeadScrew = 2 * in
	want(t, Bores(f, nil), "first side", `4"`, "", "", `6"`)
}

// Pegs of 11 and 9 in from 6 x 24 in billets: rive 1 1/4 in square, by halves 4
// across; two lengths of 11 in give 32, of which 3 pegs take one billet.
func TestBillets(t *testing.T) {
	f := pair()
	f.Stock.PegWood, f.Offer.Billet = pegWood(), [2]float64{6 * in, 24 * in}
	l := Pegs(f, nil)
	want(t, l, "rive square", `1 1/4"`, `1 1/4"`)
	want(t, l, "per billet", "32", "32")
	want(t, l, "billets", "1", "1")
	f.Offer.Billet[1] = 10 * in
	l = Pegs(f, nil)
	want(t, l, "billets", "1", "0")
	if !strings.Contains(strings.Join(l.Totals, "|"), "1 row of pegs too long") {
		t.Errorf("totals %q", l.Totals)
	}
}

// A 1 in red oak peg through a 1 1/2 in tenon of white pine between cheeks of 2
// and 2 1/2 in, load along both grains: the peg shears at 2407.7 lb, over 3.5
// 687.9 lb, shown to the pound (worked by hand; Im, the next, gives 4300.5/4). What has a value says
// that it is for an engineer.
func TestCapacities(t *testing.T) {
	f := full(measure.Imperial)
	l := Capacities(f)
	const words = "reference value, not verified against the standard; for your engineer"
	want(t, l, "one peg", "688")
	want(t, l, "all pegs", "688")
	want(t, l, "mode", "V")
	want(t, l, "note", words)
	want(t, l, "ids", "g")
	if !strings.Contains(l.Totals[0], words) || !strings.HasPrefix(l.Totals[1], "1 joint with a value, 0 joints without") {
		t.Errorf("totals %q", l.Totals)
	}
	f.Units = measure.Metric
	want(t, Capacities(f), "one peg", "3.060") // kN: 687.9 x 4.44822 N
	f.Joints[1].Pegs[0].Bore = in / 2
	l = Capacities(f)
	want(t, l, "all pegs", "")
	if got := column(t, l, "note")[0]; !strings.HasPrefix(got, "no reference value") {
		t.Errorf("note %q", got)
	}
}
