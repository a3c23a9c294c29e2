package check

import (
	"fmt"
	"math"
	"strings"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/vec"
)

// Low is the part of the roof's height within which a collar holds the feet of
// its rafters together as a tie does (common practice, no source).
const Low = 1.0 / 3

// A rafter that leans on its fellow and on one level timber pushes outward at
// its foot. It needs none who is borne by level timbers at two heights (plate
// and ridge beam, plate and purlin), however it is notched; whose foot, or a
// collar low on it, is tied across; or whose plates are tied at their own level.
// All of this is read from how the timbers lie and what they are joined to.

// level reports whether a timber lies level.
func level(t *geom.Timber) bool { return math.Abs(t.Place.X.Z) < 1e-6 }

// plumb reports whether a timber stands plumb.
func plumb(t *geom.Timber) bool { return math.Abs(t.Place.X.Z) > 1-1e-6 }

func isRafter(t *geom.Timber) bool {
	return strings.Contains(t.Role, "rafter") && !level(t) && !plumb(t)
}

// run is the level direction in which a rafter rises.
func run(t *geom.Timber) vec.V {
	d := t.Place.X
	if d.Z < 0 {
		d = d.Neg()
	}
	return vec.V{X: d.X, Y: d.Y}.Unit()
}

// across reports whether two level directions are square to each other.
func across(a, b vec.V) bool { return math.Abs(a.Dot(b)) < 1e-3 }

// other returns the timber that joint j joins to t.
func other(j *geom.Joint, t *geom.Timber) *geom.Timber {
	if j.Into == t {
		return j.Of
	}
	return j.Into
}

// mid returns the height of the middle of a level timber.
func mid(t *geom.Timber) float64 { lo, hi := heights(t); return (lo + hi) / 2 }

// heights returns the lowest and highest point of a timber's ideal section,
// frame axes.
func heights(t *geom.Timber) (lo, hi float64) {
	return geom.BlankOf(t.Length, t.Ideal, t.Ideal).Moved(t.Place).Extent(vec.V{Z: 1})
}

// borne returns the level timbers that carry rafter r from below: those that
// run square to it and are not carried by rafters alone.
func (p *proof) borne(r *geom.Timber) []*geom.Timber {
	var list []*geom.Timber
	for _, j := range p.of[r] {
		t := other(j, r)
		if level(t) && across(t.Place.X, run(r)) && p.carried(t) {
			list = append(list, t)
		}
	}
	return list
}

// carried reports whether a level timber is held up by something other than
// the rafters that rest on it: it is joined to at least two timbers that are
// no common rafters, or is a sill or plate that nothing carries but piers.
func (p *proof) carried(t *geom.Timber) bool {
	n, rafters := 0, 0
	for _, j := range p.of[t] {
		if o := other(j, t); o.Role == "rafter" {
			rafters++
		} else if j.Of == o || !isRafter(o) {
			n++
		}
	}
	return n >= 2 || t.Role != "ridge" && t.Role != "purlin" || rafters == 0
}

// push is a pair of rafters, or one alone, that pushes outward.
type push struct {
	rafters []*geom.Timber
	joint   *geom.Joint // between the two
	why     string
	mend    string
}

// thrust warns of rafters that push their walls out, one finding for all that
// do so alike.
func (p *proof) thrust() {
	var order []string
	like := map[string][]push{}
	done := map[*geom.Timber]bool{}
	for _, r := range p.f.Timbers {
		if done[r] || !isRafter(r) {
			continue
		}
		q := push{rafters: []*geom.Timber{r}}
		for _, j := range p.of[r] {
			if o := other(j, r); isRafter(o) && run(o).Dot(run(r)) < -1+1e-3 {
				q.rafters, q.joint = append(q.rafters, o), j
				done[o] = true
				break
			}
		}
		if q.why, q.mend = p.pushes(q); q.why == "" {
			continue
		}
		key := q.why + q.mend
		if like[key] == nil {
			order = append(order, key)
		}
		like[key] = append(like[key], q)
	}
	for _, key := range order {
		p.pushing(like[key])
	}
}

