package check_test

import (
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/samples/trial"
)

// spliced is a plate in two sticks over three posts; the first %s is the
// scarf's joint, the second where the two sticks end.
func spliced(scarf, at string) string {
	return strings.NewReplacer("SCARF", scarf, "AT", at).Replace(`frame: Spliced plate
units: in
timbers:
  plate-a: {role: plate, section: 6 x 8, from: [0, 0, 96], to: [AT, 0, 96], faces: [top, south]}
  plate-b: {role: plate, section: 6 x 8, from: [AT, 0, 96], to: [300, 0, 96], faces: [top, south]}
  post-1: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 88], faces: [south, west]}
  post-2: {role: post, section: 6 x 6, from: [120, 0, 0], to: [120, 0, 88], faces: [south, west]}
  post-3: {role: post, section: 6 x 6, from: [294, 0, 0], to: [294, 0, 88], faces: [south, west]}
joints:
  - {kind: SCARF, of: plate-b, end: start, into: plate-a}
  - {kind: mortise and tenon, of: post-1, end: end, into: plate-a, hold back start: 2}
  - {kind: mortise and tenon, of: post-2, end: end, into: plate-a}
  - {kind: mortise and tenon, of: post-3, end: end, into: plate-b, hold back end: 2}
`)
}

// Every new kind and variant in a frame of its own passes every proof.
func TestKindsPass(t *testing.T) {
	for name, src := range map[string]string{
		"lap scarf":         spliced("half-lap scarf", "150"),
		"keyed scarf":       spliced("half-lap scarf, scarf: {key: key, length: 24, undercut: 6}", "150"),
		"wedged scarf":      spliced("half-lap scarf, scarf: {key: wedges, key size: 1 1/4}, pegs: 4", "150"),
		"square butts":      spliced("half-lap scarf, scarf: {undercut: 0, upright: yes}", "150"),
		"splayed scarf":     spliced("splayed scarf", "150"),
		"high butts":        spliced("splayed scarf, scarf: {butt: 2, length: 36}, pegs: 3", "150"),
		"wedged tenon":      gate + "joints:\n  - {kind: wedged through tenon, of: rail, end: start, into: post}\n",
		"wedged, no peg":    gate + "joints:\n  - {kind: wedged through tenon, of: rail, end: start, into: post, pegs: 0, drop: 3/4, taper: 10, housing: 1/2}\n",
		"haunched":          gate + joints(into("rail", "start", "hold back end: 1 1/2, haunch: 3/4")),
		"proud":             gate + joints(into("rail", "start", "through: yes, proud: 1 1/2")),
		"barefaced":         gate + joints(into("rail", "start", "from reference: 1/2, thickness: 1 1/2")),
		"diminished":        strings.Replace(knee36, "JOINTS", "housing: 1/2, diminished: yes", 1),
		"square end":        strings.Replace(knee36, "JOINTS", "square end: yes", 1),
		"opposed, unstated": inLine + joints(into("rail", "start", "pegs: 1"), into("back", "end", "pegs: 1")),
	} {
		t.Run(name, func(t *testing.T) {
			f := trial.Frame(t, name, src)
			if list := proofs(f); len(stops(list)) > 0 {
				t.Errorf("stops:%s", texts(list))
			}
			pieces(t, f)
		})
	}
}

const knee36 = `frame: Knee
units: in
layout: {brace: {JOINTS}}
timbers:
  post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 9'], faces: [south, west]}
  beam: {role: beam, section: 6 x 6, from: [0, -1', 9'], to: [0, 9', 9'], faces: [top, west]}
  brace: {role: brace, section: 3 x 5, between: [post, beam], legs: 36 x 36, toward: north}
joints:
  - {kind: mortise and tenon, of: post, end: end, into: beam, tenon length: 3}
`

// pieces holds that no wedge or key shares wood with a timber, by points thrown
// into it and asked of the planes of blanks and cuts.
func pieces(t *testing.T, f *geom.Frame) {
	t.Helper()
	r := jitter(7)
	for _, j := range f.Joints {
		for _, p := range j.Pieces {
			c, in := p.Solid.Centroid(), 0
			lo, hi := p.Solid.Bounds()
			d := hi.Sub(lo)
			for range 2000 {
				at := lo
				at.X, at.Y, at.Z = lo.X+r.Float64()*d.X, lo.Y+r.Float64()*d.Y, lo.Z+r.Float64()*d.Z
				if !p.Solid.Contains(at, -0.1) {
					continue
				}
				in++
				for _, tm := range f.Timbers {
					if clear(tm, tm.Place.In(at), 0.05) {
						t.Fatalf("%s, middle %v, shares wood with %s at %v", p.ID, c, tm.ID, at)
					}
				}
			}
			if in < 100 {
				t.Errorf("only %d points fell into %s", in, p.ID)
			}
		}
	}
}

