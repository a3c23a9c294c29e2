package raise

import (
	"fmt"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/geom"
	"pegwright/geom/vec"
)

// cautionBox sets a boxed caution in the lettering of raising sheets at the
// foot of a field and returns what is left.
func cautionBox(s *draw.Sheet, f block.Field, t string) block.Field {
	const pad = 2.0
	lines := font.WrapFace(t, f.W()-2*pad, raiseText, true)
	h := float64(len(lines))*raiseText*1.56 + pad
	s.Rect(draw.FrameLine, block.Field{X0: f.X0, Y0: f.Y0, X1: f.X1, Y1: f.Y0 + h}.Box())
	y := f.Y0 + h - pad/2 - 0.5
	for _, l := range lines {
		x := s.Text(vec.At(f.X0+pad, y-raiseText), raiseText, l)
		x.Bold = true
		y -= raiseText * 1.56
	}
	f.Y0 += h + 3
	return f
}

// panelHead sets a step's number, what it is about, the steps like it and its
// place in the frame, and returns the y below them.
func (r *raising) panelHead(s *draw.Sheet, f block.Field, a *act) float64 {
	n := fmt.Sprint(a.n)
	wide := font.Measure(n, 10, true)
	x := s.Text(vec.At(f.X0, f.Y1-10.5), 10, n)
	x.Bold, x.Mark = true, stepMark(a.n)
	h := page.Pen{S: s, X: f.X0 + wide + 3, Y: f.Y1 - 0.5, W: f.W() - placeWide - wide - 6, Letters: dim.Group{Name: "panel head", Height: raiseText}}
	for _, l := range page.Wrap(r.heads(a), h.W/1.1, raiseText) { // bold runs wider
		h.Line(l, raiseText, true)
	}
	for _, l := range font.Wrap(r.shared(a), h.W, raiseText) {
		h.Line(l, raiseText, false)
	}
	r.key(s, block.Field{X0: f.X1 - placeWide, Y0: f.Y1 - placeHigh, X1: f.X1, Y1: f.Y1}, a)
	return min(h.Y, f.Y1-placeHigh) - 2
}

// Room of the key view, mm.
const placeWide, placeHigh = 24.0, 20.0

// stepMark is the key of a step's number on its sheet.
func stepMark(n int) string { return fmt.Sprintf("step:%d", n) }

// heads is what a panel is headed with: where the work is done, and on what.
func (r *raising) heads(a *act) string {
	if a.step.Group != "" {
		return title(a.step.Group) + ", on the ground"
	}
	return title(r.subject(a.step))
}

// title begins a text with a capital letter.
func title(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// shared names the steps that are like this one.
func (r *raising) shared(a *act) string {
	if len(a.like) == 0 {
		return ""
	}
	if len(a.like) > mostLike+3 {
		return fmt.Sprintf("and %d steps like it", len(a.like))
	}
	return "and alike: " + numbersOf(a.like)
}

// numbersOf writes the numbers of steps, runs of three and more as from-to.
func numbersOf(acts []*act) string {
	word := "step"
	if len(acts) > 1 {
		word = "steps"
	}
	var ws []string
	for i := 0; i < len(acts); {
		k := i
		for k+1 < len(acts) && acts[k+1].n == acts[k].n+1 {
			k++
		}
		if k-i > 1 {
			ws = append(ws, fmt.Sprintf("%d to %d", acts[i].n, acts[k].n))
		} else {
			for ; i <= k; i++ {
				ws = append(ws, fmt.Sprint(acts[i].n))
			}
		}
		i = k + 1
	}
	return word + " " + strings.Join(ws, ", ")
}

// key draws where in the frame the step is.
func (r *raising) key(s *draw.Sheet, f block.Field, a *act) {
	dark := map[string]bool{}
	for _, id := range a.step.Move {
		dark[id] = true
	}
	block.KeyView(s, f, r.f, dark)
}

// mostLike is how many like steps are told line by line.
const mostLike = 3

// texts sets the facts of a step from y down and returns the height that they
// take; without a sheet it only measures. Of the like steps it tells rows line
// by line and the rest on one.
func (r *raising) texts(s *draw.Sheet, f block.Field, y float64, a *act, rows int) float64 {
	in := 20.0
	for _, b := range a.like {
		in = max(in, font.Measure("Step "+fmt.Sprint(b.n), raiseText, true)+2)
	}
	start := y
	step := raiseText * 1.56
	set := func(name, t, mark string) {
		h := raiseText
		for i, l := range page.Wrap(t, f.W()-in, h) {
			y -= step
			if s == nil {
				continue
			}
			if i == 0 {
				x := s.Text(vec.At(f.X0, y), h, name)
				x.Bold, x.Mark = true, mark
			}
			s.Text(vec.At(f.X0+in, y), h, l)
		}
		y -= 0.9
	}
	for _, t := range a.told {
		set(t.name, t.text, "")
	}
	for i, b := range a.like {
		if i == rows && (rows < mostLike || len(a.like) > rows+1) {
			set("Also", r.likeMany(a.like[i:]), marksOf(a.like[i:]))
			break
		}
		set("Step "+fmt.Sprint(b.n), r.likeOne(b), stepMark(b.n))
	}
	return start - y
}

// marksOf are the keys of many steps on one line.
func marksOf(acts []*act) string {
	var ws []string
	for _, b := range acts {
		ws = append(ws, stepMark(b.n))
	}
	return strings.Join(ws, " ")
}

// likeOne tells what differs in a like step: names, marks and the way.
func (r *raising) likeOne(b *act) string {
	s := b.step
	out := r.subject(s)
	if s.Group != "" && len(s.Joints) == 0 {
		return title(s.Group) + ": " + out + "."
	}
	var marks []string
	for _, id := range s.Joints {
		marks = append(marks, r.f.Joint(id).Mark)
	}
	if s.Group == "" && s.Direction().Z > -0.99 && len(s.Legs) > 0 {
		out += " " + geom.Heading(s.Direction())
	}
	if len(marks) == 0 {
		return out + "."
	}
	return out + ", marks " + strings.Join(marks, ", ") + "."
}

// likeMany names many like steps and where their marks are listed.
func (r *raising) likeMany(list []*act) string {
	return numbersOf(list) + "; their names and marks are in the list Order of assembly."
}
