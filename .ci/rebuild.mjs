// Rebuilds every net timber of the models named on the command line from
// blanks, cuts and bores alone, with a general-purpose mesh library, and holds
// the volumes against the models' own and the timbers against each other.
import fs from 'node:fs';
import load from 'manifold-3d';

const { Manifold, Mesh } = await load().then((m) => (m.setup(), m));
const SIDES = 64;

function solid(vertices, loops) {
  const tris = [];
  for (const l of loops) for (let i = 1; i + 1 < l.length; i++) tris.push(l[0], l[i], l[i + 1]);
  return new Manifold(new Mesh({ numProp: 3, vertProperties: new Float32Array(vertices.flat()), triVerts: new Uint32Array(tris) }));
}

const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a) => a.map((x) => x / Math.hypot(...a));

// A bore as a prism of the same cross-section area as the true cylinder.
function bore(h) {
  const d = h.to.map((x, i) => x - h.from[i]);
  const r = (h.diameter / 2) * Math.sqrt((2 * Math.PI) / (SIDES * Math.sin((2 * Math.PI) / SIDES)));
  const u = unit(d);
  const e = unit(cross(Math.abs(u[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0], u));
  const f = cross(u, e);
  return Manifold.cylinder(Math.hypot(...d), r, r, SIDES).transform([...e, 0, ...f, 0, ...u, 0, ...h.from, 1]);
}

let bad = 0;
let checks = 0;
const hold = (ok, text) => { checks++; if (!ok) { bad++; console.log('FAIL', text); } };

for (const name of process.argv.slice(2)) {
  const model = JSON.parse(fs.readFileSync(name));
  const placed = [];
  for (const t of model.timbers) {
    let wood = solid(t.blank.vertices, t.blank.faces);
    for (const c of t.cuts) wood = wood.subtract(solid(c.vertices, c.faces.map((f) => f.loop)));
    let net = wood;
    for (const h of t.bores) net = net.subtract(bore(h));
    hold(Math.abs(net.volume() / t.net_volume_mm3 - 1) < 1e-5, `${name} ${t.id}: ${net.volume()} mm3, the model says ${t.net_volume_mm3}`);
    const p = t.placement;
    placed.push([t.id, wood.transform([0, 1, 2, 3].flatMap((c) => [p[0][c], p[1][c], p[2][c], c === 3 ? 1 : 0]))]);
  }
  // Wedges and keys are wood too, given in frame axes.
  for (const j of model.joints) for (const q of j.pieces) placed.push([q.id, solid(q.vertices, q.faces)]);
  for (let i = 0; i < placed.length; i++) {
    for (let k = i + 1; k < placed.length; k++) {
      const [a, b] = [placed[i][1].boundingBox(), placed[k][1].boundingBox()];
      if ([0, 1, 2].some((q) => a.min[q] >= b.max[q] || b.min[q] >= a.max[q])) continue;
      const shared = placed[i][1].intersect(placed[k][1]).volume();
      hold(shared < 50, `${name}: ${placed[i][0]} and ${placed[k][0]} share ${shared} mm3`);
    }
  }
}
hold(checks > 100, 'too few checks: were the models named?');
console.log(`rebuilt elsewhere: ${checks} checks, ${bad} failed`);
process.exit(bad ? 1 : 0);
