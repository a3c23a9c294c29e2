package list

import (
	"math"
	"sort"

	"pegwright/geom"
	"pegwright/geom/peg"
)

// PegSize is one kind of peg to make, and how many: pegs that differ only in
// being sawn flush once driven are made alike. Lengths are in mm.
type PegSize struct {
	Bore, Length float64
	Head         float64 // beyond the entry face
	Lead         float64 // beyond the far face
	Offset       float64 // the largest that it must pass
	Blind        bool    // for holes that end in the wood
	Count        int     // that the joints take
	Flush        int     // of these, sawn flush once driven
	Finding      int     // that stops their joints, so that none is made; 0: none
}

// PegSizes returns the pegs of the frame by size: by bore, then by length, head
// and lead. Those of stopped joints stand apart. Sizes that differ by less than
// 0.01 mm are one. All that counts pegs or their spares counts from here.
func PegSizes(f *geom.Frame, stopped map[string]int) []PegSize {
	var sizes []PegSize
	for _, j := range f.Joints {
		for i := range j.Pegs {
			p := &j.Pegs[i]
			s := PegSize{Bore: p.Bore, Length: p.Length, Head: p.Head, Lead: p.Lead, Offset: math.Abs(p.Offset), Blind: p.Blind(), Count: 1, Finding: stopped[j.ID]}
			if p.Flush {
				s.Flush = 1
			}
			sizes = countPeg(sizes, s)
		}
	}
	sort.SliceStable(sizes, func(i, k int) bool { return sizes[i].before(sizes[k]) })
	return sizes
}

// countPeg adds a peg to those like it.
func countPeg(sizes []PegSize, p PegSize) []PegSize {
	for i := range sizes {
		s := &sizes[i]
		if s.alike(p) && s.Finding == p.Finding {
			s.Count, s.Flush = s.Count+p.Count, s.Flush+p.Flush
			s.Offset = max(s.Offset, p.Offset)
			return sizes
		}
	}
	return append(sizes, p)
}

// Spares returns how many pegs of the size to make beyond the count: see
// peg.Spares. None where none is made.
func (s PegSize) Spares() int {
	if s.Finding > 0 {
		return 0
	}
	return peg.Spares(s.Count)
}

// Make returns how many pegs of the size to make, spares included.
func (s PegSize) Make() int {
	if s.Finding > 0 {
		return 0
	}
	return s.Count + s.Spares()
}

// Taper returns the thinned end that serves all pegs of the size; ok is false
// where no tip could enter the two holes.
func (s PegSize) Taper() (lead peg.Lead, ok bool) {
	if s.Blind {
		return peg.BlindLead(s.Bore), true
	}
	return peg.LeadFor(s.Bore, s.Bore, s.Offset)
}

// alike reports whether the two are made alike.
func (s PegSize) alike(q PegSize) bool {
	return near(s.Bore, q.Bore) && near(s.Length, q.Length) && near(s.Head, q.Head) && near(s.Lead, q.Lead) && s.Blind == q.Blind
}

func (s PegSize) before(q PegSize) bool {
	for _, d := range []float64{s.Bore - q.Bore, s.Length - q.Length, s.Head - q.Head, s.Lead - q.Lead} {
		if !near(d, 0) {
			return d < 0
		}
	}
	if s.Blind != q.Blind {
		return q.Blind
	}
	return s.Finding < q.Finding
}

// near compares lengths in mm.
func near(a, b float64) bool { return a-b < 0.01 && b-a < 0.01 }
