package spec

// apiary is an invented frame that uses every part of the language once.
const apiary = `frame: Apiary store
units: in
drawn for: the bees
note: |
  two lines
  of note
parameters: {width: 8', length: 10', eave: 6' 8", half: width / 2, n: 3}
wood:
  timbers: {species: eastern white pine, seasoning: green, reduce: {posts: 1/2", brace: 0}, service moisture: 12}
  pegs: {species: northern red oak, seasoning: 8%}
sections: {sill: 6 x 8, posts: 6 x 6, tie: 6 x 7, door post: 4 x 6, brace: 3 x 5}
layout:
  tenon: {thickness: 1 1/2", from reference: 2", length: 4}
  pegs: {bore: 3/4", off shoulder: 1-1/2", along: 2}
  drawbore: auto
  braces: {thickness: 1 1/2", draw: along the brace, drawbore: none, along: centred}
  door posts: {pegs: 1, housing: 0}
building:
  span: width
  bays: [length, half * 2]
  eave: eave
  tie height: eave - 6"
  roof: {shape: gable, pitch: 9 in 12, overhang: 8", seat: step-lap, tail: plumb}
  sills: yes
  girts: {height: [3', 5'], in: eave walls}
  braces: {legs: 24" x 24", in: [bents, walls]}
  openings:
    - {name: store door, wall: south, bay: 1, width: 2' 10", height: 6' 2", from: n}
timbers:
  lintel-9: {role: header, section: 4 x 6, from: [0, -1', 6'], to: [4', -1', 6'], faces: [top, south]}
  brace-9: {role: brace, between: [post-1-north, lintel-9], legs: 20 x 24, off reference: 1}
joints:
  - {kind: mortise and tenon, of: lintel-9, end: end, into: post-1-north, thickness: 2, stub: yes}
measured:
  post-1-north: {foot: 6 1/8" x 5 15/16", top: 6" x 6"}
adjust:
  - {joints: braces into posts of bent 1, drawbore: 3/16"}
  - {timbers: door posts in the south wall, planed: yes}
design: {ground snow load: 50 psf, wind: "by others"}
paper: {sheets: arch c, templates: letter, printed along: 99.6 mm, printed across: 100.2 mm, story poles: yes}
woods:
  - {name: lot pine, specific gravity: 0.36, tangential: 6.5, radial: 2.4, volumetric: 8.6, green moisture: 90, hardwood: no}
stock: {lengths: [8', 12', 16'], prices: {lot pine: 1.85}, kerf: 1/4", billet: 5 x 20, lead screw: 1}
`