// pushing warns of rafters that push outward for one reason.
func (p *proof) pushing(list []push) {
	f := finding.Finding{At: list[0].rafters[0].At, Mend: list[0].mend}
	what := "pair"
	for _, q := range list {
		for _, r := range q.rafters {
			f.Timbers = append(f.Timbers, r.ID)
		}
		if q.joint != nil {
			f.Joints = append(f.Joints, q.joint.ID)
		} else {
			what = "rafter"
		}
	}
	verb := "push"
	if len(list) == 1 {
		verb = "pushes"
	}
	if what == "pair" {
		f.Text = fmt.Sprintf("%s of rafters %s the walls outward: %s", counted(len(list), what), verb, list[0].why)
	} else {
		f.Text = fmt.Sprintf("%s %s outward at the foot: %s", counted(len(list), what), verb, list[0].why)
	}
	p.add(finding.Warn, "thrust", f)
}

// pushes says why a rafter or pair pushes outward, "" when it does not.
func (p *proof) pushes(q push) (why, mend string) {
	loose := 0
	for _, r := range q.rafters {
		if !p.twice(p.borne(r)) {
			loose++
		}
	}
	if loose == 0 || len(q.rafters) == 1 && p.held(q.rafters[0]) {
		return "", ""
	}
	if len(q.rafters) == 1 {
		return "it is borne by one level timber alone, and a seat on a plate holds no push",
			"bear its head on a ridge beam or plate, or set it against its fellow over a tie"
	}
	drop, tied := p.tie(q.rafters)
	if tied && drop <= Thick {
		return "", ""
	}
	why, mend = "nothing ties their feet together and no ridge beam carries them; a seat on a plate alone holds no push",
		"tie the plates together at their own level, carry the peak on a ridge beam on posts, or set a collar in the lowest third"
	if tied {
		why = fmt.Sprintf("the ties lie %s below the underside of the plates, so that the push bends the posts", p.show(drop))
		mend = "raise the ties to the plates, carry the peak on a ridge beam on posts, set a collar in the lowest third, or have the posts and their joints reckoned by an engineer"
	}
	if part, ok := p.collar(q.rafters); ok {
		if part <= Low+1e-9 {
			return "", ""
		}
		why += fmt.Sprintf(", and their collar sits at %.0f %% of the height of the roof, above the lowest third", 100*part)
	}
	return why, mend
}

// twice reports whether level timbers bear at two heights or more.
func (p *proof) twice(list []*geom.Timber) bool {
	for _, t := range list[min(1, len(list)):] {
		if math.Abs(mid(t)-mid(list[0])) > 50 {
			return true
		}
	}
	return false
}

// held reports whether a lone rafter has both ends in something: a foot or head
// joined to a timber that is no rafter and not the one level timber it rests on.
func (p *proof) held(r *geom.Timber) bool {
	n := 0
	for _, j := range p.of[r] {
		if o := other(j, r); !isRafter(o) && o.Role != "brace" && o.Role != "collar" {
			n++
		}
	}
	return n >= 2
}

// collar returns the lowest level timber that joins both rafters along their
// run, as a part of the height from the foot to the peak.
func (p *proof) collar(pair []*geom.Timber) (part float64, ok bool) {
	low := math.Inf(1)
	foot, peak := math.Inf(1), math.Inf(-1)
	for _, r := range pair {
		for _, t := range p.borne(r) {
			_, top := heights(t)
			foot = min(foot, top)
		}
		_, hi := heights(r)
		peak = max(peak, hi)
	}
	for _, j := range p.of[pair[0]] {
		if t := other(j, pair[0]); p.spans(t, pair[0]) && p.joined(t, pair[1]) {
			low = min(low, mid(t))
		}
	}
	if math.IsInf(foot, 1) {
		foot, _ = heights(pair[0])
	}
	if math.IsInf(low, 1) || peak-foot < 1 {
		return 0, false
	}
	return (low - foot) / (peak - foot), true
}

// spans reports whether a level timber runs the way a rafter rises.
func (p *proof) spans(t, rafter *geom.Timber) bool {
	return level(t) && math.Abs(t.Place.X.Dot(run(rafter))) > 1-1e-3
}

// joined reports whether a joint holds two timbers together.
func (p *proof) joined(a, b *geom.Timber) bool {
	for _, j := range p.of[a] {
		if other(j, a) == b {
			return true
		}
	}
	return false
}
