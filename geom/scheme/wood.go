package scheme

import (
	"fmt"
	"strings"

	"pegwright/geom/spec"
	"pegwright/geom/wood"
)

// ownWoods takes up the woods that the description itself gives.
func (s *Scheme) ownWoods() {
	for _, o := range s.Description.Woods {
		if !o.Name.Set || !o.Gravity.Set || !o.Tangential.Set || !o.Radial.Set {
			continue // reported by the reader
		}
		_, known := wood.Lookup(o.Name.S)
		_, twice := s.own(o.Name.S)
		switch {
		case known:
			s.Fault(o.Name.At, o.Name.S, "this wood is in the table already", "give yours a name of its own, such as "+o.Name.S+" of the home lot")
		case twice:
			s.Fault(o.Name.At, o.Name.S, "this wood is described twice", "keep one of the two")
		case o.Radial.V > o.Tangential.V:
			s.Fault(o.Radial.At, o.Radial.Src, fmt.Sprintf("radial shrinkage above tangential (%g %%): no wood does that", o.Tangential.V), "check whether the two are swapped")
		case o.Volumetric.Set && o.Volumetric.V < o.Tangential.V:
			s.Fault(o.Volumetric.At, o.Volumetric.Src, fmt.Sprintf("volumetric shrinkage below tangential (%g %%)", o.Tangential.V), "it is about radial and tangential added up")
		default:
			s.owned = append(s.owned, wood.Own(wood.Wood{Name: o.Name.S, Hard: o.Hardwood.Or(false), Basic: o.Gravity.V,
				Tangential: o.Tangential.V, Radial: o.Radial.V, Volumetric: o.Volumetric.V, GreenHeart: o.Moisture.V, GreenSap: o.Moisture.V}))
		}
	}
}

// own returns the wood of that name among those that the description gives.
func (s *Scheme) own(name string) (wood.Wood, bool) {
	for _, w := range s.owned {
		if wood.SameName(w.Name, name) {
			return w, true
		}
	}
	return wood.Wood{}, false
}

// woods settles species and moisture contents.
func (s *Scheme) woods() {
	w := s.Description.Wood
	s.ownWoods()
	s.timber = s.Species(w.Species, "eastern white pine", wood.FramingNames)
	pegs := s.Species(w.PegSpecies, "northern red oak", wood.PegNames)
	st := &s.Frame.Stock
	st.Timber, st.Peg, st.PegWood = s.timber.Name, pegs.Name, pegs
	st.Green, st.Seasoning = moisture(s.timber, w.Seasoning, "green")
	st.PegMC, st.PegDry = moisture(pegs, w.PegSeasoning, "dry")
	st.Service = w.ServiceMoisture.Or(wood.ServiceMoisture)
}

// Species looks a wood up, or the usual one where none is named. For a name that
// is in no table it offers those that fit.
func (s *Scheme) Species(t spec.Text, usual string, fitting func() []string) wood.Wood {
	if own, ok := s.own(t.Or(usual)); ok {
		return own
	}
	w, ok := wood.Lookup(t.Or(usual))
	if !ok {
		mend := "name one of: " + strings.Join(fitting(), ", ")
		if near := wood.Suggest(t.S); len(near) > 0 {
			mend = "did you mean " + strings.Join(near, ", ") + "?"
		}
		s.Fault(t.At, t.S, "this wood is not in the table", mend)
	}
	return w
}

// moisture is the water that a wood holds where the description gives it, or
// else in its usual seasoning, in percent of the dry wood, and the word for it.
func moisture(w wood.Wood, sea spec.Seasoning, usual string) (float64, string) {
	if sea.Set && sea.Word == "" {
		return sea.Percent, fmt.Sprintf("%g %%", sea.Percent)
	}
	word := usual
	if sea.Set {
		word = sea.Word
	}
	k, _ := wood.ParseSeasoning(word)
	mc, _ := w.Moisture(k)
	return mc, word
}
