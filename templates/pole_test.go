package templates

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pegwright/geom"
	"pegwright/geom/vec"
	"pegwright/samples"
)

// poleLines reads a pole back from its strips, laid diamond on diamond, and
// returns where each of its lines lies from the start end, mm.
func poleLines(t *testing.T, pages []found, number int) map[string]float64 {
	t.Helper()
	out := map[string]float64{}
	shift := 0.0
	for n := 0; ; n++ {
		key := fmt.Sprintf("pole:%d:%d:", number, n)
		var on *found
		for i := range pages {
			if _, ok := pages[i].lines[key+"arris"]; ok {
				on = &pages[i]
			}
		}
		if on == nil {
			break
		}
		at := func(mark string) (float64, bool) {
			l, ok := on.lines[key+mark]
			return l[0].X, ok
		}
		if x, ok := at("tick:0"); n == 0 && ok {
			shift = -x
		}
		for i := range 2 {
			if x, ok := at(fmt.Sprintf("match:%d:%d", n, i)); n > 0 && ok {
				before := out[fmt.Sprintf("match:%d:%d", n, i)]
				if i == 1 && math.Abs(before-x-shift) > promised {
					t.Errorf("%s: the diamonds do not agree", on.name)
				}
				shift = before - x
			} else if n > 0 {
				t.Errorf("%s: no diamond %d before strip %d", on.name, i, n)
			}
		}
		for m, l := range on.lines {
			if strings.HasPrefix(m, key) && !strings.HasSuffix(m, "arris") {
				m = strings.TrimPrefix(m, key)
				if x, there := out[m]; there && math.Abs(x-l[0].X-shift) > promised {
					t.Errorf("%s: %s lies at %.3f and at %.3f", on.name, m, x, l[0].X+shift)
				}
				out[m] = l[0].X + shift
			}
		}
	}
	return out
}

// TestStoryPoles measures the story poles in the rendered files, on sheets and
// on a roll, plain and corrected: every place of layout, every mortise's end
// and every hole of the timber has a line at its true length, and the last line
// is the timber's length.
func TestStoryPoles(t *testing.T) {
	cases := []struct {
		sample, paper string
		printerOff
	}{
		{"rail-and-post", "letter", printerOff{100, 100}},
		{"rail-and-post", "a4", printerOff{99.5, 100.3}},
		{"vine-arbour", "roll 24 in", printerOff{100.4, 99.2}},
	}
	for _, c := range cases {
		src, _ := samples.Source(c.sample)
		f, err := solveText(c.sample, src)
		if err != nil {
			t.Fatal(err)
		}
		f.Paper = geom.Paper{Sheets: "letter", Templates: c.paper, Poles: true}
		all := poles(f, nil)
		plain := poleSheets(f, all)
		f.Paper.Along, f.Paper.Across = c.along, c.across
		d := drawn{name: c.sample, f: f, sheets: poleSheets(f, all), read: map[string][]found{}}
		correct(f, d.sheets)
		c.readPrinted(t, &d, plain)
		for k := range 2 {
			var pages []found
			for _, s := range d.sheets {
				pages = append(pages, d.read[s.ID][k])
			}
			for n, p := range all {
				holdPole(t, c.sample+" on "+c.paper, f, p, poleLines(t, pages, n+1))
			}
		}
	}
}

func holdPole(t *testing.T, where string, f *geom.Frame, p pole, lines map[string]float64) {
	t.Helper()
	want := map[string]float64{"end": p.t.Length}
	for _, j := range f.Joints {
		for _, l := range j.Lines {
			if j.Into == p.t {
				want[j.ID+" "+l.Name] = l.X
			}
		}
		for _, pl := range j.Places {
			if pl.On == p.t {
				want[j.ID+" "+pl.Label] = pl.X
			}
		}
	}
	for _, c := range p.t.Cuts {
		if c.Name == "mortise" {
			lo, hi := insideBlank(p.t, c)
			want["mortise of "+c.Joint] = lo
			want["mortise of "+c.Joint+", far"] = hi
		}
	}
	for _, b := range p.t.Bores {
		if b.From.X == b.To.X {
			want["bore of "+b.Peg] = b.From.X
		}
	}
	for what, x := range want {
		if x < 0 || x > p.t.Length {
			continue
		}
		best := math.Inf(1)
		for m, at := range lines {
			if strings.HasPrefix(m, "tick:") {
				best = math.Min(best, math.Abs(at-x))
			}
		}
		if best > 0.05 { // lines that fall together within 0.05 mm are one
			t.Errorf("%s, %s: no line for %s at %.3f mm, the nearest is %.3f off", where, p.t.ID, what, x, best)
		}
	}
	if at := lines[fmt.Sprintf("tick:%d", len(p.ticks)-1)]; math.Abs(at-p.t.Length) > promised {
		t.Errorf("%s, %s: the pole is %.3f mm long, the timber %.3f", where, p.t.ID, at, p.t.Length)
	}
}

// insideBlank returns between which places along a timber a mortise lies in its
// wood: at corners of the cut within the blank and where edges of the cut meet the
// blank's faces.
func insideBlank(tm *geom.Timber, c geom.Cut) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	within := func(p vec.V) {
		for n := 1; n <= 4; n++ {
			if tm.BlankPlane(n).Height(p) > 1e-6 {
				return
			}
		}
		lo, hi = min(lo, max(p.X, 0)), max(hi, min(p.X, tm.Length))
	}
	for _, f := range c.Solid.Faces {
		for i, a := range f.Loop {
			p, q := c.Solid.V[a], c.Solid.V[f.Loop[(i+1)%len(f.Loop)]]
			within(p)
			for n := 1; n <= 4; n++ {
				if h, k := tm.BlankPlane(n).Height(p), tm.BlankPlane(n).Height(q); h*k < 0 {
					within(p.Lerp(q, h/(h-k)))
				}
			}
		}
	}
	return lo, hi
}

// TestOnePoleForTimbersThatAreAlike: poles are drawn for distinct timbers only.
func TestOnePoleForTimbersThatAreAlike(t *testing.T) {
	f := sample(t)
	served := map[string]int{}
	for _, p := range poles(f, nil) {
		served[p.t.ID]++
		for _, id := range p.also {
			served[id]++
		}
	}
	for _, tm := range f.Timbers {
		if served[tm.ID] != 1 {
			t.Errorf("%s is on %d poles", tm.ID, served[tm.ID])
		}
	}
	if n := len(poles(f, nil)); n >= len(f.Timbers) {
		t.Errorf("%d poles for %d timbers", n, len(f.Timbers))
	}
}

// A brace's pocket is as long on the post's rough face as the brace is wide along
// it: a 5 in brace at 45° crosses the ideal face over 5 √2 in, and the rough face
// stands 1/2 in farther out, which the sloped end reaches 1/2 in farther on.
func TestPoleTellsTheMouthOfAPocket(t *testing.T) {
	src, _ := samples.Source("apiary-store")
	f, err := solveText("apiary-store", src)
	if err != nil {
		t.Fatal(err)
	}
	post := f.Timber("post-2-south")
	at := map[string]float64{}
	for _, j := range f.JointsOf(post) {
		if j.ID != "brace-2-south-into-post-2-south" {
			continue
		}
		for _, k := range jointTicks(j, post) {
			word, _, _ := strings.Cut(k.word, " (")
			at[word] = k.x
		}
	}
	want := 25.4 * (5*math.Sqrt2 + 0.5)
	if got := at["mortise, far end"] - at["mortise, near end"]; math.Abs(got-want) > 0.01 {
		t.Errorf("the pocket is %.2f mm long, want %.2f", got, want)
	}
}
