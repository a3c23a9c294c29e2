// Package plan composes the plans, the bents and walls in elevation, the roof's
// framing plan and the section: grid lines, dimensions between them, heights,
// openings, the diagonals that a crew tapes, and the names of the timbers, at the
// largest customary scale at which all find room. What is long for its paper is
// drawn whole once and then in parts of some bays each.
//
// Lengths are frame millimetres in what is seen, and paper millimetres about it.
package plan
