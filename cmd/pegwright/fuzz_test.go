//go:build unix

package main

import (
	"math"
	"math/rand/v2"
	"os"
	"regexp"
	"runtime/metrics"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"pegwright/draw"
	"pegwright/draw/scene"
	"pegwright/draw/sheet"
	"pegwright/draw/sheet/drawbore"
	"pegwright/draw/sheet/joint"
	"pegwright/draw/sheet/plan"
	"pegwright/draw/sheet/timber"
	"pegwright/draw/svg"
	"pegwright/geom/list"
	"pegwright/geom/model"
	"pegwright/samples"
	"pegwright/templates"
)

// What one description may cost from its bytes to one sheet: processor time,
// more for each timber beyond a hundred, and memory asked for in all.
const (
	mostTime   = 2 * time.Second
	mostMemory = 2 << 30
)

// spent returns the processor time and the memory that the program has used so
// far. Time by the clock would count what else the machine does.
func spent(t *testing.T) (time.Duration, uint64) {
	var u syscall.Rusage
	must(t, syscall.Getrusage(syscall.RUSAGE_SELF, &u))
	m := []metrics.Sample{{Name: "/gc/heap/allocs:bytes"}}
	metrics.Read(m)
	return time.Duration(u.Utime.Nano() + u.Stime.Nano()), m[0].Value.Uint64()
}

// pipeline takes a description all the way to one sheet, and demands that it is
// either refused, each fault with its place and a mend, or drawn without a bad
// number, and neither takes long. It reports whether it was solved.
func pipeline(t *testing.T, src []byte, which uint8) (solvable bool) {
	t.Helper()
	watch := time.AfterFunc(2*time.Minute, func() { panic("a description takes for ever:\n" + string(src)) })
	defer watch.Stop()
	begun, had := spent(t)
	f := &solved{name: "f", source: src}
	timbers := 0
	if faults := f.solve("f.yaml", nil); len(faults) > 0 {
		for _, x := range faults {
			if x.At.Line < 1 || x.At.Col < 1 || x.Text == "" || x.Mend == "" {
				t.Errorf("incomplete fault %+v\n%s", x, src)
			}
		}
	} else {
		solvable, timbers = true, len(f.frame.Timbers)
		if _, err := model.JSON(f.frame, nearby(f.finds)); err != nil {
			t.Errorf("model: %v\n%s", err, src)
		}
		for _, s := range oneKind(f, which) {
			if _, err := svg.Render(s, svg.Options{}); err != nil {
				t.Errorf("sheet %s %s: %v\n%s", s.Kind, s.ID, err, src)
			}
		}
	}
	ended, has := spent(t)
	took, most := ended-begun, mostTime+time.Duration(max(timbers-100, 0))*20*time.Millisecond
	if took > most || has-had > mostMemory {
		t.Errorf("%d timbers took %v and %d MiB\n%s", timbers, took, (has-had)>>20, src)
	}
	return solvable
}

// oneKind composes the sheets of one kind, of one stick or joint where there
// are many.
func oneKind(f *solved, which uint8) []*draw.Sheet {
	fr, stops := f.frame, list.Stopped(f.frame, f.finds)
	sticks, groups := scene.AllSticks(fr), scene.Groups(fr)
	n := int(which) / 9
	switch k := which % 9; {
	case k == 0:
		return sheet.Cover(fr, f.finds, nil)
	case k == 1:
		return sheet.Views(fr)
	case k == 2:
		return plan.Of(fr).Sheets()
	case k == 3:
		return sheet.Lists(fr, stops)
	case k == 4 && len(sticks) > 0:
		return timber.Sheets(fr, sticks[n%len(sticks)], stops)
	case k == 5 && len(groups) > 0:
		return joint.Sheets(fr, groups[n%len(groups)], stops)
	case k == 6 && len(groups) > 0:
		return drawbore.Sheets(fr, groups[n%len(groups)], stops)
	case k == 7:
		return sheet.Apart(fr)
	}
	return templates.Sheets(fr, f.finds)
}

