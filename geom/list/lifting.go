package list

import (
	"fmt"

	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// LiftLimit is the load constant of the revised lifting equation of the US
// National Institute for Occupational Safety and Health (1994), kg: what one
// person may lift under ideal conditions, close to the body and without twist.
const LiftLimit = 23.0

// CrewLimit is the weight, kg, above which a lift is not left to hands: that of
// ten persons at LiftLimit each. More than ten do not find room and one order
// round a bent (common practice, no source).
const CrewLimit = 10 * LiftLimit

// Lifting returns the weight of every timber, the heaviest first, and of every
// group of timbers that a step of assembly moves as one, in the order of the
// steps, with the point where it balances. A timber's is measured from its
// start end and from its reference faces 1 and 2, as it lies on the bench; a
// group's from its own west end, south side and lowest point, as it stands.
func Lifting(f *geom.Frame) Table {
	imperial, length := f.Units == measure.Imperial, lengthUnit(f.Units)
	weight := "kg"
	if imperial {
		weight = "lb"
	}
	t := Table{Name: "lifting", Title: "Weights and balance", Units: f.Units, Columns: []Column{
		{Name: "what", Own: true}, {Name: "timbers each", kind: count},
		{Name: "weight green", Unit: weight, kind: amount},
		{Name: "weight dry", Unit: weight, kind: amount},
		{Name: "balance along", Unit: length, kind: long},
		{Name: "balance across", Unit: length, kind: long},
		{Name: "balance up", Unit: length, kind: long},
		{Name: "note", Aside: true},
	}}
	heavy := 0
	row := func(what string, n int, l Load) {
		note := ""
		if l.Green > LiftLimit {
			note = "mechanical help or a team"
			heavy++
		}
		if l.Green > CrewLimit {
			note = "machine, or a rigging plan"
		}
		t.add(what, n, mass(l.Green, imperial), mass(l.Dry, imperial), l.At.X, l.At.Y, l.At.Z, note)
	}
	for _, s := range byWeight(f.Timbers) {
		row(s.ID, 1, timberLoad(s))
	}
	for _, s := range f.Steps {
		if len(s.Move) > 1 {
			row(s.Name+", as it is moved", len(s.Move), LoadOf(f, s.Move))
		}
	}
	t.Totals = liftTotals(f, heavy, imperial)
	return t
}

// Load is what is lifted as one: its weight as cut and in service, kilograms,
// and where it balances, millimetres.
type Load struct {
	Green, Dry float64
	At         vec.V
}

// LoadOf returns the load of the timbers named, as Lifting lists it: a single
// timber's balance is in its own axes, that of several is from the low corner
// of the box around them as they stand. Unknown ids weigh nothing.
func LoadOf(f *geom.Frame, ids []string) Load {
	if len(ids) == 1 {
		if t := f.Timber(ids[0]); t != nil {
			return timberLoad(t)
		}
	}
	return groupLoad(f, ids)
}

// evenly is the difference of weights that counts as none, kg: sticks cut alike
// in other places of the frame differ by rounding.
const evenly = 1e-6

// byWeight returns the timbers, the heaviest first, then in frame order.
func byWeight(timbers []*geom.Timber) []*geom.Timber {
	var out []*geom.Timber
	for _, t := range timbers {
		at := len(out)
		for at > 0 && greenWeight(out[at-1]) < greenWeight(t)-evenly {
			at--
		}
		out = append(out[:at], append([]*geom.Timber{t}, out[at:]...)...)
	}
	return out
}

// balance returns the centre of a timber's wood in its own axes; bores are not
// taken away, which moves it by less than a framer can feel.
func balance(t *geom.Timber) vec.V {
	if t.Net != nil {
		return t.Net.Centroid()
	}
	return solid.NewBody(t.Blank).Centroid()
}

// timberLoad is what one timber weighs to lift.
func timberLoad(t *geom.Timber) Load {
	green, dry := t.Weight()
	return Load{green, dry, balance(t)}
}

// groupLoad adds timbers up in frame axes and gives the balance from the low
// corner of the box around them.
func groupLoad(f *geom.Frame, ids []string) Load {
	var sum Load
	var low vec.V
	for i, id := range ids {
		t := f.Timber(id)
		if t == nil {
			continue
		}
		l := timberLoad(t)
		sum.Green, sum.Dry = sum.Green+l.Green, sum.Dry+l.Dry
		sum.At = sum.At.Add(t.Place.Out(l.At).Mul(l.Green))
		for _, v := range t.Blank.V {
			p := t.Place.Out(v)
			if i == 0 && v == t.Blank.V[0] {
				low = p
			}
			low = vec.V{X: min(low.X, p.X), Y: min(low.Y, p.Y), Z: min(low.Z, p.Z)}
		}
	}
	if sum.Green > 0 {
		sum.At = sum.At.Mul(1 / sum.Green).Sub(low)
	}
	return sum
}

func liftTotals(f *geom.Frame, heavy int, imperial bool) []string {
	limit := "23 kg"
	if imperial {
		limit = fmt.Sprintf("%s lb (23 kg)", decimals(LiftLimit/pound, 0))
	}
	out := []string{
		fmt.Sprintf("%s above %s green, the load constant of the NIOSH lifting equation (one person, ideal conditions): lift these with mechanical help or a team, and less in a bad stance", plural(heavy, "load"), limit),
		"a timber balances along from its start end, across from face 1 and up from face 2; a group from its west end, its south side and its lowest point as it stands",
		"weights are reckoned from tables and vary: a wet or dense stick weighs more; a timber may turn about a sling that is not above its balance point",
	}
	if len(f.Steps) == 0 {
		out = append(out, "no order of assembly is known, so no groups are listed")
	}
	return out
}
