package font

import "strings"

// Wrap breaks text into lines that are at most width millimetres wide at the
// given height. It breaks at spaces and at newlines; a word that is too long by
// itself stands on a line of its own, unbroken. A whole number is not parted
// from its fraction, and no word is lost. Empty text gives no lines.
func Wrap(text string, width, height float64) []string {
	return WrapFace(text, width, height, false)
}

// WrapFace is Wrap for the regular or the bold face.
func WrapFace(text string, width, height float64, bold bool) []string {
	if strings.TrimSpace(text) == "" {
		return nil
	}
	var out []string
	for _, para := range strings.Split(text, "\n") {
		out = append(out, wrapParagraph(para, width, height, bold)...)
	}
	return out
}

func wrapParagraph(para string, width, height float64, bold bool) []string {
	if settled(para) && !hasStroke(para) {
		return wrapPlain(para, width, height, bold)
	}
	words := joinFractions(strings.Fields(para))
	if len(words) == 0 {
		return []string{""}
	}
	var out []string
	from := 0 // the first word of the line
	l := measuring(words[0], height, bold)
	for i, w := range words[1:] {
		next := l.with(w)
		if next.wide() <= width {
			l = next
			continue
		}
		out = append(out, strings.Join(words[from:i+1], " "))
		from, l = i+1, measuring(w, height, bold)
	}
	return append(out, strings.Join(words[from:], " "))
}

// measured is a line that grows word by word. Between two words with no fraction
// nothing moves up: what stands before such a gap is not measured again.
type measured struct {
	before float64 // width up to the last such gap
	after  string  // what stands behind it
	long   float64 // the width of that
	whole  bool    // the last word has no fraction
	height float64
	bold   bool
}

func measuring(w string, height float64, bold bool) measured {
	return measured{after: w, long: Measure(w, height, bold), whole: simple(w), height: height, bold: bold}
}

// with returns the line with one more word.
func (l measured) with(w string) measured {
	whole := simple(w)
	if l.whole && whole {
		l.before += l.long + faceOf(l.bold).width(" ", l.height)
		l.after = w
	} else {
		l.after += " " + w
	}
	l.long, l.whole = Measure(l.after, l.height, l.bold), whole
	return l
}

func (l measured) wide() float64 { return l.before + l.long }

// simple reports whether a word is set as it stands, with no fraction in it.
func simple(w string) bool { return settled(w) && !hasStroke(w) }

// wrapPlain wraps text that is set as it stands: a line is as wide as its words
// and the spaces between them.
func wrapPlain(para string, width, height float64, bold bool) []string {
	f := faceOf(bold)
	words := strings.Fields(para)
	if len(words) == 0 {
		return []string{""}
	}
	var out []string
	space, from, units := f.units(" "), 0, f.units(words[0])
	for i, w := range words[1:] {
		more := f.units(w)
		if next := units + space + more; next*height/f.cap <= width {
			units = next
			continue
		}
		out = append(out, strings.Join(words[from:i+1], " "))
		from, units = i+1, more
	}
	return append(out, strings.Join(words[from:], " "))
}

// joinFractions joins a word that ends in a figure to a fraction after it.
func joinFractions(words []string) []string {
	var out []string
	for _, w := range words {
		if n := len(out); n > 0 && endsInDigit(out[n-1]) && startsFraction(out[n-1]+" "+w, len(out[n-1])+1) {
			out[n-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

func startsFraction(s string, i int) bool {
	_, _, end := fractionAt(s, i)
	return end > 0
}
