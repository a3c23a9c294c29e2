package list

import (
	"fmt"
	"strings"

	"pegwright/geom"
	"pegwright/geom/measure"
)

// searchLimit is how many steps the search for the least waste takes for the
// sticks of one wood and section before it is content with what it has.
const searchLimit = 20000

// lot is the timbers of one wood, section and seasoning, which can be cut out
// of the same sticks, by length, the longest first.
type lot struct {
	wood           string
	section        [2]float64 // smaller size first
	density, dryer float64    // kg/m³ as cut and in service
	timbers        []*geom.Timber
	rough          []float64
	cut            cutting
	price          float64
	priced         bool
}

// Order returns the sticks to buy, each with the timbers that are cut from it:
// by section, the largest first, then by stock length. Timbers of one wood,
// section and seasoning are packed into the stock lengths on offer so that the
// length bought is the least that was found; a timber longer than any is
// bought at its own length.
func Order(f *geom.Frame) Table {
	imperial := f.Units == measure.Imperial
	volume, kind, weight := "m³", precise, "kg"
	if imperial {
		volume, kind, weight = "bd ft", amount, "lb"
	}
	t := Table{Name: "order", Title: "Timber order", Units: f.Units, Columns: []Column{
		{Name: "stick", kind: count}, {Name: "wood"},
		{Name: "section", Unit: smallUnit(f.Units), kind: section},
		{Name: "stock length", Unit: lengthUnit(f.Units), kind: long},
		{Name: "cut into"},
		{Name: "left over", Unit: lengthUnit(f.Units), kind: long},
		{Name: "volume", Unit: volume, kind: kind},
		{Name: "weight green", Unit: weight, kind: amount},
		{Name: "weight dry", Unit: weight, kind: amount},
	}}
	if len(f.Offer.Prices) > 0 {
		t.Columns = append(t.Columns, Column{Name: "cost", kind: money})
	}
	lots := lotsOf(f)
	n := 0
	for _, l := range lots {
		for _, s := range l.cut.sticks {
			n++
			v, cubic := l.volume(s.length, imperial)
			row := []any{n, l.wood, l.section, s.length, l.words(f.Units, s), l.left(s, f.Offer.Kerf), v,
				mass(cubic*l.density, imperial), mass(cubic*l.dryer, imperial), l.cost(v)}
			t.add(row[:len(t.Columns)]...)
		}
	}
	t.Totals = orderTotals(f, lots, n)
	return t
}

// lotsOf returns the lots of the frame with their cuttings.
func lotsOf(f *geom.Frame) []*lot {
	var lots []*lot
	for _, t := range bySection(f.Timbers) {
		lo, hi := ordered(t.Section)
		var l *lot
		for _, have := range lots {
			if have.wood == t.Wood.Name && near(have.section[0], lo) && near(have.section[1], hi) && have.density == t.Density {
				l = have
			}
		}
		if l == nil {
			l = &lot{wood: t.Wood.Name, section: [2]float64{lo, hi}, density: t.Density, dryer: t.DryDensity}
			l.price, l.priced = f.Offer.PriceOf(l.wood)
			lots = append(lots, l)
		}
		l.take(f.Units, t)
	}
	for _, l := range lots {
		l.cut = pack(l.rough, f.Offer.Lengths, f.Offer.Kerf, searchLimit)
		sortSticks(l.cut.sticks)
	}
	return lots
}

// take adds a timber where its rough length belongs: trims of its own may
// change the order.
func (l *lot) take(u measure.Units, t *geom.Timber) {
	rough := roughOf(u, t)
	at := len(l.rough)
	for at > 0 && l.rough[at-1] < rough {
		at--
	}
	l.rough = append(l.rough[:at], append([]float64{rough}, l.rough[at:]...)...)
	l.timbers = append(l.timbers[:at], append([]*geom.Timber{t}, l.timbers[at:]...)...)
}

