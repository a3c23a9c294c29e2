package dim

import (
	"math"
	"sort"
)

// Want is a label that asks for a place in a lane: its middle as near to At as
// can be, Size long along the lane. Millimetres.
type Want struct{ At, Size float64 }

// Spread places labels along a lane from lo to hi so that none overlap and gap
// is left between neighbours. Laws:
//  1. the order of the wanted places is kept, ties in the order given;
//  2. the sum of the squared moves is the least that 1 and the gaps allow;
//  3. all lie inside the lane when ok is true; a lane that is too short for its
//     labels gives ok = false, and the places then run over its upper end.
//
// Method: with the sizes taken out, the places must not fall, which is an
// isotonic regression, solved by pooling adjacent violators (Ayer, Brunk and
// others, Annals of Mathematical Statistics 26, 1955); bounds are then a clamp.
// The result is in the order of the wants.
func Spread(wants []Want, gap, lo, hi float64) (at []float64, ok bool) {
	n := len(wants)
	if n == 0 {
		return nil, true
	}
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool { return wants[order[i]].At < wants[order[j]].At })
	off := make([]float64, n)
	y := make([]float64, n)
	for k, i := range order {
		if k > 0 {
			off[k] = off[k-1] + (wants[order[k-1]].Size+wants[i].Size)/2 + gap
		}
		y[k] = wants[i].At - off[k]
	}
	pool(y)
	first, last := wants[order[0]].Size/2, wants[order[n-1]].Size/2
	low, high := lo+first, hi-last-off[n-1]
	ok = high >= low-1e-9
	at = make([]float64, n)
	for k, i := range order {
		at[i] = math.Max(math.Min(y[k], high), low) + off[k]
	}
	return at, ok
}

// pool replaces y by the nearest sequence that does not fall, least squares.
func pool(y []float64) {
	type block struct {
		sum float64
		n   int
	}
	var bs []block
	for _, v := range y {
		bs = append(bs, block{v, 1})
		for len(bs) > 1 {
			a, b := bs[len(bs)-2], bs[len(bs)-1]
			if a.sum*float64(b.n) <= b.sum*float64(a.n) {
				break
			}
			bs = append(bs[:len(bs)-2], block{a.sum + b.sum, a.n + b.n})
		}
	}
	k := 0
	for _, b := range bs {
		for range b.n {
			y[k] = b.sum / float64(b.n)
			k++
		}
	}
}
