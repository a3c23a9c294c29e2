package drawbore

import (
	"strings"
	"testing"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/legible"
	"pegwright/draw/scene"
	"pegwright/draw/sheet/tidy"
	"pegwright/geom"
	"pegwright/samples"
	"pegwright/samples/trial"
)

// drawbores returns the drawbore sheets of every group of a frame, numbered.
func drawbores(f *geom.Frame) []*draw.Sheet {
	var out []*draw.Sheet
	for _, g := range scene.Groups(f) {
		out = append(out, Sheets(f, g, map[string]int{})...)
	}
	for i, s := range out {
		block.Number(s, i+1, len(out), "0123456789ab")
	}
	return out
}

// The layout holds on every paper that a sheet may be asked for.
func TestDrawboreLayout(t *testing.T) {
	for _, name := range trial.Drawn() {
		for _, paper := range []string{"", "tabloid"} {
			f := trial.Sample(t, name)
			if paper != "" && name != "rail-and-post" && name != "bicycle-shelter" {
				continue
			} else if paper != "" {
				f.Paper.Sheets = paper
			}
			sheets := drawbores(f)
			tidy.Write(t, "drawbore-"+name+paper, sheets)
			for _, s := range sheets {
				if err := s.Valid(); err != nil {
					t.Error(err)
				}
				tidy.Check(t, s)
			}
		}
	}
}

// Joints set otherwise than usual: two pegs, braces drawn square to the
// shoulder, dry timbers, a given offset, a thick peg.
func TestDrawboreOfOtherSettings(t *testing.T) {
	store, _ := samples.Source("apiary-store")
	shelter, _ := samples.Source("bicycle-shelter")
	for name, src := range map[string]string{
		"square braces": string(store) + "layout: {brace: {draw: square}, tie: {pegs: 2, bore: 3/4\"}}\n",
		"given offset":  string(store) + "layout: {drawbore: 3/16\", brace: {drawbore: 1/16\"}}\n",
		"half inch":     string(store) + "layout: {drawbore: 1/2\"}\n",
		"dry":           strings.Replace(string(shelter), "seasoning: green", "seasoning: dry", 1),
	} {
		f := trial.Frame(t, name, src)
		sheets := drawbores(f)
		tidy.Write(t, "drawbore-"+name, sheets)
		for _, s := range sheets {
			tidy.Check(t, s)
			detailIsClear(t, s)
			pegIsClear(t, f, s)
		}
		if name == "dry" {
			continue
		}
		for _, d := range readBack(t, f) {
			detailCircles(t, d)
		}
	}
}

// throughPeg returns the first peg of a joint that goes through, or nil.
func throughPeg(j *geom.Joint) *geom.Peg {
	for i := range j.Pegs {
		if j.Pegs[i].Exit != 0 {
			return &j.Pegs[i]
		}
	}
	return nil
}

// Every group with a peg that goes through has its section, every one that is
// drawn its holes too, and no other group has any.
func TestDrawboreSheetsPerGroup(t *testing.T) {
	for _, name := range trial.Drawn() {
		f := trial.Sample(t, name)
		for _, g := range scene.Groups(f) {
			want := 0
			if p := throughPeg(g.First()); p != nil {
				want = 1
				if p.Offset != 0 {
					want = 2
				}
			}
			got := Sheets(f, g, nil)
			if len(got) != want {
				t.Errorf("%s: %d sheets, want %d", g.First().ID, len(got), want)
			}
			rule := "bore each from its template, or close the joint and bore both at once"
			if text := legible.Words(got); want > 0 && strings.Contains(text, rule) != (want == 1) {
				t.Errorf("%s: two ways of boring on %d sheets: %s", g.First().ID, want, text)
			}
		}
	}
}

func TestDrawboreStops(t *testing.T) {
	f := trial.Sample(t, "rail-and-post")
	g := scene.Groups(f)[0]
	for i, p := range pagesOf(t, Sheets(f, g, map[string]int{g.First().ID: 7})) {
		if !p.Says("DO NOT CUT – see finding 7") {
			t.Errorf("sheet %d may be cut from", i+1)
		}
	}
}
