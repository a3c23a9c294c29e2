package scheme

import (
	"fmt"
	"hash/fnv"
	"strings"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/spec"
	"pegwright/geom/vec"
)

// Pact is a joint being planned: which sticks meet, in what kind of joint, and
// what has been asked of it.
type Pact struct {
	ID      string
	Kind    string             // as in joint.Names
	R, E    *Stick             // receiver and enterer
	End     geom.End           // of the enterer
	REnd    geom.End           // of the receiver, where the two meet end to end
	Own     spec.JointSettings // what whoever laid it asks for
	User    spec.JointSettings // what the user wrote for this very joint
	At      finding.Pos
	PegOff  float64 // of a seat's peg, off the enterer's reference side, mm
	Blind   float64 // depth of a blind bore, mm; 0 for the usual
	Flush   bool    // pegs sawn level, because another timber stands there
	Tension bool    // must hold tension, not only locate
	taken   []void  // from the receiver, once asked for
}

// Join plans a joint at an end of e. A second joint between the same two is
// told apart by that end.
func (s *Scheme) Join(kind string, r, e *Stick, end geom.End, own spec.JointSettings, at finding.Pos) *Pact {
	p := &Pact{ID: JointID(e, r), Kind: kind, R: r, E: e, End: end, Own: own, At: at}
	for _, q := range s.Pacts {
		if q.ID == p.ID {
			p.ID += "-" + string(end)
		}
	}
	s.Pacts = append(s.Pacts, p)
	return p
}

// JointID names a joint after its timbers; a name that would leave no room for
// its pegs' numbers within 60 characters ends in a hash of the whole instead.
func JointID(e, r *Stick) string {
	id := e.Timber.ID + "-into-" + r.Timber.ID
	if len(id) <= 53 {
		return id
	}
	h := fnv.New32a()
	h.Write([]byte(id))
	return fmt.Sprintf("%s-%08x", strings.TrimRight(id[:44], "-"), h.Sum32())
}

// Away is the direction of the enterer from its jointed end into its length.
func (p *Pact) Away() vec.V {
	if p.End == geom.Finish {
		return p.E.Timber.Place.X.Neg()
	}
	return p.E.Timber.Place.X
}

// Meeting is the point midway between the ends of the lines of a joint end to
// end, as they were planned.
func (p *Pact) Meeting() vec.V { return p.R.At(p.REnd).Lerp(p.E.At(p.End), 0.5) }

// NearEnd is the end of a that lies nearer to b's line, or to b's given end.
func NearEnd(a, b *Stick, bEnd geom.End) geom.End {
	far := func(p vec.V) float64 {
		if bEnd != geom.Mid {
			return p.Dist(b.At(bEnd))
		}
		d := p.Sub(b.Timber.Place.O)
		return d.Sub(b.Timber.Place.X.Mul(d.Dot(b.Timber.Place.X))).Len()
	}
	if far(a.At(geom.Start)) <= far(a.At(geom.Finish)) {
		return geom.Start
	}
	return geom.Finish
}
