package scheme

import "pegwright/geom"

// laid is a copy of the stick's timber, cut off at its tentative ends.
func (st *Stick) laid() *geom.Timber {
	t := *st.Timber
	t.Place.O = t.Place.O.Add(t.Place.X.Mul(st.Lo))
	t.Length = max(st.Hi-st.Lo, 1)
	t.Blank = geom.BlankOf(t.Length, t.Section, t.Section)
	t.Cuts, t.Bores = nil, nil
	return &t
}

// reaching is a copy of the stick, longer at one end.
func (st *Stick) reaching(end geom.End, by float64) *Stick {
	c := *st
	if end == geom.Start {
		c.Lo -= by
	} else {
		c.Hi += by
	}
	return &c
}
