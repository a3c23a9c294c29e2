package measure

import (
	"math"
	"strconv"
)

// How a quantity is read. A number may be whole, decimal, a fraction (1/2), or
// mixed (6 1/2, or 6-1/2 as framers write it). A number with a foot mark may
// be followed by inches, with a space or a tight hyphen between. What could be
// read as a length of feet and inches or as a difference is refused, because
// the wrong guess spoils a timber: 7' - 6", and 12-1/2" after a plus or minus.

// amount is a number as written, with where it ends.
type amount struct {
	v     float64
	whole bool
	end   int
}

// quantity reads a number and its unit, if it has one.
func (s *scanner) quantity() (token, *Error) {
	at := s.pos
	a, err := s.amount(at)
	if err != nil {
		return token{at: at}, err
	}
	mm, end, isFeet := s.unit(a.end)
	if mm == 0 {
		s.pos = a.end
		return token{kind: tokValue, at: at, value: Value{a.v, Bare}}, nil
	}
	v := scale(a.v, mm)
	if isFeet {
		more, stop, err := s.inchesAfter(at, a, end)
		if err != nil {
			return token{at: at}, err
		}
		v, end = v+more, stop
	}
	s.pos = end
	return token{kind: tokValue, at: at, value: Value{v, Length}}, nil
}

// unit reads the unit that may follow a number, spaces allowed before it. It
// returns 0 when there is none.
func (s *scanner) unit(i int) (mm float64, end int, feet bool) {
	j := s.skip(i)
	r := s.at(j)
	switch {
	case inchMark(r):
		return 25.4, j + 1, false
	case feetMark(r) && feetMark(s.at(j+1)):
		return 25.4, j + 2, false
	case feetMark(r):
		return 304.8, j + 1, true
	}
	w := s.word(j)
	if mm, ok := unitWord(w); ok {
		return mm, j + len(w), mm == 304.8
	}
	return 0, i, false
}

// inchesAfter reads the inches that belong to feet ending at offset i, and
// returns them in millimetres with the offset after them.
func (s *scanner) inchesAfter(at int, feet amount, i int) (mm float64, end int, err *Error) {
	j := s.skip(i)
	hyphen := isHyphen(s.at(j))
	spaced := j > i
	if hyphen {
		k := s.skip(j + 1)
		spaced = spaced || k > j+1
		j = k
	}
	if !isDigit(s.at(j)) && s.at(j) != '.' && vulgar(s.at(j)) == 0 {
		return 0, i, nil
	}
	s.last = token{kind: tokOpen} // inches start afresh: 6-1/2" is mixed
	a, err := s.amount(j)
	if err != nil {
		return 0, 0, err
	}
	unit, end, _ := s.unit(a.end)
	if hyphen && s.difference(unit, end) {
		return 0, i, nil
	}
	if hyphen && spaced {
		return 0, 0, &Error{Offset: at, Text: "feet, a hyphen with spaces, and inches can be read in two ways",
			Mend: `write 7'-6" for seven feet six inches, or (7') - 6" to take six inches away`}
	}
	return scale(a.v, 25.4), end, compound(at, j, feet, a, unit)
}

// difference reports whether what follows feet and a hyphen can only be taken
// away from them: 7'-2', 7' - 50 mm, 7' - 2 * 6".
func (s *scanner) difference(unit float64, end int) bool {
	next := s.at(s.skip(end))
	return unit != 0 && unit != 25.4 || unit == 0 && (next == '*' || next == '/')
}

// compound says whether feet and the inches after them make one length.
func compound(at, j int, feet, inch amount, unit float64) *Error {
	switch {
	case unit != 25.4:
		return &Error{Offset: j, Text: "the number after the feet has no inch mark", Mend: `write inches after feet as in 7' 6 1/2"`}
	case !feet.whole:
		return &Error{Offset: at, Text: "feet with a fraction cannot be followed by inches", Mend: `write whole feet, then inches, as in 7' 6"`}
	case inch.v >= 12:
		return &Error{Offset: j, Text: "twelve inches or more after feet", Mend: `carry whole feet, or write the length in inches alone`}
	}
	return nil
}

