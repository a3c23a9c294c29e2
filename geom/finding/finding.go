// Package finding is the vocabulary of messages: what is wrong, where in the
// description it comes from, and how to mend it. Messages are data; one writer
// in the command turns them into text.
package finding

import (
	"fmt"
	"sort"
	"strings"
)

// Pos is a place in a description: 1-based line and column (in runes). The
// zero Pos means that the value was not written by the user.
type Pos struct {
	File      string
	Line, Col int
}

// String returns "file:line:col", or the file alone when there is no line.
func (p Pos) String() string {
	if p.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Col)
}

// Severity says how much a finding matters.
type Severity int

// The three severities of a finding about a solved frame.
const (
	Note Severity = iota // good to know; the frame may be cut as drawn
	Warn                 // buildable, but a framer should decide with open eyes
	Stop                 // do not cut
)

// String returns "note", "warn" or "stop".
func (s Severity) String() string { return [...]string{"note", "warn", "stop"}[s] }

// Finding is one result of proving a solved frame.
type Finding struct {
	Severity Severity
	Rule     string   // short constant id of the rule, such as "overlap"
	Timbers  []string // ids of the timbers it is about
	Joints   []string // ids of the joints it is about
	At       Pos      // the line that causes it
	Also     []Pos    // further lines, as for a clash of two joints
	Text     string   // one sentence: what is wrong, with the numbers
	Mend     string   // one sentence: how to mend it
}

// Fault is one reason why a description cannot be used at all.
type Fault struct {
	At     Pos
	Source string // the offending text, as the user wrote it; may be empty
	Text   string // what is wrong
	Mend   string // how to mend it
}

// Said is what is wrong, and the offending text where the words do not name it
// themselves.
func (f Fault) Said() string {
	if f.Source == "" || strings.Contains(" "+f.Text+" ", " "+f.Source+" ") {
		return f.Text
	}
	return f.Text + ": " + f.Source
}

// Error returns the fault on one line, so that a Fault is an error.
func (f Fault) Error() string {
	var b strings.Builder
	if s := f.At.String(); s != "" {
		b.WriteString(s + ": ")
	}
	b.WriteString(f.Said())
	if f.Mend != "" {
		b.WriteString(" (" + f.Mend + ")")
	}
	return b.String()
}

// Faults are all the reasons found in one description, in file order.
type Faults []Fault

// Error joins the faults, one a line.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Err returns fs as an error, or nil when there are none.
func (fs Faults) Err() error {
	if len(fs) == 0 {
		return nil
	}
	return fs
}

// Sort orders faults by place in the file.
func (fs Faults) Sort() {
	sort.SliceStable(fs, func(i, j int) bool { return less(fs[i].At, fs[j].At) })
}

// Gathered returns the faults with those of one place and one mend as one: the
// first says in how many more places it is the same.
func (fs Faults) Gathered() Faults {
	type cause struct {
		at   Pos
		mend string
	}
	var out Faults
	first, more := map[cause]int{}, map[int]int{}
	for _, f := range fs {
		c := cause{f.At, f.Mend}
		if i, again := first[c]; again {
			more[i]++
			continue
		}
		first[c] = len(out)
		out = append(out, f)
	}
	for i, n := range more {
		places := "places"
		if n == 1 {
			places = "place"
		}
		out[i].Text += fmt.Sprintf("; the same in %d more %s", n, places)
	}
	return out
}

func less(a, b Pos) bool {
	if a.Line != b.Line {
		return a.Line < b.Line
	}
	return a.Col < b.Col
}

// Sort orders findings for a reader: stops first, then warnings, then notes;
// within each by place in the file, then by rule and text.
func Sort(list []Finding) {
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i], list[j]
		if a.Severity != b.Severity {
			return a.Severity > b.Severity
		}
		if a.At != b.At {
			return less(a.At, b.At)
		}
		if a.Rule != b.Rule {
			return a.Rule < b.Rule
		}
		return a.Text < b.Text
	})
}

// Stops reports whether any finding says not to cut.
func Stops(list []Finding) bool {
	for _, f := range list {
		if f.Severity == Stop {
			return true
		}
	}
	return false
}
