// Package drawbore composes the sheets that show how a joint is bored and pegged: a
// true section through the peg's axis and the direction of draw with the ways of
// working, then the two holes seen along the peg, enlarged, and what drying leaves
// of the draw. Joints that are cut alike share their sheets.
package drawbore
