package list

import (
	"sort"

	"pegwright/geom"
	"pegwright/geom/measure"
)

// Trim returns the length ordered beyond the finished length at each end, 1 in
// or 25 mm (common practice, no source): x = 0 is a line squared round the
// stick at least that far from the sawn end.
func Trim(u measure.Units) float64 {
	if u == measure.Metric {
		return 25
	}
	return 25.4
}

// pound is the mass of a pound in kilograms, exact (international yard and
// pound agreement, 1959).
const pound = 0.45359237

// boardFoot is 12 in by 12 in by 1 in, in mm³.
const boardFoot = 144 * 25.4 * 25.4 * 25.4

// Rough returns the length to order for a finished length, both in mm: the
// finished length and the trim at both ends.
func Rough(u measure.Units, finished float64) float64 { return finished + 2*Trim(u) }

// BoardFeet returns the board feet of a stick of the given nominal section and
// length, all in mm (a board foot is 144 in³).
func BoardFeet(section [2]float64, length float64) float64 {
	return float64(section[0]*section[1]) * length / boardFoot
}

// Timbers returns the sticks of the frame with their marks, by section (the
// largest first), then by length (the longest first), then by id. Sections are
// written smaller size first, as they are ordered. The volume is that of the
// rough stick, trim included, the weight that of the finished timber as cut.
func Timbers(f *geom.Frame) Table {
	imperial := f.Units == measure.Imperial
	volume, volumeKind, weight := "m³", precise, "kg"
	if imperial {
		volume, volumeKind, weight = "bd ft", amount, "lb"
	}
	t := Table{Name: "timbers", Title: "Timbers", Units: f.Units, Columns: []Column{
		{Name: "timber"}, {Name: "mark"}, {Name: "role"}, {Name: "wood"},
		{Name: "section", Unit: smallUnit(f.Units), kind: section},
		{Name: "finished length", Unit: lengthUnit(f.Units), kind: long},
		{Name: "rough length", Unit: lengthUnit(f.Units), kind: long},
		{Name: "volume with trim", Unit: volume, kind: volumeKind},
		{Name: "weight as cut", Unit: weight, kind: amount},
	}}
	var bought, heavy float64
	for _, s := range bySection(f.Timbers) {
		rough, v, w := roughOf(f.Units, s), withTrim(f.Units, s), greenWeight(s)
		if imperial {
			w /= pound
		}
		bought, heavy = bought+v, heavy+w
		lo, hi := ordered(s.Section)
		t.add(s.ID, s.Mark, s.Role, s.Wood.Name, [2]float64{lo, hi}, s.Length, rough, v, w)
	}
	t.Totals = timberTotals(len(f.Timbers), bought, heavy, imperial)
	return t
}

// withTrim returns the nominal volume of a stick at its rough length, in board
// feet or m³.
func withTrim(u measure.Units, t *geom.Timber) float64 {
	rough := roughOf(u, t)
	if u == measure.Metric {
		return float64(t.Section[0]*t.Section[1]) * rough / 1e9
	}
	return BoardFeet(t.Section, rough)
}

// Wood returns the nominal volume of all sticks with their trim, as the list of
// timbers sums it: in board feet, or in m³ where the frame is metric.
func Wood(f *geom.Frame) float64 {
	sum := 0.0
	for _, t := range f.Timbers {
		sum += withTrim(f.Units, t)
	}
	return sum
}

func timberTotals(n int, bought, heavy float64, imperial bool) []string {
	trim := "rough length is the finished length and 25 mm for trim at each end, unless a timber has its own"
	amount := decimals(bought, 2) + " m³ with trim, " + whole(heavy) + " kg as cut"
	if imperial {
		trim = "rough length is the finished length and 1 in for trim at each end, unless a timber has its own"
		amount = whole(bought) + " board feet with trim, " + whole(heavy) + " lb as cut"
	}
	return []string{plural(n, "timber") + ": " + amount, trim + "; the timber order tells what is bought in stock lengths"}
}

func greenWeight(t *geom.Timber) float64 {
	green, _ := t.Weight()
	return green
}

// bySection returns the timbers sorted for a buyer, in a new slice.
func bySection(timbers []*geom.Timber) []*geom.Timber {
	r := append([]*geom.Timber(nil), timbers...)
	sort.SliceStable(r, func(i, j int) bool {
		a, b := r[i], r[j]
		alo, ahi := ordered(a.Section)
		blo, bhi := ordered(b.Section)
		switch {
		case alo*ahi != blo*bhi:
			return alo*ahi > blo*bhi
		case ahi != bhi:
			return ahi > bhi
		case a.Length != b.Length:
			return a.Length > b.Length
		}
		return a.ID < b.ID
	})
	return r
}

func ordered(s [2]float64) (lo, hi float64) { return min(s[0], s[1]), max(s[0], s[1]) }
