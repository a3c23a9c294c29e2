package measure

import "strings"

// Limits of one expression.
const (
	MaxText  = 500 // runes
	MaxDepth = 100 // parentheses within each other
)

// Scope is what an expression may refer to: the unit of bare numbers, and
// named values. Lookup may be nil; its errors are passed on as the Cause of an
// Error, or with the offset filled in when they are an *Error themselves.
type Scope struct {
	Unit   Unit
	Lookup func(name string) (Value, error)
}

// Eval reads an expression: lengths, numbers, names, + - * / and parentheses.
// Bare numbers stay numbers in products and take the scope's unit beside a
// length in a sum. Any error is an *Error.
func Eval(src string, scope Scope) (Value, error) {
	v, err := eval([]rune(src), scope)
	if err != nil {
		return Value{}, err
	}
	return v, nil
}

// ParseLength reads an expression that is a length, in millimetres. A bare
// number takes the scope's unit. Any error is an *Error.
func ParseLength(src string, scope Scope) (float64, error) {
	v, err := evalLength([]rune(src), scope)
	if err != nil {
		return 0, err
	}
	return v, nil
}

// ParseNumber reads an expression that is a plain number. Any error is an
// *Error.
func ParseNumber(src string, scope Scope) (float64, error) {
	v, err := eval([]rune(src), scope)
	if err == nil && v.Dim == Length {
		err = &Error{Text: "a plain number is wanted here, not a length", Mend: "leave the unit away"}
	}
	if err != nil {
		return 0, err
	}
	return v.V, nil
}

// evalLength evaluates an expression that must come to a length, in millimetres.
func evalLength(src []rune, scope Scope) (float64, *Error) {
	v, err := eval(src, scope)
	if err != nil {
		return 0, err
	}
	mm, ok := v.MM(scope.Unit)
	if !ok {
		return 0, &Error{Text: "a length is wanted here, not a ratio of two lengths", Mend: "multiply the ratio by a length"}
	}
	return mm, nil
}

// parser evaluates as it reads: the grammar is sum = product {+|- product},
// product = factor {*|/ factor}, factor = {+|-} (value | name | "(" sum ")").
type parser struct {
	scanner
	scope Scope
	tok   token
	bare  bool // the token before tok is a number without a unit
	depth int
}

// eval evaluates a whole expression: nothing may be left over at its end.
func eval(src []rune, scope Scope) (Value, *Error) {
	if len(src) > MaxText {
		return Value{}, &Error{Offset: MaxText, Text: "the expression is longer than 500 characters", Mend: "name a part of it as a parameter"}
	}
	p := &parser{scanner: scanner{src: src}, scope: scope}
	if err := p.advance(); err != nil {
		return Value{}, err
	}
	if p.tok.kind == tokEnd {
		return Value{}, &Error{Text: "there is no value here", Mend: `write for example 7' 6 1/2" or 2299 mm`}
	}
	v, err := p.sum()
	if err == nil && p.tok.kind != tokEnd {
		err = p.leftover()
	}
	return v, err
}

// leftover tells why what stands at the current token cannot follow what was read.
func (p *parser) leftover() *Error {
	if p.tok.kind == tokClose {
		return &Error{Offset: p.tok.at, Text: "a closing parenthesis without an opening one", Mend: "take it away, or open one before it"}
	}
	if p.tok.kind == tokName && p.bare && !strings.ContainsAny(p.tok.name, "0123456789_") {
		return &Error{Offset: p.tok.at, Text: "there is no unit called " + p.tok.name, Mend: "write in, ft, mm, cm or m after a number, or * before the name of a parameter"}
	}
	return &Error{Offset: p.tok.at, Text: "nothing joins this to what stands before it", Mend: "write + - * or / between two values, feet before inches, and a unit after each number that needs one"}
}

// advance goes on to the next token and keeps whether the one before was bare.
func (p *parser) advance() (err *Error) {
	p.bare = p.tok.kind == tokValue && p.tok.value.Dim == Bare
	p.tok, err = p.next()
	return err
}

func (p *parser) isOp(ops ...rune) bool {
	for _, o := range ops {
		if p.tok.kind == tokOp && p.tok.op == o {
			return true
		}
	}
	return false
}

func (p *parser) sum() (Value, *Error) { return p.chain(p.product, '+', '-') }

func (p *parser) product() (Value, *Error) { return p.chain(p.factor, '*', '/') }

// chain reads operands joined by either operator, from the left.
func (p *parser) chain(operand func() (Value, *Error), a, b rune) (Value, *Error) {
	v, err := operand()
	for err == nil && p.isOp(a, b) {
		op := p.tok
		if err = p.advance(); err != nil {
			break
		}
		var w Value
		if w, err = operand(); err != nil {
			break
		}
		if v, err = join(op.op, v, w, p.scope.Unit); err != nil {
			err.Offset = op.at
		}
	}
	return v, err
}

// factor reads a value with any signs before it.
func (p *parser) factor() (Value, *Error) {
	minus := false
	for p.isOp('+', '-') {
		minus = minus != (p.tok.op == '-')
		if err := p.advance(); err != nil {
			return Value{}, err
		}
	}
	v, err := p.primary()
	if minus {
		v.V = 0 - v.V
	}
	return v, err
}

// primary reads a value, a name or a group in parentheses.
func (p *parser) primary() (Value, *Error) {
	t := p.tok
	switch t.kind {
	case tokValue:
		return t.value, p.advance()
	case tokName:
		v, err := p.lookup(t)
		if err != nil {
			return v, err
		}
		return v, p.advance()
	case tokOpen:
		return p.group()
	case tokEnd:
		return Value{}, &Error{Offset: t.at, Text: "the expression ends too early", Mend: "write what is missing, or take the last sign away"}
	}
	return Value{}, &Error{Offset: t.at, Text: "a value is missing here", Mend: "write a length, a number or a name between the signs"}
}

// group reads a sum in parentheses. Depth is counted, so that no input can use
// up the stack.
func (p *parser) group() (Value, *Error) {
	open := p.tok.at
	if p.depth++; p.depth > MaxDepth {
		return Value{}, &Error{Offset: open, Text: "more than 100 parentheses within each other", Mend: "name a part of the expression as a parameter"}
	}
	if err := p.advance(); err != nil {
		return Value{}, err
	}
	v, err := p.sum()
	if err != nil {
		return v, err
	}
	if p.tok.kind == tokEnd {
		return v, &Error{Offset: open, Text: "this parenthesis is never closed", Mend: "close it with )"}
	}
	if p.tok.kind != tokClose {
		return v, p.leftover()
	}
	p.depth--
	return v, p.advance()
}

// lookup asks the scope what a name stands for, and puts the place of the name
// into what goes wrong.
func (p *parser) lookup(t token) (Value, *Error) {
	if p.scope.Lookup == nil {
		return Value{}, &Error{Offset: t.at, Text: "no value is called " + t.name, Mend: "write a length or a number"}
	}
	v, err := p.scope.Lookup(t.name)
	if err == nil {
		return v, nil
	}
	if e, ok := err.(*Error); ok {
		own := *e
		own.Offset = t.at
		return v, &own
	}
	return v, &Error{Offset: t.at, Text: err.Error(), Cause: err}
}
