package spec

import "pegwright/geom/finding"

// Piers are the blocks that posts or sills stand on.
type Piers struct {
	At      finding.Pos
	Set     bool
	Size    Section
	Height  Length
	Spacing Length // greatest distance between the middles of piers under a sill
}

// Floor is a floor of joists let into the sills.
type Floor struct {
	At        finding.Pos
	Set       bool
	Joists    Section
	Spacing   Length // greatest distance between the middles of joists
	Direction Text   // "across" the building or "along" it
}

// Loft is a floor of joists between the ties.
type Loft struct {
	At      finding.Pos
	Set     bool
	Joists  Section
	Spacing Length   // greatest distance between the middles of joists
	Top     Length   // tops above the datum; flush with the ties when not set
	Bays    []Number // bays that have it; none: all
}

// Girts are the level timbers between posts. No is true for "girts: no".
type Girts struct {
	At      finding.Pos
	Set     bool
	No      bool
	Heights []Length // tops above the datum
	In      []Text   // "eave walls", "gable walls", or a wall by its name
}

// Braces are the knee braces, in one set or several. No is true for
// "braces: no".
type Braces struct {
	At   finding.Pos
	Set  bool
	No   bool
	Sets []BraceSet
}

// BraceSet is one set of braces of equal legs.
type BraceSet struct {
	At    finding.Pos
	Legs  Section  // along the post first
	In    []Text   // "bents", "gables", "inner bents", "walls", "ridge"; none: bents and walls
	Go    Text     // "up" or "down" from the post; up when not set
	Bents []Number // bents whose posts they stand at; none: all
	Bays  []Number // bays of the eave walls; none: all
	Sides []Text   // walls whose posts they stand at; none: all
}

// Opening is a door or window.
type Opening struct {
	At     finding.Pos
	Name   Text
	Wall   Text // north, south, east or west
	Bay    Number
	Width  Length
	Height Length // top above the datum
	Sill   Length // bottom above the datum; not set for a door
	From   Length // offset from the bay's first post; centred when not set
}
