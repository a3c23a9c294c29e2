package spec

import (
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"pegwright/geom/finding"
)

const selectorGrammar = "[all | role | id] [into role | id] [of bent N] [in bay N] [in the south wall]"

const maxNumbered = 1000 // bents and bays that a selector can name

// selecting reads one selector word by word.
type selecting struct {
	r     *reader
	n     *yaml.Node
	words []string
	at    []int // where each word begins, in runes
	last  int   // where the word before begins
	sel   Selector
}

// selector reads who a selector picks. Roles and ids may be joined by "and" or
// a comma.
func (r *reader) selector(n *yaml.Node, s string) Selector {
	p := &selecting{r: r, n: n, sel: Selector{Src: s, At: r.pos(n), Set: true}}
	p.split(strings.ToLower(s))
	for len(p.words) > 0 {
		if !p.clause() {
			return Selector{}
		}
	}
	named := len(p.sel.Roles)+len(p.sel.IDs) > 0
	if named && p.sel.All {
		r.fault(n, s, "all stands alone, without a role or an id", "write "+selectorGrammar)
		return Selector{}
	}
	p.sel.All = !named
	return p.sel
}

// split cuts the text at spaces; a comma is the word "and".
func (p *selecting) split(s string) {
	begun := false
	for i, c := range []rune(s) {
		switch {
		case c == ' ' || c == '\t' || c == '\n':
			begun = false
		case c == ',':
			p.words, p.at = append(p.words, "and"), append(p.at, i)
			begun = false
		case begun:
			p.words[len(p.words)-1] += string(c)
		default:
			p.words, p.at = append(p.words, string(c)), append(p.at, i)
			begun = true
		}
	}
}

// wrong reports the next word, or the last when there is none.
func (p *selecting) wrong(text string) bool {
	at := p.last
	if len(p.at) > 0 {
		at = p.at[0]
	}
	p.r.faultAt(p.n.Line, p.r.column(p.n, at), shorten(p.n.Value), text, "write "+selectorGrammar)
	return false
}

func (p *selecting) drop(n int) {
	p.last = p.at[n-1]
	p.words, p.at = p.words[n:], p.at[n:]
}

// take removes the leading words when they are those given.
func (p *selecting) take(lead ...string) bool {
	if len(p.words) < len(lead) || !slices.Equal(p.words[:len(lead)], lead) {
		return false
	}
	p.drop(len(lead))
	return true
}

// clause reads one part of a selector, by the word that it begins with.
func (p *selecting) clause() bool {
	switch {
	case p.take("all"):
		p.sel.All = true
		return true
	case p.take("into"):
		return p.names(&p.sel.IntoRoles, &p.sel.IntoIDs)
	case p.take("of", "bent"), p.take("in", "bent"):
		return p.count("bent", &p.sel.Bent)
	case p.take("in", "bay"), p.take("of", "bay"):
		return p.count("bay", &p.sel.Bay)
	case p.take("in", "the"), p.take("of", "the"), p.take("in"):
		return p.wall()
	case p.take("of"):
		return p.wrong("after of comes bent or bay, and a number")
	}
	return p.names(&p.sel.Roles, &p.sel.IDs)
}

// wall reads a point of the compass and the word wall.
func (p *selecting) wall() bool {
	if len(p.words) >= 2 && p.words[1] == "wall" && slices.Contains(compass(), p.words[0]) && p.sel.Wall == "" {
		p.sel.Wall = p.words[0]
		p.drop(2)
		return true
	}
	return p.wrong("this does not name a wall")
}

// count reads the number of a bent or a bay, once.
func (p *selecting) count(what string, dst *int) bool {
	if len(p.words) > 0 && *dst == 0 {
		if n, err := strconv.Atoi(p.words[0]); err == nil && n >= 1 && n <= maxNumbered {
			*dst = n
			p.drop(1)
			return true
		}
	}
	return p.wrong("the word " + what + " needs one number, counted from 1")
}

// names reads roles and ids joined by "and".
func (p *selecting) names(roles, ids *[]string) bool {
	if len(*roles)+len(*ids) > 0 {
		return p.wrong("what this selector picks is said twice")
	}
	for {
		if !p.one(roles, ids) {
			return false
		}
		if !p.take("and") {
			return true
		}
	}
}

// one reads a role, of two words where there is such a one, or the id of a
// timber. Ids are told from misspelt roles by being known, or by their hyphen.
func (p *selecting) one(roles, ids *[]string) bool {
	for n := min(2, len(p.words)); n > 0; n-- {
		if role, ok := RoleNamed(strings.Join(p.words[:n], " ")); ok {
			*roles = append(*roles, role)
			p.drop(n)
			return true
		}
	}
	if len(p.words) == 0 {
		return p.wrong("a role or an id is missing")
	}
	w := p.words[0]
	if p.r.ids[w] || strings.Contains(w, "-") && idPattern.MatchString(w) {
		*ids = append(*ids, w)
		p.drop(1)
		return true
	}
	text := "there is no role or timber called " + shorten(w)
	if best := finding.Nearest(w, roleNames()); best != "" {
		text += " (nearest: " + best + ")"
	}
	return p.wrong(text)
}
