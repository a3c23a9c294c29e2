package permit

import (
	"fmt"
	"slices"
	"strings"

	"pegwright/draw"
	"pegwright/draw/block"
	"pegwright/draw/scene"
	"pegwright/draw/sheet/plan"
	"pegwright/geom"
)

// Sheets returns the set for a building official: what is to be built and the
// criteria as stated with blanks for the rest, plans and elevations with the
// sizes of the timbers, the foundation as far as it is described, a detail of
// every kind of joint, the joints with their reference values, and the load path
// with blanks for what the designer of record decides. plans are the views of the
// frame and groups its joints as scene.Groups has them. The sheets are numbered P1, P2, … among themselves.
func Sheets(f *geom.Frame, plans *plan.Set, groups []scene.Group) []*draw.Sheet {
	if len(f.Timbers) == 0 {
		return nil
	}
	p := &set{f: f, plans: plans, kinds: jointKinds(groups)}
	p.views()
	p.foundation()
	p.details()
	p.jointTable()
	p.loads()
	return append(p.cover(), p.out...)
}

// set is the permit set in the making. The first sheet is left for the
// cover.
type set struct {
	f     *geom.Frame
	plans *plan.Set
	kinds []jointKind
	out   []*draw.Sheet
	far   []string // drawings of the packet that the set only refers to
}

// next returns the number of the sheet that follows in the set.
func (p *set) next() string { return fmt.Sprintf("P%d", len(p.out)+2) }

// sheet begins the next sheet of the set.
func (p *set) sheet(id, title, shows, scale, note string) (*draw.Sheet, block.Field) {
	t := block.TitleFor(p.f, p.next()+"  "+title, shows, scale)
	t.Note = note
	s, field := block.ForFrame(p.f, "permit", "permit-"+id, t)
	p.add(s, title, shows)
	return s, field
}

// add puts a sheet into the set, under its number there.
func (p *set) add(s *draw.Sheet, title, shows string) {
	s.Title = strings.TrimSuffix(p.next()+" "+title+": "+shows, ": ")
	p.out = append(p.out, s)
}

// furtherPage ends the title of a sheet that goes on from the one before.
const furtherPage = ", page "

// mostBents is how many different bents are copied into the set.
const mostBents = 3

// views draws every plan, wall and section, and the first few of the bents, for
// a reader who asks for sizes: timbers are told by role and section, and what a
// crew tapes is left out.
func (p *set) views() {
	bents := 0
	for _, v := range p.plans.Sized("permit") {
		if v.Bent {
			if bents++; bents > mostBents {
				p.far = append(p.far, v.Title)
				continue
			}
		}
		for _, page := range v.Pages() {
			s := page.Sheet(p.next() + "  " + page.Title)
			p.add(s, page.Title, page.Shows)
		}
	}
}

// jointKind is the joints of one kind that do the same duty.
type jointKind struct {
	name   string
	joints []*geom.Joint
	drawn  scene.Group // with the first of them
}

// jointKinds puts the joints of a kind together, those that must hold tension
// and those without pegs apart, in the order of the first of each. The joint that
// is drawn comes first: one of the largest group that is cut alike.
func jointKinds(groups []scene.Group) []jointKind {
	at := map[string]int{}
	var out []jointKind
	most := map[string]int{}
	for _, g := range groups {
		j := g.First()
		name := j.Kind
		if len(j.Pegs) == 0 {
			name += ", not pegged"
		}
		if j.Tension {
			name += ", in tension"
		}
		i, ok := at[name]
		if !ok {
			i = len(out)
			at[name] = i
			out = append(out, jointKind{name: name})
		}
		if k := &out[i]; len(g.Joints) > most[name] {
			most[name] = len(g.Joints)
			k.joints, k.drawn = slices.Concat(g.Joints, k.joints), g
		} else {
			k.joints = append(k.joints, g.Joints...)
		}
	}
	return out
}
