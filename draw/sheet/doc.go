// Package sheet composes the drawing sheets that are not printed at full scale:
// cover, frame view, lists, joint sheets and drawbore sheets. It reads a solved
// frame and its findings and returns sheets of paper.
//
// It asks geometry by role and by data and knows no kind of joint: a new kind
// needs no change here.
package sheet
