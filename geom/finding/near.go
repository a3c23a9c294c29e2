package finding

import "strings"

// Nearest returns the word fewest edits away, "" when that is more than a
// third of the letters and it is not the beginning of one of them alone. The
// plural of a word counts as the word.
func Nearest(word string, words []string) string {
	w := strings.ToLower(strings.NewReplacer("_", " ", "-", " ").Replace(word))
	best, least := "", 0
	for _, c := range words {
		plain := strings.ReplaceAll(c, "-", " ")
		d := min(Edits(w, plain), Edits(w, plain+"s"))
		if d <= max(1, min(len(w), len(plain)+1)/3) && (best == "" || d < least) {
			best, least = c, d
		}
	}
	if best == "" {
		return begun(w, words)
	}
	return best
}

// begun returns the only word that begins with w, "" when none or several do.
func begun(w string, words []string) string {
	best := ""
	for _, c := range words {
		switch {
		case w == "" || !strings.HasPrefix(c, w):
		case best != "":
			return ""
		default:
			best = c
		}
	}
	return best
}

// Edits counts the insertions, deletions, substitutions and swaps of
// neighbours that turn a into b (optimal string alignment, the restricted
// Damerau distance). Words longer than 60 runes are taken as far away.
func Edits(s, t string) int {
	a, b := []rune(s), []rune(t)
	if len(a) > 60 || len(b) > 60 {
		return 1000
	}
	before, last := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row := make([]int, len(b)+1)
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := last[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			row[j] = min(last[j]+1, row[j-1]+1, change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}
