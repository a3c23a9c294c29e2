// Package sheet composes the drawing sheets that are not printed at full scale.
// All puts them in order. The cover, the views of the whole frame and the lists are
// here, and every other kind has a package of its own below: plans and elevations,
// timber sheets, joint sheets, drawbore sheets, raising sheets, the permit set. It
// reads a solved frame and its findings and returns sheets of paper.
//
// It asks geometry by role and by data and knows no kind of joint: a new kind
// needs no change here.
package sheet
