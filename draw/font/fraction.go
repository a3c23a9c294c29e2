package font

import "strings"

// fractionAt reports the fraction that begins at byte i of s: its two figures
// and the byte after it; end is 0 if there is none. Figures about a fraction
// slash (U+2044) are always one. Figures about a plain stroke are one only if
// they can be read as nothing else than a length: an odd number over 2, 4, 8,
// 16, 32 or 64 and less than it, standing alone, with a whole number and a
// space or hyphen before it or an inch mark or "in" after it. So 6 1/2", 1/2 in
// and 4 1/4 are set as fractions; arris 1/2 (of faces 1 and 2) and a date are
// not.
func fractionAt(s string, i int) (num, den string, end int) {
	if i > 0 && isDigit(s[i-1]) {
		return "", "", 0
	}
	num = digitsAt(s, i)
	if num == "" || len(num) > 3 {
		return "", "", 0
	}
	j := i + len(num)
	mark := j
	always := strings.HasPrefix(s[j:], string(slash))
	switch {
	case always:
		mark = j + len(string(slash))
	case strings.HasPrefix(s[j:], "/"):
		mark = j + 1
	default:
		return "", "", 0
	}
	den = digitsAt(s, mark)
	end = mark + len(den)
	if den == "" || len(den) > 3 || !always && !isLength(s, i, num, den, end) {
		return "", "", 0
	}
	return num, den, end
}

// nextFraction finds the first fraction from byte from on, where no figures stand
// before from that could belong to it: its first byte, and what fractionAt tells
// of it.
func nextFraction(s string, from int) (at int, num, den string, end int) {
	for k := from; k < len(s); k++ {
		if s[k] != '/' && s[k] != string(slash)[0] {
			continue
		}
		for at = k; at > from && isDigit(s[at-1]); {
			at--
		}
		if num, den, end = fractionAt(s, at); end > 0 {
			return at, num, den, end
		}
	}
	return 0, "", "", 0
}

// isLength reports whether num/den, bytes i to end of s, can only be a part of
// a length.
func isLength(s string, i int, num, den string, end int) bool {
	n, d := number(num), number(den)
	if num[0] == '0' || den[0] == '0' || n%2 == 0 || n >= d || d > 64 || d&(d-1) != 0 {
		return false
	}
	before, after := s[:i], s[end:]
	if after != "" && (isWord(after[0]) || after[0] == '/' || strings.HasPrefix(after, string(slash))) {
		return false
	}
	if before != "" && (isWord(before[len(before)-1]) || strings.HasSuffix(before, "/") || strings.HasSuffix(before, string(slash))) {
		return false
	}
	return followsNumber(before) || isInch(after)
}

// followsNumber reports whether before ends in a whole number and a space or
// hyphen, the number standing alone.
func followsNumber(before string) bool {
	if !strings.HasSuffix(before, " ") && !strings.HasSuffix(before, "-") {
		return false
	}
	body := before[:len(before)-1]
	rest := strings.TrimRight(body, "0123456789")
	return rest != body && (rest == "" || !isWord(rest[len(rest)-1]) && !strings.HasSuffix(rest, "/"))
}

// isInch reports whether after begins with a mark or word for inches.
func isInch(after string) bool {
	after = strings.TrimPrefix(after, " ")
	for _, m := range []string{`"`, "″", "in"} {
		if rest, ok := strings.CutPrefix(after, m); ok {
			return m != "in" || rest == "" || !isWord(rest[0])
		}
	}
	return false
}

// digitsAt returns the figures from byte i on, four at most.
func digitsAt(s string, i int) string {
	j := i
	for j < len(s) && j < i+4 && isDigit(s[j]) {
		j++
	}
	return s[i:j]
}

func number(s string) int {
	n := 0
	for i := range len(s) {
		n = 10*n + int(s[i]-'0')
	}
	return n
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

func isWord(c byte) bool {
	return isDigit(c) || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_'
}

func endsInDigit(s string) bool { return s != "" && isDigit(s[len(s)-1]) }
