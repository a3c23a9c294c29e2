package spec

import (
	"pegwright/geom/finding"
	"pegwright/geom/measure"

	"gopkg.in/yaml.v3"
)

// Read reads the description src. name is the file's name for messages; sets
// replaces parameters by name, as --set does. It returns every fault it finds,
// each once, in file order, at most a hundred; the description is usable only
// when there are none, and is never nil.
func Read(name string, src []byte, sets map[string]string) (*Description, finding.Faults) {
	d := &Description{}
	r := &reader{file: name, ids: map[string]bool{}}
	if root := r.open(src); root != nil && r.tree(root, 0) {
		r.description(d, root, sets)
	}
	r.faults.Sort()
	if len(r.faults) > maxFaults {
		rest := len(r.faults) - maxFaults
		r.faults = r.faults[:maxFaults]
		last := r.faults[maxFaults-1].At
		r.faultAt(last.Line, last.Col, "", itoa(rest)+" more faults follow", "mend those above first")
	}
	return d, r.faults
}

// description reads the root mapping: units and parameters first, because the
// rest depends on them, then every key by the table.
func (r *reader) description(d *Description, root *yaml.Node, sets map[string]string) {
	r.scope = measure.Scope{Unit: r.unitsFirst(root)}
	r.readParams(child(root, "parameters"), sets)
	d.Params = r.params.written()
	if t := child(root, "timbers"); t != nil && t.Kind == yaml.MappingNode {
		for i := 0; i < len(t.Content); i += 2 {
			r.ids[t.Content[i].Value] = true
		}
	}
	r.mapping(root, "a description", topFields(d), nil)
	if root.Kind == yaml.MappingNode {
		r.whole(d, root)
	}
}

// unitsFirst looks the unit up without reporting anything.
func (r *reader) unitsFirst(root *yaml.Node) measure.Unit {
	n := child(root, "units")
	if n == nil {
		return measure.Inch
	}
	quiet := reader{file: r.file, lines: r.lines}
	u, _ := measure.ParseUnit(quiet.word(n, unitNames()).S)
	return u
}
