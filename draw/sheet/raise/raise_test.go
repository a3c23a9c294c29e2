package raise

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// raisedSample is the raising of a sample with the sheet of each picture alone.
type raisedSample struct {
	*raising
	drawn map[*act]*draw.Sheet
}

func (r *raisedSample) sheet(a *act) *draw.Sheet {
	if r.drawn[a] == nil {
		r.drawn[a] = r.page([]*act{a})
	}
	return r.drawn[a]
}

// TestRaising holds the raising of every sample to the checks below.
func TestRaising(t *testing.T) {
	checks := []struct {
		name string
		hold func(*testing.T, *raisedSample)
	}{
		{"RaisePegsAddUp", checkRaisePegsAddUp},
		{"LikeStepsAreAlike", checkLikeStepsAreAlike},
		{"RaiseWeightsAreTheLists", checkRaiseWeightsAreTheLists},
		{"RaiseAgreesWithTheListOfSteps", checkRaiseAgreesWithTheListOfSteps},
		{"WhatMovesIsDark", checkWhatMovesIsDark},
		{"ArrowsPointTheWayOfTheMove", checkArrowsPointTheWayOfTheMove},
		{"MarksStandBesideThePicture", checkMarksStandBesideThePicture},
	}
	for _, name := range samples.Names() {
		r := &raisedSample{&raising{f: trial.Sample(t, name), bodies: map[string]raisePart{}}, map[*act]*draw.Sheet{}}
		r.gather()
		for _, c := range checks {
			t.Run(name+" "+c.name, func(t *testing.T) { c.hold(t, r) })
		}
	}
}

// words returns the texts of sheets, title blocks left out, joined by spaces.
func words(sheets []*draw.Sheet) string {
	var ws []string
	for _, s := range sheets {
		for _, it := range s.Items {
			if x, ok := it.(*draw.Text); ok && x.Layer != "title" {
				ws = append(ws, x.S)
			}
		}
	}
	return strings.Join(ws, " ")
}

// Raising sheets keep the layout, in lettering that is read at arm's length
// (3.5 mm of ISO 3098; the figures of a fraction 2.5), and call nothing safe or
// approved.
func TestRaiseLayout(t *testing.T) {
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			f := trial.Sample(t, name)
			sheets := Sheets(f)
			everyStepOnce(t, f, sheets)
			tidy.Write(t, "raise-"+name, sheets)
			for _, s := range sheets {
				if err := s.Valid(); err != nil {
					t.Error(err)
				}
				if s.Kind != "raise" {
					t.Errorf("%s is of kind %q", s.ID, s.Kind)
				}
				tidy.Check(t, s)
				for _, it := range s.Items {
					if x, ok := it.(*draw.Text); ok && x.Layer != "title" && x.Height < 3.5 {
						t.Errorf("%s: %q is %.1f mm high", s.ID, x.S, x.Height)
					}
				}
			}
			if w := regexp.MustCompile(`(?i)\b(safe|safely|approved)\b`).FindString(words(sheets)); w != "" {
				t.Errorf("printed: %q", w)
			}
		})
	}
}

// everyStepOnce holds that every step is on exactly one sheet, told by itself or
// as one of those that are like another.
func everyStepOnce(t *testing.T, f *geom.Frame, sheets []*draw.Sheet) {
	t.Helper()
	on := map[string][]string{}
	for _, s := range sheets {
		for _, it := range s.Items {
			for _, m := range strings.Fields(it.Head().Mark) {
				if strings.HasPrefix(m, "step:") {
					on[m] = append(on[m], s.ID)
				}
			}
		}
	}
	if len(on) != len(f.Steps) {
		t.Errorf("%d steps are shown of %d", len(on), len(f.Steps))
	}
	for i := range f.Steps {
		if got := on[stepMark(i+1)]; len(got) != 1 {
			t.Errorf("step %d is on %q", i+1, got)
		}
	}
}

// toldOf returns what a step is told under a name, "" where it is not.
func toldOf(a *act, name string) string {
	for _, x := range a.told {
		if x.name == name {
			return x.text
		}
	}
	return ""
}

var pegCount = regexp.MustCompile(`(\d+) pegs? `)

// The pegs that the pictures tell to drive, each as often as it is used, are all
// the pegs of the frame, and no peg belongs to two steps.
func checkRaisePegsAddUp(t *testing.T, r *raisedSample) {
	sum, frame := 0, 0
	for _, j := range r.f.Joints {
		frame += len(j.Pegs)
	}
	for _, a := range r.acts {
		for _, m := range pegCount.FindAllStringSubmatch(toldOf(a, "Drive"), -1) {
			n, _ := strconv.Atoi(m[1])
			sum += n * (1 + len(a.like))
		}
	}
	if sum != frame {
		t.Errorf("%d pegs are told, the frame has %d", sum, frame)
	}
	seen := map[string]int{}
	for i, s := range r.f.Steps {
		for _, id := range s.Pegs {
			if seen[id] > 0 {
				t.Errorf("peg %s is driven in steps %d and %d", id, seen[id], i+1)
			}
			seen[id] = i + 1
		}
	}
	if len(seen) != frame {
		t.Errorf("%d pegs are driven, the frame has %d", len(seen), frame)
	}
}

