package solve

import (
	"sort"
	"strings"

	"pegwright/geom"
	"pegwright/geom/measure"
	"pegwright/geom/spec"
	"pegwright/geom/wood"
)

// offer settles what can be bought and the tools of the shop.
func (s *solver) offer() {
	k, o := s.Description.Stock, &s.Frame.Offer
	o.Kerf, o.Billet, o.LeadScrew = inch/8, [2]float64{6 * inch, 24 * inch}, inch*3/4
	if s.Frame.Units == measure.Metric {
		o.Kerf, o.Billet, o.LeadScrew = 3, [2]float64{150, 600}, 20
	}
	o.Kerf, o.LeadScrew = k.Kerf.Or(o.Kerf), k.LeadScrew.Or(o.LeadScrew)
	if k.Billet.Set {
		o.Billet = [2]float64{k.Billet.A, k.Billet.B}
	}
	s.offerLengths(k.Lengths, o)
	for _, p := range k.Prices {
		if w := s.Species(p.Wood, "", wood.FramingNames); w.Name != "" {
			if _, twice := o.PriceOf(w.Name); twice {
				s.Fault(p.Wood.At, p.Wood.S, "this wood has two prices", "keep one of the two")
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
		if s.Frame.Units == measure.Metric {
			first, step = 2400, 600
		}
		for n := range 7 {
			o.Lengths = append(o.Lengths, first+float64(n)*step)
		}
	}
	sort.Float64s(o.Lengths)
}

// info takes up what is only printed: names, dates, design criteria and the
// paper.
func (s *solver) info() {
	d := s.Description
	for _, i := range []struct {
		name string
		t    spec.Text
	}{{"drawn for", d.DrawnFor}, {"drawn by", d.DrawnBy}, {"place", d.Place}, {"date", d.Date}, {"revision", d.Revision}, {"note", d.Note}} {
		if i.t.Set {
			s.Frame.Info = append(s.Frame.Info, geom.Info{Name: i.name, Text: i.t.S})
		}
	}
	for _, c := range d.Design {
		s.Frame.Criteria = append(s.Frame.Criteria, geom.Info{Name: c.Name.S, Text: c.Value.S})
	}
	p := d.Paper
	s.Frame.Paper = geom.Paper{Sheets: p.Sheets.Or(s.Std.Paper), Templates: p.Templates.Or(s.Std.Paper), Along: p.Along.MM, Across: p.Across.MM}
	s.Frame.Paper.Hidden = p.Hidden.Or(false)
	s.Frame.Paper.Poles = p.Poles.Or(strings.HasPrefix(s.Frame.Paper.Templates, "roll"))
}
