package wood

import (
	"strings"
	"unicode"

	"pegwright/geom/finding"
)

// Lookup finds a wood by its name or one of its aliases. Case, hyphens, commas
// and doubled spaces do not matter. A name that fits several woods, such as
// "oak" or "pine", is not found; ask Suggest.
func Lookup(name string) (Wood, bool) {
	want := plain(name)
	if want == "" {
		return Wood{}, false
	}
	for _, w := range table {
		for _, n := range w.names() {
			if plain(n) == want || squeezed(n) == squeezed(want) {
				return w, true
			}
		}
	}
	return Wood{}, false
}

// Suggest returns the shown names that the writer of name may have meant,
// nearest first and at most four: first those that contain it as a word, then
// the one at the least edit distance, unless that is more than a third of the
// letters. It returns nil when nothing is near.
func Suggest(name string) []string {
	want := plain(name)
	if want == "" {
		return nil
	}
	var found []string
	for _, w := range table {
		if strings.Contains(" "+plain(w.Name)+" ", " "+want+" ") && len(found) < 4 {
			found = append(found, w.Name)
		}
	}
	if len(found) > 0 {
		return found
	}
	best, least := "", len(want)/3+1
	for _, w := range table {
		for _, n := range w.names() {
			if d := finding.Edits(want, plain(n)); d < least {
				best, least = w.Name, d
			}
		}
	}
	if best == "" {
		return nil
	}
	return []string{best}
}

// SameName reports whether two names mean the same: case, hyphens, commas and
// spaces do not matter.
func SameName(a, b string) bool { return squeezed(a) == squeezed(b) }

// names returns the shown name and then the aliases.
func (w Wood) names() []string { return append([]string{w.Name}, w.Aliases...) }

// plain lowers case and turns hyphens, underscores and commas into single
// spaces.
func plain(s string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(s), func(c rune) bool {
		return c == '-' || c == '_' || c == ',' || unicode.IsSpace(c)
	}), " ")
}

// squeezed is plain without spaces, so that "red cedar" is "redcedar".
func squeezed(s string) string { return strings.ReplaceAll(plain(s), " ", "") }
