// Writes three-vertices.csv: the vertices of three's geodesic spheres, to check ours against.
//
//   npm install three && node three-vertices.mjs > three-vertices.csv
//
// Each solid is turned so that one of its corners points up and one next to it leans towards +x. Of the five (icosahedron) or four
// (octahedron) equal sectors around the axis one is written, azimuth from 0 up to 72° or 90°, the axis included. three keeps vertices
// in single precision, so six decimals are what there is.
import { IcosahedronGeometry, OctahedronGeometry, REVISION } from 'three';

const solids = [['icosahedron', IcosahedronGeometry, 5], ['octahedron', OctahedronGeometry, 4]];
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = a => a.map(x => x / Math.sqrt(dot(a, a)));

function vertices(geometry) {
  const seen = new Map();
  const p = geometry.getAttribute('position');
  for (let i = 0; i < p.count; i++) {
    const v = [p.getX(i), p.getY(i), p.getZ(i)];
    seen.set(v.map(x => Math.round(x * 1e5) + 0).join(), v);
  }
  return [...seen.values()];
}

console.log(`# three r${REVISION}: solid, frequency, vertices in all, x, y, z of one sector`);
for (const [name, Geometry, ways] of solids) {
  const corners = vertices(new Geometry(1, 0));
  const z = unit(corners[0]);
  const next = corners.slice(1).reduce((a, b) => (dot(b, z) > dot(a, z) ? b : a));
  const x = unit(next.map((n, i) => n - z[i] * dot(next, z)));
  const y = cross(z, x);
  for (let frequency = 1; frequency <= 12; frequency++) {
    const all = vertices(new Geometry(1, frequency - 1));
    const sector = all.map(v => [dot(v, x), dot(v, y), dot(v, z)]).filter(([a, b]) => {
      if (Math.hypot(a, b) < 1e-5) return true;
      const turn = (Math.atan2(b, a) + 2 * Math.PI + 1e-5) % (2 * Math.PI);
      return turn < 2 * Math.PI / ways;
    });
    sector.sort((a, b) => b[2] - a[2] || a[1] - b[1]);
    for (const v of sector) console.log([name, frequency, all.length, ...v.map(c => (Math.round(c * 1e6) / 1e6 + 0).toString())].join());
  }
}
