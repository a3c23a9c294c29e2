package sheet

import (
	"strings"

	"pegwright/draw"
)

// Entry is one line of the cover's drawing list.
type Entry struct {
	N, To int    // numbers of the first and the last sheet of the line
	Title string // what stands in the line
	ID    string // of the first sheet, for a link
}

// entries lists sheets that come after the given number of cover sheets.
// Timber and joint sheets that show the same thing share a line; where a kind
// of them would still take many lines, one line stands for all.
func entries(sheets []*draw.Sheet, before int) []Entry {
	var out []Entry
	for from := 0; from < len(sheets); {
		to := from
		for to < len(sheets) && sheets[to].Kind == sheets[from].Kind {
			to++
		}
		lines := alike(sheets[from:to], before+from)
		if t := kindLine(sheets[from].Kind); t == "" {
			lines = single(sheets[from:to], before+from)
		} else if len(lines) > mostLines {
			lines = []Entry{{before + from + 1, before + to, t, sheets[from].ID}}
		}
		out = append(out, lines...)
		from = to
	}
	return out
}

// mostLines is how many lines of the drawing list a kind of sheet may take
// before one line stands for all.
const mostLines = 4

// kindLine is the line for all sheets of a kind, "" for kinds whose sheets are
// always told one by one.
func kindLine(kind string) string {
	switch kind {
	case "list":
		return "Lists: what to order, make and bore"
	case "timber":
		return "Timber sheets, by number"
	case "joint":
		return "Joint sheets, by joiner's mark"
	case "drawbore":
		return "Drawbore sheets, by joiner's mark"
	case "raise", "step":
		return "Raising sheets, by step"
	case "permit":
		return "Permit set, P1 and following"
	}
	return ""
}

// single lists sheets one by one.
func single(sheets []*draw.Sheet, before int) []Entry {
	out := make([]Entry, len(sheets))
	for i, s := range sheets {
		out[i] = Entry{before + i + 1, before + i + 1, s.Title, s.ID}
	}
	return out
}

// alike lists sheets of one kind, those that show the same thing in one line.
func alike(sheets []*draw.Sheet, before int) []Entry {
	var out []Entry
	shown := ""
	for i, s := range sheets {
		n := before + i + 1
		_, shows, ok := strings.Cut(s.Title, ": ")
		if ok && shows == shown {
			out[len(out)-1].To = n
			continue
		}
		shown = shows
		out = append(out, Entry{n, n, s.Title, s.ID})
	}
	return out
}