// roughOf returns the length to order for a timber, mm.
func roughOf(u measure.Units, t *geom.Timber) float64 {
	if t.Trim > 0 {
		return t.Length + 2*t.Trim
	}
	return Rough(u, t.Length)
}

// sortSticks puts the longest first, and sticks of one length by their first
// piece.
func sortSticks(s []cutStick) {
	for i := range s {
		for k := i; k > 0 && (s[k].length > s[k-1].length || s[k].length == s[k-1].length && s[k].pieces[0] < s[k-1].pieces[0]); k-- {
			s[k], s[k-1] = s[k-1], s[k]
		}
	}
}

// words names the timbers cut from a stick with their rough lengths.
func (l *lot) words(u measure.Units, s cutStick) string {
	var out []string
	for _, i := range s.pieces {
		out = append(out, l.timbers[i].ID+" "+u.Plain(l.rough[i]))
	}
	return strings.Join(out, ", ")
}

// left is what remains of a stick, kerfs taken off, mm.
func (l *lot) left(s cutStick, kerf float64) float64 {
	used := -kerf
	for _, i := range s.pieces {
		used += l.rough[i] + kerf
	}
	return max(0, s.length-used)
}

// volume returns the volume of a stick in the unit it is bought by, and in
// cubic metres.
func (l *lot) volume(length float64, imperial bool) (bought, cubic float64) {
	cubic = float64(l.section[0]*l.section[1]) * length / 1e9
	if imperial {
		return BoardFeet(l.section, length), cubic
	}
	return cubic, cubic
}

// cost is the price of one stick, where its wood has one.
func (l *lot) cost(volume float64) any {
	if !l.priced {
		return nil
	}
	return volume * l.price
}

// mass returns kilograms, or pounds in an imperial frame.
func mass(kg float64, imperial bool) float64 {
	if imperial {
		return kg / pound
	}
	return kg
}

func orderTotals(f *geom.Frame, lots []*lot, n int) []string {
	imperial := f.Units == measure.Imperial
	var used, bought, least, volume, cost, green, dry float64
	proved, priced := true, len(lots) > 0
	for _, l := range lots {
		area := float64(l.section[0] * l.section[1])
		used, bought, least = used+area*sum(l.rough), bought+area*l.cut.total, least+area*l.cut.least
		v, cubic := l.volume(l.cut.total, imperial)
		volume, cost, green, dry = volume+v, cost+v*l.price, green+cubic*l.density, dry+cubic*l.dryer
		proved, priced = proved && l.cut.proved, priced && l.priced
	}
	amount, weight := decimals(volume, 2)+" m³", "kg"
	if imperial {
		amount, weight = whole(volume)+" board feet", "lb"
	}
	out := []string{fmt.Sprintf("%s to buy: %s as bought in stock lengths, %s %s green, %s %s dry", plural(n, "stick"), amount,
		whole(mass(green, imperial)), weight, whole(mass(dry, imperial)), weight)}
	if bought > 0 {
		waste := fmt.Sprintf("%s %% of what is bought is left over or sawdust", decimals(100*(1-used/bought), 1))
		if proved {
			out = append(out, waste+"; from these stock lengths no cutting buys less")
		} else {
			out = append(out, fmt.Sprintf("%s; the least there can be is not proved: at most %s %% more is bought than that", waste, decimals(100*(bought/least-1), 1)))
		}
	}
	if priced {
		out = append(out, "cost "+decimals(cost, 2)+" in the money of the prices given")
	}
	return append(out, offerWords(f), "timbers stand with their rough lengths, trim at both ends included; a timber longer than any stock length is bought at its own")
}

func offerWords(f *geom.Frame) string {
	var lengths []string
	for _, l := range f.Offer.Lengths {
		lengths = append(lengths, f.Units.Plain(l))
	}
	from := "as given"
	if f.Offer.Usual {
		from = "the usual ones, none being given"
	}
	return fmt.Sprintf("stock lengths %s: %s; saw kerf %s", from, strings.Join(lengths, ", "), f.Units.FormatJoint(f.Offer.Kerf))
}
