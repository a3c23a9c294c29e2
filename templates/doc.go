// Package templates draws the sheets that are laid on wood, all at 1:1: the
// print check page, the hole templates of the near and the far face, the flap
// of the entered face, the templates of the tenon, patterns of pegs and of ends
// that are cut aslant, and story poles.
//
// A template is laid out in the view of one face of a timber, seen from outside
// the timber with its start end to the left: x runs along the timber, y across
// it, and the arris that the paper is laid on is y = 0. Near and far faces so
// become mirror images by themselves. The paper is this view moved, never
// turned or scaled.
package templates
