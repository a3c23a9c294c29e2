package templates

import "fmt"

// dealt is how the words of a template are dealt out: a column of them for each
// page, a strip under the window, and a list for a sheet that is shared.
type dealt struct {
	columns []words
	strip   words
	later   words
	how     dealing
}

// dealing is a way to deal out the words of a template in tiles, the best first.
type dealing int

const (
	onEvery      dealing = iota // all of them on every tile
	listOnLast                  // all but the list on every tile
	goingOn                     // from tile to tile
	listOnSheet                 // all but the list on every tile, the list elsewhere
	goingOnSheet                // all but the list from tile to tile, the list elsewhere
	overflowing                 // they find no room
)

// heading is how many paragraphs head every tile: what it is, of which timber and
// of which joint.
const heading = 3

// servedSheet is what stands in the column when the list is on a sheet that is
// shared by many templates.
func servedSheet(n int) para {
	return para{fmt.Sprintf("Serves %d joints: see sheet “Joints served”.", n), lettering, true}
}

// lastTile is what stands in the column when the list is on the last tile.
func lastTile(n int) para {
	return para{fmt.Sprintf("Serves %d joints: see the last tile.", n), lettering, true}
}

// both returns two runs of words as one.
func both(a, b words) words { return append(a[:len(a):len(a)], b...) }

// deal deals out the words of a template over n pages of a layout, each with
// spare mm left at the foot of its column.
func deal(p plan, l layout, head, list words, spare float64, n int) dealt {
	served := len(p.serves)
	if all := both(head, list); l.room(all, spare) {
		return dealt{columns: []words{all}}
	}
	short := head[:min(heading, len(head))]
	if first, last := both(head, words{lastTile(served)}), both(short, list); n > 1 && len(list) > 0 && l.room(first, spare) && l.room(last, spare) {
		columns := make([]words, n)
		for i := range columns {
			columns[i] = first
		}
		columns[n-1] = last
		return dealt{columns: columns, how: listOnLast}
	}
	// What is said of a hole stands beside it, on every tile.
	if columns, ok := l.goOn(short, both(head[len(short):], list), spare, n); ok && len(p.holes) == 0 {
		return dealt{columns: columns, how: goingOn}
	}
	if column := both(head, words{servedSheet(served)}); len(list) > 0 && l.room(column, spare) {
		return dealt{columns: []words{column}, later: list, how: listOnSheet}
	}
	if len(list) == 0 {
		return dealt{columns: []words{head}, how: overflowing}
	}
	rest := both(head, words{servedSheet(served)})
	if columns, ok := l.goOn(short, rest[len(short):], spare, n); ok && len(p.holes) == 0 {
		return dealt{columns: columns, later: list, how: goingOnSheet}
	}
	return dealt{columns: []words{rest}, later: list, how: overflowing}
}

// goOn parts words that go on from page to page, each headed by short, over n
// pages of the layout, and reports whether they have room there.
func (l layout) goOn(short, rest words, spare float64, n int) (columns []words, ok bool) {
	more := words{{"The words go on on the next tile.", lettering, false}}
	for range n {
		k := len(rest)
		column := both(short, rest)
		for ; k > 0 && !l.room(column, spare); k-- {
			column = both(both(short, rest[:k-1]), more)
		}
		columns, rest = append(columns, column), rest[k:]
	}
	return columns, len(rest) == 0
}

// column returns the words of a page, by its number of so many from 0: that of
// the last of those dealt where there are more pages.
func (d dealt) column(i, pages int) words {
	if n := len(d.columns); n > 1 && i == pages-1 {
		return d.columns[n-1]
	} else if i >= n {
		return d.columns[max(0, n-2)]
	}
	return d.columns[i]
}
