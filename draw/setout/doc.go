// Package setout tells what a building is set out from and checked by: the grid
// lines of its bents and walls with the distances between them, the bays in which a
// long building is drawn part by part, the heights of sills, plates and roof, the
// slabs that plans and elevations show, and the diagonals that a crew tapes.
//
// Lengths are millimetres in frame axes.
package setout
