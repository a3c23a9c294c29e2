package model

import (
	"pegwright/geom"
	"pegwright/geom/finding"
	"pegwright/geom/solid"
	"pegwright/geom/vec"
)

type timber struct {
	ID        string `json:"id"`
	Role      string `json:"role"`
	Mark      string `json:"mark"`
	Species   string `json:"species"`
	Length    num    `json:"length"`
	Section   [2]num `json:"section"`
	Ideal     [2]num `json:"ideal"`
	Blank     blank  `json:"blank"`
	Placement [3]row `json:"placement"`
	Cuts      []cut  `json:"cuts"`
	Bores     []bore `json:"bores"`
	Volume    num    `json:"net_volume_mm3"`
	Weight    num    `json:"weight_kg"`
}

type blank struct {
	Vertices []point `json:"vertices"`
	Faces    [][]int `json:"faces"`
}

type cut struct {
	Joint    string  `json:"joint"`
	Vertices []point `json:"vertices"`
	Faces    []face  `json:"faces"`
}

type face struct {
	Loop []int  `json:"loop"`
	Role string `json:"role"`
}

type bore struct {
	Joint    string `json:"joint"`
	Peg      string `json:"peg"`
	From     point  `json:"from"`
	To       point  `json:"to"`
	Diameter num    `json:"diameter"`
	Entry    *int   `json:"entry_face"`
	Exit     *int   `json:"exit_face"`
}

// row is a row of a placement: three of a rotation and one of a shift.
type row struct {
	r [3]unit
	t num
}

// MarshalJSON returns the row as a list of four numbers.
func (r row) MarshalJSON() ([]byte, error) {
	out := []byte("[")
	for _, u := range r.r {
		b, err := u.MarshalJSON()
		if err != nil {
			return nil, err
		}
		out = append(append(out, b...), ',')
	}
	b, err := r.t.MarshalJSON()
	return append(append(out, b...), ']'), err
}

func timberEntry(t *geom.Timber) timber {
	green, _ := t.Weight()
	e := timber{
		ID: t.ID, Role: t.Role, Mark: t.Mark, Species: t.Wood.Name,
		Length: num(t.Length), Section: pair(t.Section), Ideal: pair(t.Ideal),
		Blank:     blank{pointsOf(t.Blank.V), loopsOf(t.Blank)},
		Placement: rowsOf(t.Place),
		Cuts:      []cut{}, Bores: []bore{},
		Volume: num(t.NetVolume), Weight: num(green),
	}
	for _, c := range t.Cuts {
		e.Cuts = append(e.Cuts, cut{c.Joint, pointsOf(c.Solid.V), facesOf(c.Solid)})
	}
	for _, b := range t.Bores {
		e.Bores = append(e.Bores, bore{b.Joint, b.Peg, pointOf(b.From), pointOf(b.To), num(b.Diameter), faceNumber(b.Entry), faceNumber(b.Exit)})
	}
	return e
}

func pair(p [2]float64) [2]num { return [2]num{num(p[0]), num(p[1])} }

func facesOf(c solid.Convex) []face {
	r := make([]face, len(c.Faces))
	for i, f := range c.Faces {
		r[i] = face{f.Loop, f.Role}
	}
	return r
}

// faceNumber returns nil for no face.
func faceNumber(n int) *int {
	if n < 1 || n > 4 {
		return nil
	}
	return &n
}

// rowsOf returns the rows of the matrix that carries timber axes to frame axes.
func rowsOf(p vec.Placement) [3]row {
	return [3]row{
		{[3]unit{unit(p.X.X), unit(p.Y.X), unit(p.Z.X)}, num(p.O.X)},
		{[3]unit{unit(p.X.Y), unit(p.Y.Y), unit(p.Z.Y)}, num(p.O.Y)},
		{[3]unit{unit(p.X.Z), unit(p.Y.Z), unit(p.Z.Z)}, num(p.O.Z)},
	}
}

type joint struct {
	ID     string  `json:"id"`
	Kind   string  `json:"kind"`
	Into   string  `json:"into"`
	Of     string  `json:"of"`
	Mark   string  `json:"mark"`
	Moves  []move  `json:"moves"`
	Pieces []piece `json:"pieces"`
	Pegs   []peg   `json:"pegs"`
}

