package spec

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
)

// inWords writes a selector out in words again, apart from the code that reads
// it: first who, then what it goes into, then where.
func inWords(s Selector) string {
	var w []string
	if who := append(slices.Clone(s.Roles), s.IDs...); len(who) > 0 {
		w = append(w, strings.Join(who, " and "))
	} else {
		w = append(w, "all")
	}
	if into := append(slices.Clone(s.IntoRoles), s.IntoIDs...); len(into) > 0 {
		w = append(w, "into", strings.Join(into, ", "))
	}
	if s.Bent > 0 {
		w = append(w, fmt.Sprint("of bent ", s.Bent))
	}
	if s.Bay > 0 {
		w = append(w, fmt.Sprint("in bay ", s.Bay))
	}
	if s.Wall != "" {
		w = append(w, "in the "+s.Wall+" wall")
	}
	return strings.Join(w, " ")
}

// FuzzSelector: any text is read or refused, never a panic; a fault has words
// and a mend and stands on the line; what was read says in words the same as
// before.
func FuzzSelector(f *testing.F) {
	for _, s := range []string{
		"all", "braces", "braces of bent 2", "girts into posts", "rafters and collars in bay 1", "queen posts into ties of bent 2",
		"post-1-south, post-2-south in the south wall", "door posts in south wall", "all in the north wall of bent 3", "principal rafters",
		"of", "into", "braces braces", "all posts", "of bent 0", "in bay 1001", "and and", ",,,", "in the", "post-", "POSTS\tInto\nSILLS", "ü",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, src string) {
		read := func(s string) (Selector, *reader) {
			r := &reader{file: "f", lines: []string{s}, ids: map[string]bool{"t1": true}}
			n := &yaml.Node{Kind: yaml.ScalarNode, Value: s, Line: 1, Column: 1}
			return r.selector(n, s), r
		}
		s, r := read(src)
		if s.Set == (len(r.faults) > 0) {
			t.Fatalf("%q: set %v, %v", src, s.Set, r.faults)
		}
		for _, x := range r.faults {
			if x.Text == "" || x.Mend == "" || x.At.Line != 1 || x.At.Col < 1 || x.At.Col > len([]rune(src))+1 {
				t.Errorf("%q: %+v", src, x)
			}
		}
		if !s.Set {
			return
		}
		words := inWords(s)
		again, r := read(words)
		s.Src, again.Src = "", ""
		if fmt.Sprintf("%+v", s) != fmt.Sprintf("%+v", again) || len(r.faults) > 0 {
			t.Errorf("%q reads as %+v; in words %q it reads as %+v, %v", src, s, words, again, r.faults)
		}
	})
}
