package draw

import (
	"fmt"
	"strings"
)

// Paper is a size of paper, upright: W is not more than H. Millimetres.
type Paper struct {
	Name string
	W, H float64
}

const inch = 25.4

// Papers returns the sizes that are known, in the order in which they are
// listed to a user: ANSI/ASME Y14.1 (A Letter, B Tabloid) with US Legal,
// the architectural sizes, and ISO 216. Inch sizes are exact.
func Papers() []Paper {
	return []Paper{
		{"Letter", 8.5 * inch, 11 * inch},
		{"Legal", 8.5 * inch, 14 * inch},
		{"Tabloid", 11 * inch, 17 * inch},
		{"ARCH C", 18 * inch, 24 * inch},
		{"ARCH D", 24 * inch, 36 * inch},
		{"A4", 210, 297},
		{"A3", 297, 420},
		{"A2", 420, 594},
		{"A1", 594, 841},
	}
}

// Rolls returns the widths of roll paper that are known, as paper whose length H
// is that of a square cut: the architectural widths in inches, exact, and the
// widths of ISO 216 sheets and of inch rolls in whole millimetres.
func Rolls() []Paper {
	var out []Paper
	for _, in := range []float64{18, 24, 30, 36} {
		out = append(out, Paper{fmt.Sprintf("roll %g in", in), in * inch, in * inch})
	}
	for _, mm := range []float64{420, 594, 610, 841, 914} {
		out = append(out, Paper{fmt.Sprintf("roll %g mm", mm), mm, mm})
	}
	return out
}

// RollNamed returns the roll of that name, as PaperNamed does a sheet.
func RollNamed(name string) (Paper, bool) { return named(Rolls(), name) }

// PaperNamed returns the size of that name; case, spaces, hyphens and
// underscores do not matter. It reports false for a name that is not known.
func PaperNamed(name string) (Paper, bool) {
	return named(Papers(), name)
}

func named(list []Paper, name string) (Paper, bool) {
	for _, p := range list {
		if plainName(p.Name) == plainName(name) {
			return p, true
		}
	}
	return Paper{}, false
}

// Landscape returns the paper turned so that its long side lies across.
func (p Paper) Landscape() Paper { return Paper{p.Name, max(p.W, p.H), min(p.W, p.H)} }

// Portrait returns the paper turned so that its short side lies across.
func (p Paper) Portrait() Paper { return Paper{p.Name, min(p.W, p.H), max(p.W, p.H)} }

func plainName(s string) string {
	return strings.Map(func(c rune) rune {
		if c == ' ' || c == '-' || c == '_' {
			return -1
		}
		return c
	}, strings.ToLower(s))
}
