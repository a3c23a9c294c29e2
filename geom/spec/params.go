package spec

import (
	"errors"
	"sort"

	"gopkg.in/yaml.v3"

	"pegwright/geom/finding"
	"pegwright/geom/measure"
)

const maxParams = 500

// errSpoilt stands for a parameter whose fault has been reported already.
var errSpoilt = errors.New("this parameter cannot be used")

// params are the named values of one file. They are evaluated when first
// asked for, so that they may stand in any order.
type params struct {
	list  []*param
	named map[string]*param
}

type state int

const (
	waiting state = iota
	busy          // being evaluated: asked for again, it is a cycle
	done
	spoilt
)

type param struct {
	Param
	state state
	node  *yaml.Node // the value in the file; nil when --set replaced it
}

// readParams reads the mapping of parameters, puts the replacements of --set
// in, and evaluates all of them.
func (r *reader) readParams(n *yaml.Node, sets map[string]string) {
	r.params.named = map[string]*param{}
	r.scope.Lookup = r.lookup
	if n != nil && n.Kind == yaml.MappingNode && len(n.Content)/2 > maxParams {
		r.fault(n.Content[2*maxParams], "", "more than 500 parameters", "write lengths where they are used")
		n = nil
	}
	if n != nil {
		r.pairs(n, "parameters", r.declare)
	}
	r.replace(sets)
	for _, p := range r.params.list {
		r.settle(p)
	}
}

func (r *reader) declare(k, v *yaml.Node) {
	p := &param{node: v, Param: Param{Name: k.Value, Src: v.Value, At: r.pos(v)}}
	if !measure.IsName(k.Value) {
		r.fault(k, k.Value, "this cannot name a parameter", "begin with a letter, go on with letters, figures and _, and use no unit or keyword")
		p.state = spoilt
	} else if _, ok := r.scalar(v, "a length or a number"); !ok {
		p.state = spoilt
	}
	r.params.list = append(r.params.list, p)
	r.params.named[p.Name] = p
}

// replace puts the values of --set in place, in order of name.
func (r *reader) replace(sets map[string]string) {
	names := make([]string, 0, len(sets))
	for name := range sets {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		p := r.params.named[name]
		if p == nil {
			r.setFault(name, sets[name], "the description has no parameter of that name", r.suggestParam(name))
			continue
		}
		p.Src, p.node, p.At = sets[name], nil, finding.Pos{File: "--set"}
		if p.state == spoilt && measure.IsName(name) {
			p.state = waiting
		}
	}
}

func (r *reader) setFault(name, src, text, mend string) {
	at := finding.Pos{File: "--set"}
	r.faults = append(r.faults, finding.Fault{At: at, Source: shorten(name + "=" + src), Text: text, Mend: mend})
}

func (r *reader) suggestParam(name string) string {
	var names []string
	for _, p := range r.params.list {
		names = append(names, p.Name)
	}
	if len(names) == 0 {
		return "name it under parameters, or write a length"
	}
	return suggest(name, names)
}

// lookup is the scope of every expression of the file.
func (r *reader) lookup(name string) (measure.Value, error) {
	p := r.params.named[name]
	if p == nil {
		return measure.Value{}, &measure.Error{Text: "there is no parameter called " + shorten(name), Mend: r.suggestParam(name)}
	}
	if p.state == busy {
		return measure.Value{}, r.cycle(p)
	}
	r.settle(p)
	if p.state == spoilt {
		return measure.Value{}, errSpoilt
	}
	return p.Value, nil
}

// cycle describes a parameter that needs itself; all that take part are then
// spoilt one after another as evaluation unwinds.
func (r *reader) cycle(p *param) *measure.Error {
	p.state = spoilt
	return &measure.Error{Text: "the parameter " + p.Name + " needs itself", Mend: "give one of the parameters in this circle a length of its own"}
}

// settle evaluates one parameter, once.
func (r *reader) settle(p *param) {
	if p.state != waiting {
		return
	}
	p.state = busy
	v, err := measure.Eval(p.Src, r.scope)
	if err == nil {
		p.Value, p.state = v, done
		return
	}
	p.state = spoilt
	var e *measure.Error
	switch {
	case p.node != nil:
		r.misread(p.node, err)
	case !errors.Is(err, errSpoilt) && errors.As(err, &e):
		r.setFault(p.Name, p.Src, e.Text, e.Mend)
	}
}

// written returns the parameters that have a value, in the order written.
func (p params) written() []Param {
	var out []Param
	for _, q := range p.list {
		if q.state == done {
			out = append(out, q.Param)
		}
	}
	return out
}
