package draw

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pegwright/geom/vec"
)

// Dump returns the sheet as readable text, one item a line, as they were added:
// the same for the same sheet, whatever the machine. Coordinates are rounded as
// the renderers round them; angles are degrees.
func (s *Sheet) Dump() string {
	var b strings.Builder
	fmt.Fprintf(&b, "sheet %s %q %q %s x %s step %d", s.Kind, s.ID, s.Title, s.num(s.W), s.num(s.H), s.Step)
	if s.FullScale {
		b.WriteString(" full-scale")
	}
	b.WriteByte('\n')
	for _, it := range s.Items {
		b.WriteString(s.dumpItem(it))
		b.WriteByte('\n')
	}
	for _, l := range s.Links {
		fmt.Fprintf(&b, "link %s %s -> %q\n", s.pt(l.Rect.Min), s.pt(l.Rect.Max), l.To)
	}
	return b.String()
}

func (s *Sheet) num(x float64) string { return Number(x, s.Places()) }

func (s *Sheet) pt(p vec.P) string { return s.num(p.X) + "," + s.num(p.Y) }

func (s *Sheet) loop(pts []vec.P) string {
	b := make([]byte, 0, 20*len(pts))
	for i, p := range pts {
		if i > 0 {
			b = append(b, ' ')
		}
		b = append(AppendNumber(b, p.X, s.Places()), ',')
		b = AppendNumber(b, p.Y, s.Places())
	}
	return string(b)
}

func degrees(rad float64) string { return Number(rad*180/math.Pi, 4) }

func (s *Sheet) dumpItem(it Item) string {
	m := it.Head()
	var b strings.Builder
	b.WriteString(string(m.Class))
	for _, f := range [][2]string{{"owner", m.Owner}, {"layer", m.Layer}, {"mark", m.Mark}} {
		if f[1] != "" {
			b.WriteString(" " + f[0] + "=" + strconv.Quote(f[1]))
		}
	}
	if m.Pen != nil {
		fmt.Fprintf(&b, " pen=%s/%v/%s", Number(m.Pen.Width, 3), m.Pen.Dash, Number(m.Pen.Grey, 3))
	}
	b.WriteByte(' ')
	b.WriteString(s.dumpShape(it))
	return b.String()
}

func (s *Sheet) dumpShape(it Item) string {
	switch t := it.(type) {
	case *Path:
		return s.dumpPath(t)
	case *Circle:
		return fmt.Sprintf("circle %s r %s", s.pt(t.C), s.num(t.R)) + tone(t.Filled, t.Grey)
	case *Arc:
		return fmt.Sprintf("arc %s r %s %s..%s", s.pt(t.C), s.num(t.R), degrees(t.From), degrees(t.To))
	case *Ellipse:
		return fmt.Sprintf("ellipse %s r %s %s rot %s %s..%s", s.pt(t.C), s.num(t.RX), s.num(t.RY),
			degrees(t.Rot), degrees(t.From), degrees(t.To)) + tone(t.Filled, t.Grey)
	case *Text:
		return s.dumpText(t)
	}
	return fmt.Sprintf("unknown %T", it)
}

func (s *Sheet) dumpPath(t *Path) string {
	kind := "path "
	if t.Closed {
		kind = "loop "
	}
	out := kind + s.loop(t.Pts)
	for _, h := range t.Holes {
		out += " hole " + s.loop(h)
	}
	return out + tone(t.Filled, t.Grey)
}

func (s *Sheet) dumpText(t *Text) string {
	out := "text " + s.pt(t.At) + " h " + s.num(t.Height) + " " + [...]string{"start", "middle", "end"}[max(0, min(int(t.Anchor), 2))]
	if t.Rot != 0 {
		out += " rot " + degrees(t.Rot)
	}
	if t.Bold {
		out += " bold"
	}
	if t.Halo {
		out += " halo"
	}
	return out + " " + strconv.Quote(t.S)
}

func tone(filled bool, grey float64) string {
	if !filled {
		return ""
	}
	return " grey " + Number(grey, 3)
}