// FuzzFrame: any bytes at all come to an end, soon, as a drawing or as faults.
func FuzzFrame(f *testing.F) {
	for i, name := range []string{"rail-and-post", "wood-store"} {
		src, _ := samples.Source(name)
		f.Add(src, uint8(i))
	}
	for i, c := range unusable {
		if len(c.src) < 2000 {
			f.Add([]byte(c.src), uint8(i))
		}
	}
	for i, c := range uncut {
		f.Add([]byte(c.src), uint8(i+4))
	}
	f.Fuzz(func(t *testing.T, src []byte, which uint8) { pipeline(t, src, which) })
}

var (
	figure = regexp.MustCompile(`\b\d+(\.\d+)?( \d+/\d+)?\b`)
	word   = regexp.MustCompile(`\b[a-z][a-z-]+\b`)
	braces = regexp.MustCompile(`\{[^{}]*\}`)
)

// mangled returns a description with a few of its numbers, words, groups of
// keys or lines changed for others, taken away or written twice.
func mangled(r *rand.Rand, src, other string) string {
	numbers := []string{"0", "1", "2", "3", "0.001", "1/8", "12", "25", "40", "100", "999", "5000", "100000", "-6", "8' 3\"", "1e3", "x"}
	swap := func(re *regexp.Regexp, with func() string) {
		if all := re.FindAllStringIndex(src, -1); len(all) > 0 {
			at := all[r.IntN(len(all))]
			src = src[:at[0]] + with() + src[at[1]:]
		}
	}
	pick := func(re *regexp.Regexp, from string) func() string {
		return func() string {
			all := re.FindAllString(from, -1)
			if len(all) == 0 {
				return ""
			}
			return all[r.IntN(len(all))]
		}
	}
	nudge := func() string { return strconv.FormatFloat(math.Round(240*r.Float64())/8, 'g', -1, 64) }
	for range 1 + r.IntN(3) {
		switch r.IntN(10) {
		case 0, 1:
			swap(figure, func() string { return numbers[r.IntN(len(numbers))] })
		case 2, 3:
			swap(figure, nudge)
		case 6, 7:
			swap(figure, pick(figure, src+other))
		case 4:
			swap(word, pick(word, src+other))
		case 5:
			swap(braces, pick(braces, src+other))
		default:
			lines := strings.SplitAfter(src, "\n")
			i := r.IntN(len(lines))
			src = strings.Join(lines[:i], "") + strings.Repeat(lines[i], 2*r.IntN(2)) + strings.Join(lines[i+1:], "")
		}
	}
	return src
}

// mangles is how many descriptions are mangled: PEGWRIGHT_MANGLED, or 30.
func mangles() int {
	if n, err := strconv.Atoi(os.Getenv("PEGWRIGHT_MANGLED")); err == nil {
		return n
	}
	return 30
}

// Samples that have been mangled come to an end, soon, as a drawing or as
// faults. PEGWRIGHT_SEED gives others.
func TestMangledSamples(t *testing.T) {
	seed, _ := strconv.ParseUint(os.Getenv("PEGWRIGHT_SEED"), 10, 64)
	r := rand.New(rand.NewPCG(seed, 17))
	names := samples.Names()
	drawn := 0
	for range mangles() {
		src, _ := samples.Source(names[r.IntN(len(names))])
		other, _ := samples.Source(names[r.IntN(len(names))])
		text, which := mangled(r, string(src), string(other)), uint8(r.IntN(256))
		func() {
			defer func() {
				if e := recover(); e != nil {
					t.Errorf("panic: %v, sheet %d\n%s", e, which, text)
				}
			}()
			if pipeline(t, []byte(text), which) {
				drawn++
			}
		}()
	}
	n := mangles()
	t.Logf("%d of %d drawn", drawn, n)
	if drawn == 0 || drawn == n {
		t.Error("of some descriptions something must be drawn, and some must be refused")
	}
}
