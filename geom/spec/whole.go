package spec

import (
	"gopkg.in/yaml.v3"

	"pegwright/geom/finding"
)

// whole checks what only the whole description can tell.
func (r *reader) whole(d *Description, root *yaml.Node) {
	if child(root, "building") == nil && child(root, "timbers") == nil {
		r.fault(root, "", "the description has no timbers", "write building, or timbers one by one")
	}
	clean := len(r.faults) == 0
	r.jointIDsOnce(d)
	if child(root, "building") == nil && child(root, "timbers") != nil {
		r.timbersExist(d)
	}
	if clean { // otherwise these would only repeat what was found
		r.timbersHaveSections(d)
		r.bracesHaveLegs(d)
		r.openingsHaveBays(d)
	}
}

func (r *reader) faultOf(at finding.Pos, source, text, mend string) {
	r.faults = append(r.faults, finding.Fault{At: at, Source: shorten(source), Text: text, Mend: mend})
}

func (r *reader) timbersHaveSections(d *Description) {
	for _, t := range d.Timbers {
		if _, ok := d.Section(t.Role.S); !ok && !t.Section.Set {
			r.faultOf(t.At, t.ID.S, "this timber has no section", "write its section, or one for "+t.Role.S+" under sections")
		}
	}
}

func (r *reader) bracesHaveLegs(d *Description) {
	if d.Layout.For("brace").Legs.Set {
		return
	}
	for _, set := range d.Building.Braces.Sets {
		if set.Legs.Set {
			return
		}
	}
	for _, t := range d.Timbers {
		if t.Between != nil && !t.Legs.Set {
			r.faultOf(t.At, t.ID.S, "this brace has no legs", `write legs, such as 24" x 24"`)
		}
	}
}

func (r *reader) jointIDsOnce(d *Description) {
	seen := map[string]finding.Pos{}
	for _, j := range d.Joints {
		if !j.ID.Set {
			continue
		}
		if at, twice := seen[j.ID.S]; twice {
			r.faultOf(j.ID.At, j.ID.S, "another joint has this id, on line "+itoa(at.Line), "give each joint an id of its own")
			continue
		}
		seen[j.ID.S] = j.ID.At
	}
}

// timbersExist holds every id to the timbers of the file. Where a building
// generates more, the solver does the same later.
func (r *reader) timbersExist(d *Description) {
	var ids []string
	for _, t := range d.Timbers {
		ids = append(ids, t.ID.S)
	}
	check := func(t Text) {
		if t.Set && !r.ids[t.S] {
			mend := "write the id of one of the timbers"
			if best := finding.Nearest(t.S, ids); best != "" {
				mend = "did you mean " + best + "?"
			}
			r.faultOf(t.At, t.S, "there is no timber with this id", mend)
		}
	}
	for _, t := range d.Timbers {
		for _, b := range t.Between {
			check(b)
		}
	}
	for _, j := range d.Joints {
		check(j.Of)
		check(j.Into)
		if j.Of.Set && j.Of.S == j.Into.S {
			r.faultOf(j.Into.At, j.Into.S, "a timber cannot enter itself", "name the receiving timber")
		}
	}
	for _, m := range d.Measured {
		check(m.ID)
	}
}

func (r *reader) openingsHaveBays(d *Description) {
	for _, o := range d.Building.Openings {
		along := o.Wall.S == "north" || o.Wall.S == "south"
		switch {
		case along && !o.Bay.Set && len(d.Building.Bays) > 1:
			r.faultOf(o.At, o.Name.S, "this opening does not say which bay it is in", "write bay: and a number")
		case along && o.Bay.Set && int(o.Bay.V) > len(d.Building.Bays):
			r.faultOf(o.Bay.At, o.Bay.Src, "the last bay of the building is bay "+itoa(len(d.Building.Bays)), "write the number of one of its bays")
		}
	}
}
