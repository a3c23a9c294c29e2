package list

import (
	"math"
	"math/rand"
	"slices"
	"testing"
)

// Sets whose least is seen by hand: halves and thirds that fill sticks exactly,
// and pieces no two of which fit together.
func TestPackKnownSets(t *testing.T) {
	feet := []float64{8, 10, 12, 16}
	for name, c := range map[string]struct {
		pieces []float64
		kerf   float64
		want   float64
	}{
		"two halves":           {[]float64{6, 6}, 0, 12},
		"a kerf spoils them":   {[]float64{6, 6}, 0.01, 16},
		"three in a 16":        {[]float64{6, 5, 5}, 0, 16},
		"no two together":      {[]float64{9.5, 9.5, 9.5}, 0, 30},
		"4 x 16 filled":        {[]float64{11, 10, 9, 9, 7, 7, 6, 5}, 0, 64},
		"one piece":            {[]float64{10}, 0, 10},
		"longer than any":      {[]float64{20, 8}, 0, 28},
		"first fit goes wrong": {[]float64{7, 6, 5, 5, 5, 4}, 0, 32},
	} {
		got := pack(c.pieces, feet, c.kerf, 1e5)
		if math.Abs(got.total-c.want) > 1e-9 || !got.proved {
			t.Errorf("%s: %g, proved %v, want %g", name, got.total, got.proved, c.want)
		}
	}
	if got := pack([]float64{5, 3}, nil, 0, 10); got.total != 8 || len(got.sticks) != 2 {
		t.Errorf("nothing on offer: %+v", got)
	}
}

// brute returns the least total over all ways of dividing the pieces among
// sticks: every set partition, each part in its shortest stock length.
func brute(pieces, offer []float64, kerf float64) float64 {
	best := math.Inf(1)
	var parts [][]float64
	var place func(i int)
	place = func(i int) {
		if i == len(pieces) {
			total := 0.0
			for _, p := range parts {
				need, least := kerf*float64(len(p)-1), math.Inf(1)
				for _, l := range p {
					need += l
				}
				for _, l := range offer {
					if l >= need-1e-9 {
						least = math.Min(least, l)
					}
				}
				total += least
			}
			best = math.Min(best, total)
			return
		}
		for k := range parts {
			parts[k] = append(parts[k], pieces[i])
			place(i + 1)
			parts[k] = parts[k][:len(parts[k])-1]
		}
		parts = append(parts, []float64{pieces[i]})
		place(i + 1)
		parts = parts[:len(parts)-1]
	}
	place(0)
	return best
}

// fallingPieces are n random lengths in millimetres, some of them equal.
func fallingPieces(rng *rand.Rand, n int) []float64 {
	var out []float64
	for len(out) < n {
		l := 300 + math.Floor(rng.Float64()*4000)
		for range 1 + rng.Intn(3) {
			out = append(out, l)
		}
	}
	out = out[:n]
	slices.SortFunc(out, func(a, b float64) int { return int(b - a) })
	return out
}

// The search against every partition; its sticks hold what they are said to,
// and the bound is never above the least.
func TestPackAgainstBruteForce(t *testing.T) {
	rng := rand.New(rand.NewSource(21))
	for n := range 150 {
		offer := [][]float64{{2400, 3000, 3600, 4800}, {4500}, {2438.4, 3048, 3657.6, 4876.8}}[n%3]
		pieces, kerf := fallingPieces(rng, 1+rng.Intn(7)), float64(rng.Intn(3))*3
		got, want := pack(pieces, offer, kerf, 1e6), brute(pieces, offer, kerf)
		if math.Abs(got.total-want) > 1e-6 || !got.proved || got.least > want+1e-6 {
			t.Fatalf("%v of %v: %g, least %g, want %g", pieces, offer, got.total, got.least, want)
		}
		p := packing{kerf: kerf, offer: offer, pieces: pieces, best: math.Inf(1)}
		if b := p.bound(); b > want+1e-6 {
			t.Fatalf("%v of %v: bound %g above the least %g", pieces, offer, b, want)
		}
		holds(t, got, pieces, kerf)
	}
}

// holds checks that every piece is cut once and that the sticks are long enough.
func holds(t *testing.T, c cutting, pieces []float64, kerf float64) {
	t.Helper()
	seen, total := map[int]bool{}, 0.0
	for _, s := range c.sticks {
		need := -kerf
		for _, i := range s.pieces {
			if seen[i] {
				t.Fatalf("piece %d is cut twice", i)
			}
			seen[i] = true
			need += kerf + pieces[i]
		}
		if need > s.length+1e-5 {
			t.Fatalf("%g mm do not fit %g mm", need, s.length)
		}
		total += s.length
	}
	if len(seen) != len(pieces) || math.Abs(total-c.total) > 1e-6 {
		t.Fatalf("%d of %d pieces, %g mm of %g", len(seen), len(pieces), total, c.total)
	}
}

// Large sets end by the limit: every piece is there and the bound is not above
// the answer.
func TestPackLargeSets(t *testing.T) {
	rng := rand.New(rand.NewSource(22))
	worst := 0.0
	for _, n := range []int{30, 120, 400} {
		pieces := fallingPieces(rng, n)
		c := pack(pieces, []float64{2400, 3000, 3600, 4200, 4800}, 3, searchLimit)
		holds(t, c, pieces, 3)
		if c.least > c.total+1e-6 {
			t.Errorf("%d pieces: bound %g above %g", n, c.least, c.total)
		}
		worst = max(worst, c.total/c.least-1)
	}
	t.Logf("at worst %.1f %% over the bound", 100*worst)
	if worst > 0.15 { // waste above this would be a poor search; the limit is ours
		t.Errorf("%.1f %% over the bound", 100*worst)
	}
}
