package font

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

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
	w := wrapper{f: faceOf(bold), width: width, height: height, bold: bold, lines: make([]string, 0, 4)}
	for para := range strings.SplitSeq(text, "\n") {
		w.wrap(spaced(para))
	}
	return w.lines
}

// spaced returns text with a space between words, and none before or behind.
func spaced(text string) string {
	last := ' '
	for _, r := range text {
		if (r <= ' ' || r >= utf8.RuneSelf) && unicode.IsSpace(r) && (r != ' ' || last == ' ') {
			last = ' '
			break
		}
		last = r
	}
	if last == ' ' {
		return strings.Join(strings.Fields(text), " ")
	}
	return text
}

// wrapper breaks paragraphs that are spaced; its lines are parts of them.
type wrapper struct {
	f             *face
	width, height float64
	bold          bool
	lines         []string
}

// wrap breaks one paragraph.
func (w *wrapper) wrap(para string) {
	if units, ok := w.f.plain(para); ok {
		if w.f.mm(units, w.height) <= w.width {
			w.lines = append(w.lines, para)
		} else {
			w.wrapPlain(para)
		}
		return
	}
	from, end := 0, wordEnd(para, 0)
	l := w.first(para, 0, end)
	for end < len(para) {
		at := end + 1
		end = wordEnd(para, at)
		if next := w.with(l, para, at, end); next.before+next.long <= w.width {
			l = next
			continue
		}
		w.lines = append(w.lines, para[from:at-1])
		from, l = at, w.first(para, at, end)
	}
	w.lines = append(w.lines, para[from:])
}

// wrapPlain breaks a paragraph without fractions: a line is as wide as its words
// and the spaces between them.
func (w *wrapper) wrapPlain(para string) {
	space := w.f.wide[' ']
	from, units := 0, -space
	for at := 0; at <= len(para); {
		end := spaceFrom(para, at)
		word, _ := w.f.plain(para[at:end])
		if next := units + space + word; at == from || w.f.mm(next, w.height) <= w.width {
			units = next
		} else {
			w.lines = append(w.lines, para[from:at-1])
			from, units = at, word
		}
		at = end + 1
	}
	w.lines = append(w.lines, para[from:])
}

// measured is a line that grows word by word. Between two words with no fraction
// nothing moves up: what stands before such a gap is not measured again.
type measured struct {
	before float64 // width up to the last such gap
	tail   int     // where in the paragraph stands what is behind it
	long   float64 // the width of that
	whole  bool    // the last word has no fraction
}

// first returns the line of one word, bytes at to end of a paragraph.
func (w *wrapper) first(para string, at, end int) measured {
	_, whole := w.f.plain(para[at:end])
	return measured{tail: at, long: Measure(para[at:end], w.height, w.bold), whole: whole}
}

// with returns the line with one more word.
func (w *wrapper) with(l measured, para string, at, end int) measured {
	word, whole := w.f.plain(para[at:end])
	if l.whole && whole {
		l.before += l.long + w.f.mm(w.f.wide[' '], w.height)
		l.tail, l.long = at, w.f.mm(word, w.height)
		return l
	}
	l.long, l.whole = Measure(para[l.tail:end], w.height, w.bold), whole
	return l
}

// wordEnd returns where the word at byte i ends: a whole number takes its
// fraction along.
func wordEnd(para string, i int) int {
	end := spaceFrom(para, i)
	for end < len(para) && endsInDigit(para[i:end]) {
		next := spaceFrom(para, end+1)
		if _, _, fraction := fractionAt(para[i:next], end+1-i); fraction == 0 {
			break
		}
		end = next
	}
	return end
}

// spaceFrom returns where the first space from byte i on is, or the end.
func spaceFrom(para string, i int) int {
	if n := strings.IndexByte(para[i:], ' '); n >= 0 {
		return i + n
	}
	return len(para)
}
