// How long three takes for the bare triangles of the same spheres: npm install three && node three-spheres.mjs
// One line a frequency: frequency, median milliseconds.
import { IcosahedronGeometry } from 'three';

for (const frequency of [2, 4, 8, 16, 32]) {
  const once = () => {
    const start = process.hrtime.bigint();
    new IcosahedronGeometry(1, frequency - 1);
    return Number(process.hrtime.bigint() - start) / 1e6;
  };
  for (let i = 0; i < 200; i++) once();
  const times = Array.from({ length: 200 }, once).sort((a, b) => a - b);
  console.log(`${frequency} ${times[100].toFixed(4)}`);
}
