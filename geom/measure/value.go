package measure

import "math"

// Dim is what a value measures.
type Dim int

// The dimensions of a value.
const (
	Bare   Dim = iota // a number without a unit: takes the file's unit where a length is wanted
	Ratio             // length over length: never taken for a length
	Length            // millimetres
)

// Value is the result of an expression: a length in millimetres or a number.
type Value struct {
	V   float64
	Dim Dim
}

// Pitch is a roof slope. Rise and Run are as written ("9 in 12") or both 0
// when the slope was written in degrees.
type Pitch struct {
	Degrees   float64 // above level
	Rise, Run float64
}

// MM returns v as a length in millimetres, a bare number taking unit u. It
// fails for a ratio.
func (v Value) MM(u Unit) (float64, bool) {
	switch v.Dim {
	case Length:
		return v.V, true
	case Bare:
		return scale(v.V, u.MM()), true
	}
	return 0, false
}

// Number returns v as a plain number. It fails for a length.
func (v Value) Number() (float64, bool) { return v.V, v.Dim != Length }

// scale returns v units of mm millimetres each. Inches and feet are multiplied
// as tenths, which are whole, so that 6 in is 152.4 mm and not a bit less.
func scale(v, mm float64) float64 {
	if mm == math.Trunc(mm) {
		return float64(v * mm)
	}
	return float64(v*math.Round(mm*10)) / 10
}

// Error is why an expression cannot be read.
type Error struct {
	Offset int    // runes from the start of the expression
	Text   string // what is wrong
	Mend   string // how to mend it; may be empty
	Cause  error  // what a name's lookup returned, if that failed
}

// Error returns what is wrong.
func (e *Error) Error() string { return e.Text }

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Cause }

// join applies an operator to two values. Bare numbers take unit u beside a
// length in a sum. The error has no offset yet.
func join(op rune, a, b Value, u Unit) (Value, *Error) {
	v, err := Value{}, (*Error)(nil)
	switch op {
	case '+', '-':
		v, err = sum(op, a, b, u)
	case '*':
		v, err = product(a, b)
	default:
		v, err = quotient(a, b)
	}
	if err == nil && (math.IsNaN(v.V) || math.Abs(v.V) > largest) {
		err = &Error{Text: "the result is too large for any building", Mend: "check the numbers and their units"}
	}
	return v, err
}

// sum adds or takes away: a bare number beside a length counts in the unit u.
func sum(op rune, a, b Value, u Unit) (Value, *Error) {
	d := max(a.Dim, b.Dim)
	if d == Length {
		x, okA := a.MM(u)
		y, okB := b.MM(u)
		if !okA || !okB {
			return Value{}, &Error{Text: "a ratio of two lengths is not a length", Mend: "add or take away lengths with lengths"}
		}
		a.V, b.V = x, y
	}
	if op == '-' {
		b.V = -b.V
	}
	return Value{a.V + b.V, d}, nil
}

// product multiplies, of which one may be a length.
func product(a, b Value) (Value, *Error) {
	if a.Dim == Length && b.Dim == Length {
		return Value{}, &Error{Text: "a length times a length is an area", Mend: "multiply by a plain number"}
	}
	return Value{float64(a.V * b.V), max(a.Dim, b.Dim)}, nil
}

// nothing is what a divisor is at the least, in millimetres or as a plain
// number: less is what rounding leaves of zero, as of 0.1 + 0.2 - 0.3.
const nothing = 1e-9

// quotient divides: a length by a length is a ratio, and no longer a length.
func quotient(a, b Value) (Value, *Error) {
	if math.Abs(b.V) < nothing {
		return Value{}, &Error{Text: "division by zero", Mend: "divide by something else"}
	}
	v := Value{a.V / b.V, max(a.Dim, b.Dim)}
	if b.Dim == Length {
		if a.Dim != Length {
			return v, &Error{Text: "a number over a length is not a length", Mend: "divide a length by a number, or a length by a length"}
		}
		v.Dim = Ratio
	}
	return v, nil
}
