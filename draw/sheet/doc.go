// Package sheet composes the drawing sheets that are not printed at full scale.
// All puts them in order. Timber sheets and raising sheets have packages of
// their own below it, and the others are here: cover, frame views, plans and
// elevations, lists, joint sheets, drawbore sheets, the permit set. It reads a
// solved frame and its findings and returns sheets of paper.
//
// It asks geometry by role and by data and knows no kind of joint: a new kind
// needs no change here.
package sheet