// The mend for tenons that meet: (5-1/2 in between the bearing planes - 1/2 in
// of web)/2 - 1/4 in each (common practice, no source).
func TestOpposedTenonsAreShared(t *testing.T) {
	for _, c := range []struct {
		section string
		length  float64
	}{{"6 x 6", (5.5-0.5)/2 - 0.25}, {"8 x 8", (7.5-0.5)/2 - 0.25}} {
		src := strings.Replace(inLine, "section: 6 x 6", "section: "+c.section, 1)
		if c.section == "8 x 8" {
			src = strings.Replace(src, "from: [0, 6, 48]", "from: [0, 8, 48]", 1)
		}
		f := trial.Frame(t, c.section, src+joints(into("rail", "start", "pegs: 1, thickness: 1.5"), into("back", "end", "pegs: 1, thickness: 1.5")))
		for _, j := range f.Joints {
			lo, hi := j.Tenon.Extent(j.Axes.W)
			if got := (hi - lo) / 25.4; got-c.length > 1e-9 || c.length-got > 1e-9 {
				t.Errorf("%s in a %s: tenon %.4f in, want %.4f", j.ID, c.section, got, c.length)
			}
		}
		said := 0
		for _, n := range f.Notes {
			if n.Rule == "generated" && n.Severity == finding.Note {
				said++
			}
		}
		if said != 2 {
			t.Errorf("%d notes, want one for each tenon", said)
		}
	}
}

// warned returns the texts of the findings of a rule.
func warned(list []finding.Finding, rule string) []string {
	var out []string
	for _, x := range list {
		if x.Rule == rule {
			out = append(out, x.Severity.String()+": "+x.Text)
		}
	}
	return out
}

// Where a scarf may stand (common practice, no source): posts stand with their
// middles at about 3, 123 and 297 in; the bay is 174 in.
func TestScarfStands(t *testing.T) {
	for _, c := range []struct {
		name, kind, at string
		says           []string // one for each finding wanted
	}{
		{"0.16 from a post", "splayed scarf, scarf: {length: 30}", "150", nil},
		{"0.26 from a post", "splayed scarf", "168", nil},
		{"half the bay", "splayed scarf", "210", []string{"0.50 of its bay"}},
		{"over a post", "splayed scarf", "120", []string{"0.02 of its bay", "post-2 take the same wood"}},
		{"near a mortise", "half-lap scarf, scarf: {length: 44}", "149", []string{"of whole wood"}},
		{"short", "half-lap scarf, scarf: {length: 16}", "150", []string{"2.0 times"}},
	} {
		got := warned(proofs(trial.Frame(t, c.name, spliced(c.kind, c.at))), "scarf")
		if len(got) != len(c.says) {
			t.Errorf("%s: %d findings, want %d: %q", c.name, len(got), len(c.says), got)
			continue
		}
		for _, w := range c.says {
			if !strings.Contains(strings.Join(got, "; "), w) {
				t.Errorf("%s: nothing says %q: %q", c.name, w, got)
			}
		}
	}
}

// A key made 1 mm thicker all round than its room shares wood with both
// timbers, and two wedges in one place with each other: both are stops.
func TestPiecesThatDoNotFit(t *testing.T) {
	f := trial.Frame(t, "key", spliced("half-lap scarf, scarf: {key: key}", "150"))
	p := &f.Joints[0].Pieces[0]
	p.Solid = p.Solid.Grow(1)
	if got := warned(proofs(f), "overlap"); len(got) != 1 || !strings.HasPrefix(got[0], "stop") || !strings.Contains(got[0], "1 more place") {
		t.Errorf("a key too thick: %q, want a stop for both timbers", got)
	}
	f = trial.Frame(t, "wedges", spliced("half-lap scarf, scarf: {key: wedges}", "150"))
	q := f.Joints[0].Pieces
	q[1].Solid = q[0].Solid
	if got := warned(proofs(f), "overlap"); len(got) != 1 || !strings.HasPrefix(got[0], "stop") {
		t.Errorf("two wedges in one place: %q", got)
	}
}
