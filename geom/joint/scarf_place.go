package joint

import "math"

// Limits of where a scarf may stand in its bay (common practice, no source).
const (
	// ScarfNear and ScarfFar bound the middle of a scarf from the nearer post,
	// as a share of the bay: off the post, and short of the middle of the bay.
	ScarfNear, ScarfFar = 0.15, 0.30
	// ScarfClear is the wood between a scarf and any mortise, pocket or notch,
	// in millimetres.
	ScarfClear = 2 * inch
)

// Stretch is a length along a line of timbers, in millimetres, From <= To.
type Stretch struct{ From, To float64 }

// ScarfStand is how a scarf stands on a line of posts.
type ScarfStand struct {
	Bay   Stretch // posts on both sides, middle to middle; the nearest two where the scarf lies outside
	Share float64 // middle of the scarf from the nearer post over the bay; below zero outside every bay
	Good  bool    // Share lies between ScarfNear and ScarfFar
}

// StandOf reports how a scarf with its middle at mid stands between posts (the
// middles of their faces along the line, in rising order, millimetres). With
// fewer than two posts there is no bay: Share is 0 and Good is true.
func StandOf(mid float64, posts []float64) ScarfStand {
	n := len(posts)
	if n < 2 {
		return ScarfStand{Good: true}
	}
	i := 1
	for i < n-1 && posts[i] < mid {
		i++
	}
	r := ScarfStand{Bay: Stretch{posts[i-1], posts[i]}}
	r.Share = math.Min(mid-r.Bay.From, r.Bay.To-mid) / (r.Bay.To - r.Bay.From)
	r.Good = r.Share > ScarfNear-1e-9 && r.Share < ScarfFar+1e-9
	return r
}
