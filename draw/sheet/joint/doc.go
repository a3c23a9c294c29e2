// Package joint composes the joint sheets: a joint pulled apart with the table of
// its dimensions, then both halves in third-angle views, the window with the peg
// holes, and the draw at full size. Joints that are cut alike share their sheets.
package joint
