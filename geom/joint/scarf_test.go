package joint_test

import (
	"math"
	"testing"

	"pegwright/geom"
	"pegwright/geom/joint"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

// scarfed returns two plates of w x d inches in one line along x, the line of
// the second turned round where asked, meeting at 60 in. Their tops are z = 0
// and their outsides y = 0.
func scarfed(turn bool, w, d, reduce float64, set joint.Settings) joint.Site {
	lay := func(id string, o, x vec.V) *geom.Timber {
		t := stick(id, o, x, vec.V{Y: 1}, 60, w, d, reduce)
		t.Place.Y, t.Place.Z = vec.V{Y: 1}, vec.V{Z: -1}
		if x.X > 0 {
			t.Place.Y, t.Place.Z = vec.V{Z: -1}, vec.V{Y: 1}
			t.Section = [2]float64{d * inch, w * inch}
			t.Ideal = [2]float64{(d - reduce) * inch, (w - reduce) * inch}
			t.Blank = geom.BlankOf(t.Length, t.Section, t.Section)
		}
		return t
	}
	s := joint.Site{ID: "j", R: lay("first", vec.V{}, vec.V{X: 1}), E: lay("second", vec.V{X: 60}, vec.V{X: 1}),
		End: geom.Start, REnd: geom.Finish, Meet: vec.V{X: 60 * inch}, Set: set}
	if turn {
		s.E, s.End = lay("second", vec.V{X: 120}, vec.V{X: -1}), geom.Finish
	}
	return s
}

func lapSet(squint, key float64, wedges bool) joint.Settings {
	set := usual()
	set.Pegs, set.Scarf = 2, joint.Scarf{Length: 24 * inch, Squint: squint, Key: key * inch, Wedges: wedges}
	return set
}

// Volumes worked by hand in inches. The butts of a half-lap scarf lean alike,
// so that each timber loses half its section over the table's length: what the
// undercut leaves at one end it takes at the other. The key takes half its
// section from each.
func TestHalfLapScarfVolumes(t *testing.T) {
	for _, turn := range []bool{false, true} {
		for _, reduce := range []float64{0, 0.5} {
			for _, c := range []struct {
				squint, key float64
				wedges      bool
			}{{0, 0, false}, {0.2, 0, false}, {0.25, 1, false}, {1.0 / 6, 1.25, true}} {
				s := scarfed(turn, 6, 8, reduce, lapSet(c.squint, c.key, c.wedges))
				fromR, fromE, _ := made(t, "half-lap scarf", s)
				want := 6*8*24/2.0 + c.key*c.key/2*6
				same(t, "from the receiver", fromR, want)
				same(t, "from the enterer", fromE, want)
				same(t, "receiver's length", s.R.Length/inch, 60+12)
				same(t, "enterer's length", s.E.Length/inch, 60+12)
			}
		}
	}
}

// The table bears over its whole length and width less the key's room, and the
// four butt faces lean off the square by the undercut asked for.
func TestHalfLapScarfFaces(t *testing.T) {
	for _, n := range []float64{4, 5, 6} {
		for _, key := range []float64{0, 1} {
			c := fit(t, "half-lap scarf", scarfed(true, 6, 8, 0, lapSet(1/n, key, false)))
			for _, b := range []*solid.Body{c.r, c.e} {
				same(t, "table", areaOf(b, geom.RoleTable, nil), 6*(24-key))
				butts := 0
				for _, p := range b.Boundary() {
					if p.Tags[0].Role != geom.RoleButt {
						continue
					}
					butts++
					if got := math.Abs(p.Plane.N.Z / p.Plane.N.X); math.Abs(got-1/n) > 1e-9 {
						t.Errorf("a butt leans 1 in %.4f, want 1 in %g", 1/got, n)
					}
					same(t, "butt", math.Abs(p.Area())/inch/inch, 6*4*math.Sqrt(1+1/n/n))
				}
				if butts != 2 {
					t.Errorf("%d butts, want 2", butts)
				}
			}
		}
	}
}

func TestScarfsClose(t *testing.T) {
	for _, c := range []struct {
		name, kind  string
		set         joint.Settings
		legs, parts int
	}{
		{"square butts", "half-lap scarf", lapSet(0, 0, false), 1, 0},
		{"undercut", "half-lap scarf", lapSet(0.2, 0, false), 1, 0},
		{"keyed", "half-lap scarf", lapSet(0.25, 1, false), 2, 1},
		{"folding wedges", "half-lap scarf", lapSet(0.2, 1.25, true), 2, 2},
		{"splayed", "splayed scarf", lapSet(0, 0, false), 1, 0},
	} {
		for _, turn := range []bool{false, true} {
			for _, upright := range []bool{false, true} {
				c.set.Scarf.Upright = upright
				f := fit(t, c.kind, scarfed(turn, 6, 8, 0.5, c.set))
				f.closes(t)
				if len(f.res.Joint.Moves) != c.legs || len(f.res.Joint.Pieces) != c.parts {
					t.Errorf("%s: %d legs and %d pieces, want %d and %d", c.name, len(f.res.Joint.Moves), len(f.res.Joint.Pieces), c.legs, c.parts)
				}
			}
		}
	}
}

// An undercut butt cannot lift off its table, a square one can; a key keeps the
// two from drawing apart, and without one they slide apart.
func TestScarfHolds(t *testing.T) {
	lift, draw := vec.V{Z: 10}, vec.V{X: 10}
	for _, c := range []struct {
		squint, key float64
		up, along   bool
	}{{0, 0, false, false}, {0.2, 0, true, false}, {0.2, 1, true, true}} {
		f := fit(t, "half-lap scarf", scarfed(false, 6, 8, 0, lapSet(c.squint, c.key, false)))
		still := f.r.Cells()
		for _, p := range f.res.Joint.Pieces {
			still = append(still, p.Solid)
		}
		if got := locked(f.e.Cells(), still, lift); got != c.up {
			t.Errorf("squint %g: held down %v, want %v", c.squint, got, c.up)
		}
		if got := locked(f.e.Cells(), still, draw); got != c.along {
			t.Errorf("key %g in: held along %v, want %v", c.key, got, c.along)
		}
	}
}

// Keys and wedges fill exactly their room: its volume, worked by hand, is the
// key's square by the timber's width.
func TestKeyFillsItsRoom(t *testing.T) {
	for _, wedges := range []bool{false, true} {
		f := fit(t, "half-lap scarf", scarfed(false, 6, 8, 0, lapSet(0.2, 1.25, wedges)))
		sum := 0.0
		for _, p := range f.res.Joint.Pieces {
			sum += p.Solid.Volume() / cubic
		}
		same(t, "pieces", sum, 1.25*1.25*6)
		whole := (f.rn.Volume()+f.en.Volume())/cubic + sum
		same(t, "the line of timber is whole again", whole, 6*8*120)
	}
}

// A stop-splayed scarf, worked by hand: the table runs from the butt's height b
// below one face to b above the other, so that each timber loses half its
// section over the length. Its butts stand square.
func TestSplayedScarf(t *testing.T) {
	for _, turn := range []bool{false, true} {
		for _, b := range []float64{1.5, 2} {
			set := lapSet(0, 0, false)
			set.Scarf.Butt = b * inch
			s := scarfed(turn, 6, 8, 0, set)
			fromR, fromE, _ := made(t, "splayed scarf", s)
			same(t, "from the receiver", fromR, 6*8*24/2)
			same(t, "from the enterer", fromE, 6*8*24/2)
			f := fit(t, "splayed scarf", scarfed(turn, 6, 8, 0, set))
			for _, body := range []*solid.Body{f.r, f.e} {
				same(t, "table", areaOf(body, geom.RoleTable, nil), 6*math.Hypot(24, 8-2*b))
				// One butt, cut; the tip is the square end of the stick.
				square := func(p solid.Plane) bool { return math.Abs(p.N.X) > 1-1e-9 }
				same(t, "butt", areaOf(body, geom.RoleButt, square), 6*b)
				same(t, "ends", areaOf(body, "start", square)+areaOf(body, "end", square), 6*8+6*b)
			}
		}
	}
}

// The usual splayed scarf has butts 1-1/2 to 2 in high and a table four times
// its depth (common practice, no source).
func TestUsualSplayedScarf(t *testing.T) {
	for _, c := range []struct{ depth, butt float64 }{{6, 1.5}, {7, 1.75}, {8, 2}, {12, 2}} {
		set := usual()
		set.Pegs = 2
		f := fit(t, "splayed scarf", scarfed(false, 6, c.depth, 0, set))
		same(t, "butt", areaOf(f.r, geom.RoleButt, nil), 6*c.butt)
		from, _ := f.e.Bounds()
		_, to := f.r.Bounds()
		same(t, "length", (to.X-from.X)/inch, 4*c.depth)
	}
}

// Pegs cross the table, lie inside both halves with their bore, in pairs off
// the middle, and stay out of the key's room.
func TestScarfPegs(t *testing.T) {
	for n := 2; n <= 4; n++ {
		for _, key := range []float64{0, 1} {
			set := lapSet(0.2, key, false)
			set.Pegs = n
			s := scarfed(true, 6, 8, 0, set)
			f := fit(t, "half-lap scarf", s)
			if len(f.res.Joint.Pegs) != n || len(f.res.Bores) != 2*n {
				t.Fatalf("%d pegs and %d bores, want %d and %d", len(f.res.Joint.Pegs), len(f.res.Bores), n, 2*n)
			}
			for _, p := range f.res.Joint.Pegs {
				if d := p.To.Sub(p.From); math.Abs(math.Abs(d.Z)-8*inch) > 1e-6 || math.Abs(d.X)+math.Abs(d.Y) > 1e-6 {
					t.Errorf("%s runs %v", p.ID, d)
				}
				if p.Offset != 0 || p.Mortise.Dist(p.Tenon) > 1e-9 {
					t.Errorf("%s is drawn", p.ID)
				}
				x := math.Abs(p.Mortise.X/inch - 60)
				if x > 12-0.8-1.5 || key > 0 && x < key/2+0.5+0.5 {
					t.Errorf("%s lies %.2f in off the middle", p.ID, x)
				}
			}
		}
	}
}

func TestScarfNeedsOneLine(t *testing.T) {
	k, _ := joint.Lookup("half-lap scarf")
	for name, change := range map[string]func(*joint.Site){
		"turned": func(s *joint.Site) { s.E.Place = square(0, usual()).E.Place },
		"beside": func(s *joint.Site) { s.E.Place.O.Y += inch },
		"deeper": func(s *joint.Site) { s.E.Section[1] += inch },
		"middle": func(s *joint.Site) { s.REnd = geom.Mid },
		"back":   func(s *joint.Site) { s.REnd = geom.Start },
	} {
		s := scarfed(true, 6, 8, 0, lapSet(0.2, 0, false))
		if bad := k.Fits(s); bad != "" {
			t.Fatalf("sound site refused: %s", bad)
		}
		change(&s)
		if k.Fits(s) == "" {
			t.Errorf("%s: nothing said", name)
		}
	}
}

// Where a scarf may stand (common practice, no source): its middle 0.15 to 0.30
// of the bay from a post.
func TestScarfStand(t *testing.T) {
	posts := []float64{0, 120 * inch, 240 * inch}
	for _, c := range []struct {
		x, share float64
		good     bool
	}{{18, 0.15, true}, {36, 0.30, true}, {17, 17.0 / 120, false}, {37, 37.0 / 120, false}, {60, 0.5, false},
		{120, 0, false}, {150, 0.25, true}, {210, 0.25, true}, {-12, -0.1, false}, {252, -0.1, false}} {
		r := joint.StandOf(c.x*inch, posts)
		if r.Good != c.good || math.Abs(r.Share-c.share) > 1e-9 {
			t.Errorf("at %g in: share %.4f, good %v", c.x, r.Share, r.Good)
		}
	}
	if !joint.StandOf(0, posts[:1]).Good {
		t.Error("one post makes no bay")
	}
}
