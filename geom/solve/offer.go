package solve

import (
	"fmt"
	"sort"

	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/spec"
	"pegwright/geom/wood"
)

// ownWoods takes up the woods that the description itself gives.
func (s *solver) ownWoods() {
	for _, o := range s.d.Woods {
		if !o.Name.Set || !o.Gravity.Set || !o.Tangential.Set || !o.Radial.Set {
			continue // reported by the reader
		}
		_, known := wood.Lookup(o.Name.S)
		_, twice := s.own(o.Name.S)
		switch {
		case known:
			s.fault(o.Name.At, o.Name.S, "this wood is in the table already", "give yours a name of its own, such as "+o.Name.S+" of the home lot")
		case twice:
			s.fault(o.Name.At, o.Name.S, "this wood is described twice", "keep one of the two")
		case o.Radial.V > o.Tangential.V:
			s.fault(o.Radial.At, o.Radial.Src, fmt.Sprintf("radial shrinkage above tangential (%g %%): no wood does that", o.Tangential.V), "check whether the two are swapped")
		case o.Volumetric.Set && o.Volumetric.V < o.Tangential.V:
			s.fault(o.Volumetric.At, o.Volumetric.Src, fmt.Sprintf("volumetric shrinkage below tangential (%g %%)", o.Tangential.V), "it is about radial and tangential added up")
		default:
			s.owned = append(s.owned, wood.Own(wood.Wood{Name: o.Name.S, Hard: o.Hardwood.Or(false), Basic: o.Gravity.V,
				Tangential: o.Tangential.V, Radial: o.Radial.V, Volumetric: o.Volumetric.V, GreenHeart: o.Moisture.V, GreenSap: o.Moisture.V}))
		}
	}
}

// own returns the wood of that name among those that the description gives.
func (s *solver) own(name string) (wood.Wood, bool) {
	for _, w := range s.owned {
		if wood.SameName(w.Name, name) {
			return w, true
		}
	}
	return wood.Wood{}, false
}

// offer settles what can be bought and the tools of the shop.
func (s *solver) offer() {
	k, o := s.d.Stock, &s.f.Offer
	o.Kerf, o.Billet, o.LeadScrew = inch/8, [2]float64{6 * inch, 24 * inch}, inch*3/4
	if s.f.Units == measure.Metric {
		o.Kerf, o.Billet, o.LeadScrew = 3, [2]float64{150, 600}, 20
	}
	o.Kerf, o.LeadScrew = k.Kerf.Or(o.Kerf), k.LeadScrew.Or(o.LeadScrew)
	if k.Billet.Set {
		o.Billet = [2]float64{k.Billet.A, k.Billet.B}
	}
	s.offerLengths(k.Lengths, o)
	for _, p := range k.Prices {
		if w := s.species(p.Wood, "", wood.FramingNames); w.Name != "" {
			if _, twice := o.PriceOf(w.Name); twice {
				s.fault(p.Wood.At, p.Wood.S, "this wood has two prices", "keep one of the two")
				continue
			}
			o.Prices = append(o.Prices, geom.Price{Wood: w.Name, Cost: p.Cost.V})
		}
	}
}

// offerLengths takes the lengths given or else the usual ones: every two feet
// from 8 to 20 ft, every 600 mm from 2.4 to 6 m (common practice, no source).
func (s *solver) offerLengths(given []spec.Length, o *geom.Offer) {
	for _, l := range given {
		o.Lengths = append(o.Lengths, l.MM)
	}
	if o.Usual = len(given) == 0; o.Usual {
		first, step := 96*inch, 24*inch
		if s.f.Units == measure.Metric {
			first, step = 2400, 600
		}
		for n := range 7 {
			o.Lengths = append(o.Lengths, first+float64(n)*step)
		}
	}
	sort.Float64s(o.Lengths)
}