type move struct {
	Direction direction `json:"direction"`
	Distance  num       `json:"distance"`
}

// piece is a wedge or a key as driven home.
type piece struct {
	ID       string  `json:"id"`
	Kind     string  `json:"kind"`
	Vertices []point `json:"vertices"`
	Faces    [][]int `json:"faces"`
	Moves    []move  `json:"moves"`
}

type peg struct {
	ID       string    `json:"id"`
	From     point     `json:"axis_from"`
	To       point     `json:"axis_to"`
	Diameter num       `json:"diameter"`
	Length   num       `json:"length"`
	Offset   num       `json:"offset"`
	Draw     direction `json:"draw_direction"`
	Mortise  point     `json:"mortise_hole"`
	Tenon    point     `json:"tenon_hole"`
}

// jointEntry writes a peg's draw_direction as the direction in which the driven
// peg pulls the entering timber: tenon_hole = mortise_hole - offset times it.
func jointEntry(j *geom.Joint) joint {
	e := joint{ID: j.ID, Kind: j.Kind, Into: timberID(j.Into), Of: timberID(j.Of), Mark: j.Mark,
		Moves: []move{}, Pieces: []piece{}, Pegs: []peg{}}
	for _, m := range j.Moves {
		e.Moves = append(e.Moves, move{directionOf(m.Direction), num(m.Distance)})
	}
	for _, p := range j.Pieces {
		q := piece{p.ID, p.Kind, pointsOf(p.Solid.V), loopsOf(p.Solid), []move{}}
		for _, m := range p.Moves {
			q.Moves = append(q.Moves, move{directionOf(m.Direction), num(m.Distance)})
		}
		e.Pieces = append(e.Pieces, q)
	}
	for _, p := range j.Pegs {
		e.Pegs = append(e.Pegs, peg{
			ID: p.ID, From: pointOf(p.From), To: pointOf(p.To),
			Diameter: num(p.Bore), Length: num(p.Length), Offset: num(p.Offset),
			Draw: directionOf(p.Draw), Mortise: pointOf(p.Mortise), Tenon: pointOf(p.Tenon),
		})
	}
	return e
}

func timberID(t *geom.Timber) string {
	if t == nil {
		return ""
	}
	return t.ID
}

// step is one step of putting the frame together.
type step struct {
	Name      string    `json:"name"`
	Group     string    `json:"group"`
	Move      []string  `json:"move"`
	Onto      []string  `json:"onto"`
	Motion    string    `json:"motion"`
	Direction direction `json:"direction"`
	Legs      []move    `json:"legs"`
	Joints    []string  `json:"joints"`
	Pieces    []string  `json:"pieces"`
	Pegs      []string  `json:"pegs"`
	Drop      num       `json:"drop"`
	Text      string    `json:"text"`
}

func stepEntry(s geom.Step) step {
	e := step{Name: s.Name, Group: s.Group, Move: strings(s.Move), Onto: strings(s.Onto), Motion: string(s.Motion), Direction: directionOf(s.Direction()),
		Legs: []move{}, Joints: strings(s.Joints), Pieces: strings(s.Pieces), Pegs: strings(s.Pegs), Drop: num(s.Drop), Text: s.Text}
	for _, m := range s.Legs {
		e.Legs = append(e.Legs, move{directionOf(m.Direction), num(m.Distance)})
	}
	return e
}

type findingJSON struct {
	Severity string   `json:"severity"`
	Rule     string   `json:"rule"`
	Timbers  []string `json:"timbers"`
	Joints   []string `json:"joints"`
	Line     int      `json:"line"`
	Column   int      `json:"column"`
	Text     string   `json:"text"`
	Mend     string   `json:"mend"`
}

func findingEntry(f finding.Finding) findingJSON {
	return findingJSON{f.Severity.String(), f.Rule, strings(f.Timbers), strings(f.Joints), f.At.Line, f.At.Col, f.Text, f.Mend}
}

// strings returns a list that is never null.
func strings(s []string) []string { return append([]string{}, s...) }
