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
	f := faceOf(bold)
	var out []string
	cur := words[0]
	long, last := Measure(cur, height, bold), simple(cur)
	for _, w := range words[1:] {
		next, whole := cur+" "+w, simple(w)
		var l float64
		if last && whole { // with no fraction at the gap, nothing moves up
			l = long + f.width(" ", height) + f.width(w, height)
		} else {
			l = Measure(next, height, bold)
		}
		if l > width {
			out = append(out, cur)
			next, l = w, Measure(w, height, bold)
		}
		cur, long, last = next, l, whole
	}
	return append(out, cur)
}

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
