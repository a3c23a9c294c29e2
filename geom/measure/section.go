package measure

import (
	"math"
	"strings"
)

const sectionMend = `write them with an x between, as in 6 x 8, 150 x 150 or 6 1/8" x 5 15/16"`

// ParseSection reads two lengths with x, × or by between them, in
// millimetres. Any error is an *Error.
func ParseSection(src string, scope Scope) (a, b float64, err error) {
	a, b, e := section([]rune(src), scope)
	if e != nil {
		return 0, 0, e
	}
	return a, b, nil
}

// section reads two lengths with one separator between them.
func section(src []rune, scope Scope) (a, b float64, err *Error) {
	if len(src) > 2*MaxText {
		return 0, 0, &Error{Offset: 2 * MaxText, Text: "the section is longer than 1000 characters", Mend: sectionMend}
	}
	seps := separators(src)
	if len(seps) != 1 {
		e := &Error{Text: "two sizes are wanted here", Mend: sectionMend}
		if len(seps) > 1 {
			e.Offset = seps[1][0]
			e.Text = "two sizes are wanted here, not more"
		}
		return 0, 0, e
	}
	i, j := seps[0][0], seps[0][1]
	if a, err = evalLength(src[:i], scope); err != nil {
		return 0, 0, err
	}
	if b, err = evalLength(src[j:], scope); err != nil {
		err.Offset += j
		return 0, 0, err
	}
	return a, b, nil
}

// separators finds the x, × and by that stand outside names and parentheses,
// each as a pair of offsets.
func separators(src []rune) [][2]int {
	var out [][2]int
	s := scanner{src: src}
	depth := 0
	for i := 0; i < len(src); {
		r := src[i]
		n := 1
		switch {
		case r == '(':
			depth++
		case r == ')':
			depth--
		case isNameStart(r):
			w := s.word(i)
			n = len([]rune(w))
			if x := separatorLength(w); x > 0 && depth == 0 {
				n = x
				out = append(out, [2]int{i, i + n})
			}
		case r == '×' && depth == 0:
			out = append(out, [2]int{i, i + 1})
		}
		i += n
	}
	return out
}

// separatorLength tells how many runes of a word separate two sizes: x alone,
// x before a digit (6x8), or by.
func separatorLength(w string) int {
	l := strings.ToLower(w)
	switch {
	case l == "x" || l[0] == 'x' && len(l) > 1 && isDigit(rune(l[1])):
		return 1
	case l == "by":
		return 2
	}
	return 0
}

const pitchMend = "write a pitch as 9 in 12 or as 37 deg"

// ParsePitch reads a roof slope: a rise in a run (9 in 12), or an angle above
// level in degrees (37 deg, 37°). The rise is not negative, the run greater
// than zero. Any error is an *Error.
func ParsePitch(src string, scope Scope) (Pitch, error) {
	p, err := pitch([]rune(src), scope)
	if err != nil {
		return Pitch{}, err
	}
	return p, nil
}

// pitch reads an angle in degrees or a rise in a run. The word "in" may be the
// unit of the rise as well, so each of them is tried as the one between.
func pitch(src []rune, scope Scope) (Pitch, *Error) {
	if len(src) > MaxText {
		return Pitch{}, &Error{Offset: MaxText, Text: "the pitch is longer than 500 characters", Mend: pitchMend}
	}
	if head, ok := cutDegrees(src); ok {
		v, err := eval(head, scope)
		if err == nil && v.Dim == Length {
			err = &Error{Text: "an angle is a plain number of degrees", Mend: pitchMend}
		}
		return Pitch{Degrees: v.V}, err
	}
	none := &Error{Text: "this is not a pitch", Mend: guessPitch(string(src))}
	var first *Error
	for _, at := range wordsIn(src) {
		p, err := riseInRun(src[:at], src[at+2:], scope)
		if err == nil {
			return p, nil
		}
		if first == nil {
			first = err
		}
	}
	if first != nil && first.Cause != nil {
		return Pitch{}, first
	}
	return Pitch{}, none
}

// guessPitch is the mend of a pitch written as 9/12, as 9:12 or as 9 alone.
func guessPitch(src string) string {
	rise, run, two := strings.Cut(strings.ReplaceAll(src, ":", "/"), "/")
	rise, run = strings.TrimSpace(rise), strings.TrimSpace(run)
	switch {
	case two && figures(rise) && figures(run):
		return "did you mean " + rise + " in " + run + "?"
	case !two && figures(rise):
		return "did you mean " + rise + " in 12, or " + rise + " deg?"
	}
	return pitchMend
}

// figures reports whether s is a plain number.
func figures(s string) bool {
	for _, r := range s {
		if !isDigit(r) && r != '.' {
			return false
		}
	}
	return s != ""
}

// cutDegrees returns what stands before a word or sign for degrees.
func cutDegrees(src []rune) ([]rune, bool) {
	s := strings.TrimRight(string(src), " \t")
	for _, suffix := range []string{"°", "degrees", "deg"} {
		if head, ok := strings.CutSuffix(s, suffix); ok {
			return []rune(head), true
		}
	}
	return nil, false
}

// wordsIn returns the offsets of the word "in" where something follows it.
func wordsIn(src []rune) []int {
	var out []int
	s := scanner{src: src}
	for i := 0; i < len(src); i++ {
		w := s.word(i)
		if w == "in" && s.skip(i+2) < len(src) {
			out = append(out, i)
		}
		if w != "" {
			i += len([]rune(w)) - 1
		}
	}
	return out
}

// riseInRun evaluates the two sides of "in": both lengths, or both numbers.
func riseInRun(rise, run []rune, scope Scope) (Pitch, *Error) {
	a, err := eval(rise, scope)
	if err != nil {
		return Pitch{}, err
	}
	b, err := eval(run, scope)
	if err != nil {
		err.Offset += len(rise) + 2
		return Pitch{}, err
	}
	if (a.Dim == Length) != (b.Dim == Length) {
		x, okA := a.MM(scope.Unit)
		y, okB := b.MM(scope.Unit)
		if !okA || !okB {
			return Pitch{}, &Error{Text: "rise and run must both be lengths or both be numbers", Mend: pitchMend}
		}
		a.V, b.V = x, y
	}
	if !(b.V > 0) || a.V < 0 {
		return Pitch{}, &Error{Offset: len(rise), Text: "the run of a pitch must be greater than zero, the rise not less", Mend: pitchMend}
	}
	return Pitch{Degrees: math.Atan2(a.V, b.V) * 180 / math.Pi, Rise: a.V, Run: b.V}, nil
}
