import { describe, expect, it } from 'vitest';
import { clearance } from '@/shared/measure/clearance';
import { letterShape } from '@/shared/measure/letter-shape';
import { heightsUpTo } from '@/shared/outline/edge-profile';
import { parsePath } from '@/shared/outline/parse-path';
import { registryFace, type RegistryFace } from '@/tests/fixtures/registry-face';
import { seededRandom } from '@/tests/bench/agreement/random';

/** Among them dots, accents, marks in two parts, and letters inside others' bays. */
const CLUSTERS = [...'AVTLYOQCHKXZgijfyrnmaeçéïöåñÜØÅß%@&;?"(/7'];
const FACES = ['lato-400', 'playfair-display-400', 'eb-garamond-700', 'oswald-400'];
const PAIRS_A_FACE = 125;

describe.each(FACES)('clearance in %s', (name) => {
  it(`equals the nearest of finely laid points within 0.5/1000 em on ${PAIRS_A_FACE} pairs`, async () => {
    const face = await registryFace(name);
    const random = seededRandom(11);
    const clusters = CLUSTERS.filter((cluster) => face.letter(cluster).path !== '');
    const pick = () => clusters[Math.floor(random() * clusters.length)]!;
    const points = new Map(clusters.map((cluster) => [cluster, pointsOf(face, cluster)]));
    for (let pair = 0; pair < PAIRS_A_FACE; pair += 1) {
      const left = pick(),
        right = pick(),
        total = Math.floor(random() * 160) - 120;
      const a = letterShape(face.letter(left), { unitsPerEm: face.unitsPerEm, heights: heightsUpTo(740) }),
        b = letterShape(face.letter(right), { unitsPerEm: face.unitsPerEm, heights: heightsUpTo(740) });
      const shift = a.advance + total;
      const found = clearance(a, b, shift);
      const wanted = nearest(points.get(left)!, points.get(right)!, shift);
      // Where outlines cross, points of both lie near each other; where they do not, distances agree.
      if (found.crossing) {
        expect(found.distance).toBe(0);
        continue;
      }
      expect(
        Math.abs(found.distance - wanted),
        `${left}${right} at ${total}: ${found.distance} against ${wanted}`,
      ).toBeLessThan(0.5);
    }
  });
});

type Points = { x: Float64Array; y: Float64Array };

/** Points about 0.7/1000 em apart along the outline, in order of height. */
function pointsOf(face: RegistryFace, cluster: string): Points {
  const scale = 1000 / face.unitsPerEm;
  const found: [number, number][] = [];
  let start = [0, 0],
    here = [0, 0];
  for (const { letter, numbers } of parsePath(face.letter(cluster).path)) {
    const scaled = numbers.map((value) => value * scale);
    const control =
      letter === 'Z'
        ? [start]
        : Array.from({ length: scaled.length / 2 }, (_, i) => [scaled[2 * i]!, scaled[2 * i + 1]!]);
    if (letter === 'M') {
      start = control[0]!;
      here = start;
      continue;
    }
    const all = [here, ...control];
    const long = all
      .slice(1)
      .reduce((sum, point, i) => sum + Math.hypot(point[0]! - all[i]![0]!, point[1]! - all[i]![1]!), 0);
    const count = Math.max(1, Math.ceil(long / 0.7));
    for (let i = 0; i <= count; i += 1) found.push(pointAt(all, i / count));
    here = control[control.length - 1]!;
  }
  found.sort((a, b) => a[1] - b[1]);
  return { x: Float64Array.from(found, ([x]) => x), y: Float64Array.from(found, ([, y]) => y) };
}

/** De Casteljau: between control points, again and again. */
function pointAt(control: number[][], t: number): [number, number] {
  let points = control;
  while (points.length > 1)
    points = points
      .slice(1)
      .map((point, i) => [
        points[i]![0]! + (point[0]! - points[i]![0]!) * t,
        points[i]![1]! + (point[1]! - points[i]![1]!) * t,
      ]);
  return [points[0]![0]!, points[0]![1]!];
}

/**
 * Every point against every other, passing over those that lie farther off in height or in breadth than the best found.
 */
function nearest(a: Points, b: Points, shift: number): number {
  let best = Infinity,
    first = 0;
  const leftmost = b.x.reduce((least, x) => Math.min(least, x), Infinity) + shift;
  const rightmost = b.x.reduce((most, x) => Math.max(most, x), -Infinity) + shift;
  for (let i = 0; i < a.x.length; i += 1) {
    if (a.x[i]! < leftmost - best || a.x[i]! > rightmost + best) continue;
    while (first < b.y.length && b.y[first]! < a.y[i]! - best) first += 1;
    for (let j = first; j < b.y.length && b.y[j]! <= a.y[i]! + best; j += 1) {
      const dx = b.x[j]! + shift - a.x[i]!,
        dy = b.y[j]! - a.y[i]!;
      if (dx >= best || dx <= -best) continue;
      const distance = Math.sqrt(dx * dx + dy * dy);
      if (distance < best) best = distance;
    }
  }
  return best;
}
