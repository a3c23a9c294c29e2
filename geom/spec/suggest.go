package spec

import (
	"strconv"
	"strings"

	"pegwright/geom/finding"
)

func itoa(n int) string { return strconv.Itoa(n) }

// suggest writes a mend for a word that is none of words: the nearest of them
// when one is near, and otherwise the whole choice.
func suggest(word string, words []string) string {
	if best := finding.Nearest(word, words); best != "" {
		return "did you mean " + best + "?"
	}
	return "write one of: " + strings.Join(words, ", ")
}
