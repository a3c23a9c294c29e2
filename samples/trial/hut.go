package trial

// Hut describes a building of one bay under a gable roof, in inches: 10 ft wide
// and long, 8 ft to the eave. What stands above its building and below is for
// the test to say.
func Hut(above, below string) string {
	return `frame: Hut
units: in
` + above + `
building:
  span: 10'
  bays: [10']
  eave: 8'
  roof: {shape: gable, pitch: 9 in 12}
` + below
}

// TwoSticks describes a post and a level rail that stand beside each other
// without a joint. Its timbers are the last key, so that a test may go on with
// more of them.
const TwoSticks = `frame: Two
units: in
timbers:
  post: {role: post, section: 6 x 6, from: [0, 0, 0], to: [0, 0, 8'], faces: [south, west]}
  rail: {role: tie, section: 6 x 6, from: [0, 6, 48], to: [0, 6', 48], faces: [top, west]}
`
