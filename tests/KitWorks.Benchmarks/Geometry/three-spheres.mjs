// How long three takes for the bare triangles of the same spheres: npm ci && node three-spheres.mjs
// One line a frequency: frequency, median milliseconds. Warm: a second of runs first, then the median of two seconds as they come,
// collections of garbage included.
import { IcosahedronGeometry } from 'three';

const once = (frequency) => {
  const start = process.hrtime.bigint();
  new IcosahedronGeometry(1, frequency - 1);
  return Number(process.hrtime.bigint() - start) / 1e6;
};
const forMilliseconds = (span, frequency) => {
  const times = [];
  for (const end = Date.now() + span; Date.now() < end || times.length < 20;) times.push(once(frequency));
  return times.sort((a, b) => a - b);
};

for (const frequency of [2, 4, 8, 16, 32]) {
  forMilliseconds(1000, frequency);
  const times = forMilliseconds(2000, frequency);
  console.log(`${frequency} ${times[times.length >> 1].toFixed(4)}`);
}
