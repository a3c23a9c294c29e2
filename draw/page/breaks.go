package page

// Breaks divides blocks that follow each other over the fewest sheets, and over
// these so that the fullest is as empty as can be. It returns how many blocks
// each sheet takes. The first sheet has the height first for them and every
// further one next, mm; a block that is higher than that has a sheet to itself.
func Breaks(high []float64, first, next float64) []int {
	best := filled(high, first, next, 1)
	lo, hi := 0.0, 1.0
	for range 24 {
		share := (lo + hi) / 2
		if t := filled(high, first, next, share); len(t) <= len(best) {
			best, hi = t, share
		} else {
			lo = share
		}
	}
	return best
}

// filled fills sheet after sheet to a share of its height and returns how many
// blocks each takes.
func filled(high []float64, first, next, share float64) []int {
	out := []int{0}
	room := first * share
	for _, h := range high {
		last := len(out) - 1
		if h > room+1e-9 && (out[last] > 0 || last == 0 && first < next) {
			out, room = append(out, 0), next*share
			last++
		}
		out[last]++
		room -= h
	}
	return out
}