// The steps that share a picture drive pegs of the same sizes and weigh the
// same, to the pound or kilogram shown, reckoned from the timbers themselves.
func checkLikeStepsAreAlike(t *testing.T, r *raisedSample) {
	facts := func(s geom.Step) string {
		sizes := map[string]int{}
		for _, id := range s.Joints {
			for _, g := range r.f.Joint(id).Pegs {
				sizes[fmt.Sprintf("%.1f %.1f", g.Bore, g.Length)]++
			}
		}
		return fmt.Sprint(len(s.Move), len(s.Joints), len(s.Pieces), s.Motion, s.Group == "", sizes)
	}
	weight := func(s geom.Step) float64 {
		sum := 0.0
		for _, id := range s.Move {
			g, _ := r.f.Timber(id).Weight()
			sum += g
		}
		return sum
	}
	for _, a := range r.acts {
		for _, b := range a.like {
			if facts(a.step) != facts(b.step) || math.Abs(weight(a.step)-weight(b.step)) > 1 {
				t.Errorf("step %d is not like step %d: %s, %.1f kg; %s, %.1f kg", b.n, a.n, facts(b.step), weight(b.step), facts(a.step), weight(a.step))
			}
		}
	}
}

// Weights on the sheets are those of the list of weights, rounded to a whole
// pound or kilogram.
func checkRaiseWeightsAreTheLists(t *testing.T, r *raisedSample) {
	listed := map[string]float64{}
	for _, row := range list.Lifting(r.f).Values {
		listed[row[0].(string)] = row[2].(float64)
	}
	for _, a := range r.acts {
		what := a.step.Name + ", as it is moved"
		if len(a.step.Move) == 1 {
			what = a.step.Move[0]
		}
		want, ok := listed[what]
		got, err := strconv.ParseFloat(strings.Fields(toldOf(a, "Lift"))[0], 64)
		if !ok || err != nil || math.Abs(got-want) > 0.5+1e-9 {
			t.Errorf("step %d: %q, listed %.1f", a.n, toldOf(a, "Lift"), want)
		}
	}
}

// The list of steps and the sheets tell the same: as many steps, the same pegs
// at each, the same drop of a bent's feet, and the marks of the same joints.
func checkRaiseAgreesWithTheListOfSteps(t *testing.T, r *raisedSample) {
	rows := list.Steps(r.f)
	if len(rows.Rows) != len(r.f.Steps) {
		t.Fatalf("%d rows for %d steps", len(rows.Rows), len(r.f.Steps))
	}
	mark := regexp.MustCompile(`\b[XVIL]+\b`)
	for _, first := range r.acts {
		for _, a := range append([]*act{first}, first.like...) {
			row := rows.Rows[a.n-1]
			n := 0
			for _, m := range pegCount.FindAllStringSubmatch(toldOf(a, "Drive"), -1) {
				k, _ := strconv.Atoi(m[1])
				n += k
			}
			if fmt.Sprint(n) != row[2] {
				t.Errorf("step %d: %d pegs on the sheet, %s in the list", a.n, n, row[2])
			}
			if row[3] != "" && !strings.Contains(toldOf(a, "Do"), row[3]) {
				t.Errorf("step %d: feet come down %s in the list; %s", a.n, row[3], toldOf(a, "Do"))
			}
			_, closes, _ := strings.Cut(row[4], "; close joint")
			want := mark.FindAllString(closes, -1)
			if got := mark.FindAllString(toldOf(a, "Joints"), -1); fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("step %d: marks %v on the sheet, %v in the list", a.n, got, want)
			}
		}
	}
}

// Where the frame cannot be put together, here because a bent with 4 in foot
// tenons cannot be reared, every raising sheet says so.
func TestUnprovedOrderIsForbidden(t *testing.T) {
	const src = `frame: Barn
units: in
building:
  span: 14'
  bays: [10']
  eave: 9'
  roof: {shape: gable, pitch: 9 in 12}
  sills: yes
  girts: {height: [4'], in: [eave walls]}
adjust:
  - {joints: posts into sills, tenon length: 4}
`
	for _, forbidden := range []bool{true, false} {
		text := src
		if !forbidden {
			text = strings.Replace(src, "length: 4", "length: 2", 1)
		}
		f := trial.Frame(t, "barn", text)
		sheets := Sheets(f)
		if len(sheets) == 0 {
			t.Fatal("no sheets")
		}
		for _, s := range sheets {
			if got := strings.Contains(words([]*draw.Sheet{s}), "DO NOT RAISE"); got != forbidden {
				t.Errorf("%s forbids: %v, want %v", s.ID, got, forbidden)
			}
			tidy.Check(t, s)
		}
	}
}

// Long names and large paper keep the layout too.
func TestRaiseHoldsLongNames(t *testing.T) {
	src, _ := samples.Source("vine-arbour")
	const more = "-with-a-very-long-name-that-no-one-wants"
	text := strings.NewReplacer("post-south-east", "post-south-east"+more, "plate-south", "plate-south"+more).Replace(string(src))
	f := trial.Frame(t, "arbour", text)
	for _, paper := range []string{"letter", "a3"} {
		f.Paper.Sheets = paper
		sheets := Sheets(f)
		everyStepOnce(t, f, sheets)
		for _, s := range sheets {
			tidy.Check(t, s)
		}
	}
}
