package list

import "math"

// bound returns a total length that no cutting goes under. Every piece is
// charged its length over the best share that any stick holding it can be
// filled to; in a stick the charges of its pieces come to no more than the
// stick's length, so all charges together come to no more than any cutting.
func (p *packing) bound() float64 {
	kinds, counts := distinct(p.pieces)
	total := 0.0
	for i, l := range kinds {
		fill := 1.0
		if len(kinds) <= mostKinds {
			fill = p.bestFill(kinds, counts, i)
		}
		total += float64(counts[i]) * l / fill
	}
	return p.rounded(total)
}

// mostKinds is the number of different lengths above which the bound takes
// every stick for full, which costs less time.
const mostKinds = 80

// distinct returns the different lengths and how often each occurs. Pieces come
// sorted.
func distinct(pieces []float64) (kinds []float64, counts []int) {
	for _, l := range pieces {
		if n := len(kinds); n > 0 && kinds[n-1]-l < slack {
			counts[n-1]++
			continue
		}
		kinds, counts = append(kinds, l), append(counts, 1)
	}
	return kinds, counts
}

// grain is the step in which sums of lengths are told apart for the bound, mm.
const grain = 2.0

// bestFill returns the largest share of a stick that pieces can fill when one
// of kind k is among them; never under the true share. Lengths are rounded down
// to whole grains and the rounding is given back for every piece.
func (p *packing) bestFill(kinds []float64, counts []int, k int) float64 {
	top := p.offer[len(p.offer)-1]
	most := int((top + p.kerf) / grain)
	size := func(i int) int { return int((kinds[i] + p.kerf) / grain) }
	sums := make([]bool, most+1)
	if size(k) > most {
		return 1
	}
	sums[size(k)] = true
	for i := range kinds {
		n := counts[i]
		if i == k {
			n--
		}
		for range min(n, most/max(size(i), 1)) {
			for s := most; s >= size(i); s-- {
				sums[s] = sums[s] || sums[s-size(i)]
			}
		}
	}
	pieces := top/(kinds[len(kinds)-1]) + 1
	best := kinds[k] / p.price(kinds[k])
	for _, l := range p.offer {
		for s := min(most, int((l+p.kerf)/grain)); s >= 0; s-- {
			if sums[s] {
				best = max(best, min(1, (float64(s)+pieces)*grain/l))
				break
			}
		}
	}
	return best
}

// rounded returns the least total of stock lengths that is not under x, as far
// as their common measure tells: stock every two feet comes in whole two feet.
func (p *packing) rounded(x float64) float64 {
	g := 0.0
	for _, l := range p.offer {
		g = common(g, l)
	}
	if g < 1 {
		return x
	}
	return math.Ceil((x-slack)/g) * g
}

// common returns the greatest common measure of two lengths to a thousandth of
// a millimetre, 0 where there is none above that.
func common(a, b float64) float64 {
	for b > 1e-3 {
		a, b = b, math.Mod(a, b)
		if a-b < 1e-3 {
			b = 0
		}
	}
	return a
}
