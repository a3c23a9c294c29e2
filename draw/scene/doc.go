// Package scene makes ready what drawings show of a frame: timbers and joints
// that are cut alike, drawn once; a joint broken off around its cuts and pulled
// apart along its moves; and the place from which most of it is seen.
//
// It asks geometry by role and by data and knows no kind of joint. Lengths are
// millimetres, in frame axes where nothing else is said.
package scene
