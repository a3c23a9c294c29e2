package tidy

import (
	"pegwright/draw"
	"pegwright/draw/dim"
	"pegwright/draw/font"
	"pegwright/draw/page"
	"pegwright/geom/vec"
)

// Leaders tells which leaders of names on a sheet run through a word, cross
// another leader or cross a line of a dimension. The thin lines that lead to
// heights in their column are none of these: a leader may cross one. n is the number
// of leaders.
func Leaders(s *draw.Sheet) (n int, faults []string) {
	var leads []*draw.Path
	for _, it := range s.Items {
		l, ok := it.(*draw.Path)
		if !ok || !leader(l) {
			continue
		}
		a, b := l.Pts[0], l.Pts[1]
		for _, o := range leads {
			if dim.Cross(a, b, o.Pts[0], o.Pts[1]) {
				faults = append(faults, s.ID+": the leader of "+l.Owner+" crosses another")
			}
		}
		leads = append(leads, l)
		for _, it := range s.Items {
			switch x := it.(type) {
			case *draw.Text:
				if page.Crosses(a, b, font.Turned(x)) {
					faults = append(faults, s.ID+": the leader of "+l.Owner+" runs through "+x.S)
				}
			case *draw.Path:
				if x.Class == draw.Dimension && x.Owner == "" && x.Mark != "level" && !x.Closed && crossesPath(a, b, x) {
					faults = append(faults, s.ID+": the leader of "+l.Owner+" crosses a dimension")
				}
			}
		}
	}
	return len(leads), faults
}

// leader reports whether a line leads from a name to its timber.
func leader(l *draw.Path) bool {
	return l.Class == draw.Dimension && l.Owner != "" && !l.Closed && len(l.Pts) == 2
}

func crossesPath(a, b vec.P, l *draw.Path) bool {
	for i := 1; i < len(l.Pts); i++ {
		if dim.Cross(a, b, l.Pts[i-1], l.Pts[i]) {
			return true
		}
	}
	return false
}