// amount reads a number without its unit, starting at offset i.
func (s *scanner) amount(i int) (amount, *Error) {
	if v := vulgar(s.at(i)); v != 0 {
		return amount{v: v, end: i + 1}, nil
	}
	a, err := s.decimal(i)
	if err != nil || !a.whole {
		return a, err
	}
	if v := vulgar(s.at(a.end)); v != 0 {
		return amount{v: a.v + v, end: a.end + 1}, nil
	}
	divided := s.last.kind == tokOp && s.last.op == '/'
	if f, ok, err := s.fraction(i); (ok || err != nil) && !divided {
		return f, err
	}
	return s.mixed(i, a)
}

// mixed reads the fraction that may follow the whole number a.
func (s *scanner) mixed(at int, a amount) (amount, *Error) {
	j := s.skip(a.end)
	spaced := j > a.end
	hyphen := isHyphen(s.at(j))
	if hyphen {
		k := s.skip(j + 1)
		spaced = spaced || k > j+1
		j = k
	}
	if !spaced && !hyphen {
		return a, nil
	}
	if v := vulgar(s.at(j)); v != 0 && !hyphen {
		return amount{v: a.v + v, end: j + 1}, nil
	}
	f, ok, err := s.fraction(j)
	if err != nil || !ok {
		return a, err
	}
	if hyphen {
		return s.hyphened(at, a, f, spaced)
	}
	if f.v >= 1 {
		return a, tooLarge(j)
	}
	return amount{v: a.v + f.v, end: f.end}, nil
}

// hyphened decides about a whole number, a hyphen and a fraction.
func (s *scanner) hyphened(at int, a, f amount, spaced bool) (amount, *Error) {
	if s.last.kind == tokOp && (s.last.op == '*' || s.last.op == '/') || f.v >= 1 {
		return a, nil // a difference
	}
	if spaced || s.last.kind == tokOp && s.last.at != 0 {
		return a, &Error{Offset: at, Text: "a whole number, a hyphen and a fraction can be read in two ways here",
			Mend: `write 12 1/2" for twelve and a half inches, or 12" - 1/2" to take half an inch away`}
	}
	return amount{v: a.v + f.v, end: f.end}, nil
}

func tooLarge(at int) *Error {
	return &Error{Offset: at, Text: "the fraction after a whole number is not less than one", Mend: "write for example 6 1/2"}
}

// fraction reads two whole numbers with a tight stroke between them.
func (s *scanner) fraction(i int) (amount, bool, *Error) {
	j := s.digits(i)
	if j == i || s.at(j) != '/' && s.at(j) != '⁄' {
		return amount{}, false, nil
	}
	k := s.digits(j + 1)
	if k == j+1 || s.at(k) == '.' {
		return amount{}, false, nil
	}
	n, err := s.parse(i, j)
	if err != nil {
		return amount{}, false, err
	}
	d, err := s.parse(j+1, k)
	if err != nil {
		return amount{}, false, err
	}
	if d == 0 {
		return amount{}, false, &Error{Offset: j + 1, Text: "division by zero", Mend: "divide by something else"}
	}
	return amount{v: n / d, end: k}, true, nil
}

func (s *scanner) digits(i int) int {
	for isDigit(s.at(i)) {
		i++
	}
	return i
}

// decimal reads digits with at most one point among them.
func (s *scanner) decimal(i int) (amount, *Error) {
	j := s.digits(i)
	whole := s.at(j) != '.'
	if !whole {
		j = s.digits(j + 1)
		if s.at(j) == '.' || j == i+1 {
			return amount{}, &Error{Offset: i, Text: "this is not a number", Mend: "write digits with at most one decimal point"}
		}
	}
	v, err := s.parse(i, j)
	return amount{v: v, whole: whole, end: j}, err
}

func (s *scanner) parse(i, j int) (float64, *Error) {
	v, err := strconv.ParseFloat(string(s.src[i:j]), 64)
	if err != nil || math.Abs(v) > largest {
		return 0, &Error{Offset: i, Text: "the number is too large for any building", Mend: "check the number and its unit"}
	}
	return v, nil
}
