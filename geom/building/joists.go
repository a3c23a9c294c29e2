package building

import (
	"fmt"
	"math"
	"strings"
)

// laidDeck is how the joists of a deck came to lie.
type laidDeck struct {
	n     int // places, also those left out
	moved []movedJoist
	gone  []string
	// gap is the widest distance between neighbouring middles, or between the
	// first or the last and the side of the field, mm.
	gap float64
}

// movedJoist is a joist that could not lie at its even place, with where its
// middle was to be and where it is.
type movedJoist struct {
	id       string
	from, to float64
}

// mostMore is how many joists more than even spacing asks for are tried.
const mostMore = 3

// layDeck lays joists at even distances, none farther apart than the spacing.
// One that does not clear what stands there moves aside to where it does, or is
// left out; where that leaves two too far apart, more joists are laid. It
// returns the number of the next joist.
func (p *plan) layDeck(k *deck) int {
	from := p.s.Now()
	least := int(math.Ceil((k.hi-k.lo)/k.spacing-1e-9)) - 1
	laid := p.layJoists(k, least)
	for more := 1; more <= mostMore && laid.gap > k.spacing+0.05; more++ {
		p.s.TakeBack(from)
		laid = p.layJoists(k, least+more)
	}
	if laid.gap > k.spacing+0.05 { // no number of them helps: as asked for
		p.s.TakeBack(from)
		laid = p.layJoists(k, least)
	}
	p.tellDeck(k, laid)
	return k.first + laid.n
}

// layJoists lays n joists, each at its even place or as near to it as is clear.
func (p *plan) layJoists(k *deck, n int) laidDeck {
	laid := laidDeck{n: n}
	last := k.lo
	for i := range n {
		mid := k.lo + (k.hi-k.lo)*float64(i+1)/float64(n+1)
		id := fmt.Sprintf("%s-%d", k.id, k.first+i)
		at, ok := p.joistNear(k, id, mid)
		if !ok {
			laid.gone = append(laid.gone, id)
			continue
		}
		if at != mid {
			laid.moved = append(laid.moved, movedJoist{id, mid, at})
		}
		laid.gap, last = max(laid.gap, at-last), at
	}
	laid.gap = max(laid.gap, k.hi-last)
	return laid
}

// joistNear lays a joist with its middle at mid, or where the nearest clear place
// is, inch by inch to either side; ok is false where there is none.
func (p *plan) joistNear(k *deck, id string, mid float64) (at float64, ok bool) {
	for j := 0; j <= int(k.spacing/inch); j++ {
		by := float64((j+1)/2) * inch
		if j%2 == 0 {
			by = -by
		}
		if p.s.Attempt(0, func() { p.joist(k, id, mid+by-k.w/2) }) == "" {
			return mid + by, true
		}
	}
	return mid, false
}

// tellDeck says which joists do not lie where even spacing puts them, and where
// they lie too far apart.
func (p *plan) tellDeck(k *deck, laid laidDeck) {
	s := p.s
	show := s.Frame.Units.Format
	side := "west"
	if k.side == north {
		side = "south"
	}
	if len(laid.moved) > 0 {
		var words, ids []string
		for _, m := range laid.moved {
			words = append(words, fmt.Sprintf("%s from %s to %s", m.id, show(m.from-k.lo), show(m.to-k.lo)))
			ids = append(ids, m.id)
		}
		text := fmt.Sprintf("moved aside to clear other joints, middles from the %s side of the field: %s", side, strings.Join(words, ", "))
		if laid.gap > k.spacing+0.05 {
			text += fmt.Sprintf("; the widest distance is %s, more than the %s asked for", show(laid.gap), show(k.spacing))
		}
		s.Note(k.at, text, "give another spacing to choose yourself", ids...)
	}
	if len(laid.gone) > 0 {
		s.Note(k.at, "left out, because nothing near their places is clear of other joints: "+strings.Join(laid.gone, ", "), "give another spacing, or larger timbers")
	}
}
