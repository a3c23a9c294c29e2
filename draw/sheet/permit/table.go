package permit

import (
	"fmt"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/geom"
	"pegwright/geom/list"
	"pegwright/geom/strength"
)

// noTension stands for joints that the list of capacities does not hold.
const noTension = "no reference value: not a pegged tenon between two cheeks"

// capacitySource says where the equations come from, as far as that is known.
const capacitySource = "Source: yield limit equations for double shear (NDS 2018, Table 12.3.1A, as quoted in public notes) with peg bearing, bending and shear after TFEC 1, which was recalled and not read: each figure is a reference value, to be verified by the designer of record against the standard. Load duration factor 1.0. Drawbore adds nothing."

// jointTable sets the joints with their pegs and reference values, joints of the
// same figures in one row.
func (p *set) jointTable() {
	m := &form{heads: p.tableHeads(), shares: []float64{0.05, 0.20, 0.055, 0.12, 0.145, 0.065, 0.065, 0.12, 0.18}, rows: p.tableRows()}
	wood := ""
	if sameWood(p.f) {
		wood = "All timbers are " + p.f.Timbers[0].Wood.Name + ", all pegs " + p.f.Stock.PegWood.Name + "."
		m.drop(woodColumn)
		m.shares = []float64{0.05, 0.235, 0.05, 0.11, 0.06, 0.06, 0.2, 0.235}
	}
	for n := 1; n == 1 || len(m.rows) > 0; n++ {
		id, title := "joints", "Joints and reference values"
		if n > 1 {
			id, title = fmt.Sprintf("joints-%d", n), title+furtherPage+fmt.Sprint(n)
		}
		s, field := p.sheet(id, title, "tension along the timber that enters", "none", strength.Words)
		field = p.tableFoot(s, field, wood)
		_, m.rows = m.set(s, field)
	}
}

func (p *set) tableHeads() []string {
	t := list.Capacities(p.f)
	unit := ""
	for _, c := range t.Columns {
		if c.Name == "all pegs" {
			unit = c.Unit
		}
	}
	return []string{"detail", "joint", "how many", "pegs in each", "wood", "one peg (" + unit + ")", "all pegs (" + unit + ")", "least end, edge, spacing", "governed by, and status"}
}

// tableFoot sets at the foot of the field what the values are, and returns the
// field above.
func (p *set) tableFoot(s *draw.Sheet, field block.Field, wood string) block.Field {
	lines := []string{
		"Each figure is a " + strength.Words + ".",
		capacitySource,
		"Distances are in peg diameters D, as they are of what tests ask for; where one is short no value is given. None of these joints is claimed to hold a stated load.",
	}
	if wood != "" {
		lines = append([]string{wood}, lines...)
	}
	return block.Boxed(s, field, "VALUES", lines)
}

// woodColumn is the column of the woods, left out where all joints agree.
const woodColumn = 4

// sameWood reports whether all timbers are of one wood.
func sameWood(f *geom.Frame) bool {
	for _, t := range f.Timbers {
		if t.Wood.Name != f.Timbers[0].Wood.Name {
			return false
		}
	}
	return true
}

// tableRows returns the rows in the order of the details.
func (p *set) tableRows() [][]string {
	cells := capacityByJoint(p.f)
	var out [][]string
	for i, k := range p.kinds {
		count := map[string]int{}
		rows := map[string][]string{}
		var order []string
		for _, j := range k.joints {
			row := p.tableRow(i, k, j, cells[j.ID])
			key := strings.Join(row, "|")
			if count[key]++; count[key] == 1 {
				rows[key], order = row, append(order, key)
			}
		}
		for _, key := range order {
			rows[key][2] = fmt.Sprint(count[key])
			out = append(out, rows[key])
		}
	}
	return out
}

// tableRow returns the row of a joint, its count left open.
func (p *set) tableRow(n int, k jointKind, j *geom.Joint, c map[string]string) []string {
	one, all, status := "–", "–", noTension
	if c == nil && len(j.Pegs) == 0 {
		status = "not pegged: no reference value"
	}
	var far []string
	if c != nil {
		for _, d := range []string{"end", "edge", "spacing"} {
			if c[d] != "" {
				far = append(far, d+" "+c[d])
			}
		}
		if status = c["note"]; c["all pegs"] != "" {
			one, all = c["one peg"], c["all pegs"]
			status = "mode " + c["mode"] + ", " + c["what yields"] + "; " + factorWords(c["wet factor"]) + status
		}
	}
	wood := j.Into.Wood.Name
	if j.Of.Wood.Name != wood {
		wood = j.Of.Wood.Name + " into " + wood
	}
	if len(j.Pegs) > 0 {
		wood += ", pegs " + p.f.Stock.PegWood.Name
	}
	return []string{fmt.Sprintf("D%d", n+1), fmt.Sprintf("%s: %s into %s", k.name, j.Of.Role, j.Into.Role), "", pegWords(p.f, j), wood, one, all, strings.Join(far, ", "), status}
}

func factorWords(wet string) string {
	if wet == "" || wet == "1.0" {
		return ""
	}
	return "moisture factor " + wet + "; "
}

// capacityByJoint returns, for every joint in the list of capacities, the cells
// of its row by the names of their columns.
func capacityByJoint(f *geom.Frame) map[string]map[string]string {
	t := list.Capacities(f)
	out := map[string]map[string]string{}
	for _, r := range t.Rows {
		cells := map[string]string{}
		for i, c := range t.Columns {
			cells[c.Name] = r[i]
		}
		for _, id := range strings.Split(cells["ids"], ", ") {
			out[id] = cells
		}
	}
	return out
}
