import { BOTTOM, heightOfBand, STEP } from '@/shared/outline/edge-profile';
import { countedBands, heightCounted, mostCounted } from './apparent-gap';
import { pairOf } from './at-total';
import type { PreparedLine } from './prepared-line';

/** Points x0 y0 x1 y1 … in 1/1000 em, y up, x from the origin of the left letter. */
export type Polyline = number[];

/**
 * Both edges of one gap for drawing, as the outline has them (`drawn`, broken where there is no ink) and as they are
 * seen.
 */
export type PairProfiles = { leftDrawn: Polyline[]; rightDrawn: Polyline[]; leftSeen: Polyline; rightSeen: Polyline };

/** Profiles of a pair at a total, 1/1000 em: what “show me why” draws. */
export function pairProfiles(line: PreparedLine, index: number, total: number): PairProfiles {
  const pair = pairOf(line, index);
  const shift = pair.left.advance + pair.wordSpace + total;
  const bands = [...pair.left.edge.right.keys()].filter(
    (band) => heightOfBand(band) > lowest(line, index) && heightOfBand(band) < highest(line, index),
  );
  const lean = (band: number) => line.face.slant * heightOfBand(band);
  const leftX = (white: Float64Array) => (band: number) => pair.left.advance - white[band]! + lean(band);
  const rightX = (white: Float64Array) => (band: number) => shift + white[band]! + lean(band);
  return {
    leftDrawn: unbroken(bands, leftX(pair.left.edge.right)),
    rightDrawn: unbroken(bands, rightX(pair.right.edge.left)),
    leftSeen: bands.flatMap((band) => [leftX(pair.left.seen.right)(band), heightOfBand(band)]),
    rightSeen: bands.flatMap((band) => [rightX(pair.right.seen.left)(band), heightOfBand(band)]),
  };
}

/**
 * The white between two letters as a closed polygon, for the hatch: exactly what the apparent gap counts, from the
 * baseline to the top of d. Where a height is deeper than counts, the counted part is in the middle of the gap, moved
 * towards each letter by as much as that letter recedes; where it has less than the least, a strip of the least is
 * drawn.
 */
export function pairWhite(line: PreparedLine, index: number, total: number): Polyline {
  const { left, right, wordSpace } = pairOf(line, index);
  const added = total + wordSpace;
  const { least } = line.face.depths,
    most = mostCounted(line.face.depths, added);
  const bands = countedBands(left);
  const nearestLeft = Math.min(...bands.map((band) => left.seen.right[band]!)),
    nearestRight = Math.min(...bands.map((band) => right.seen.left[band]!));
  const nearest = nearestLeft + nearestRight + added;
  const leftEdge: Polyline = [],
    rightEdge: Polyline = [];
  const add = (y: number, from: number, to: number) => {
    leftEdge.push(from + left.slant * y, y);
    rightEdge.push(to + left.slant * y, y);
  };
  bands.forEach((band, i) => {
    const backLeft = left.seen.right[band]! - nearestLeft,
      backRight = right.seen.left[band]! - nearestRight;
    const open = nearest + backLeft + backRight;
    const width = Math.min(most, Math.max(least, open));
    const share = width < open && nearest < most ? (most - nearest) / (backLeft + backRight) : 1;
    const drawn = nearest + share * (backLeft + backRight);
    // A strip of the least, or of the most between letters that are apart everywhere, is centred.
    const from = left.advance - nearestLeft - share * backLeft + (drawn - width) / 2;
    const floor = BOTTOM + band * STEP,
      ceiling = floor + heightCounted(left, band);
    if (i === 0) add(floor, from, from + width);
    add((floor + ceiling) / 2, from, from + width);
    if (i === bands.length - 1) add(ceiling, from, from + width);
  });
  for (let i = rightEdge.length - 2; i >= 0; i -= 2) leftEdge.push(rightEdge[i]!, rightEdge[i + 1]!);
  return leftEdge;
}

function lowest(line: PreparedLine, index: number): number {
  return Math.min(pairOf(line, index).left.box.bottom, pairOf(line, index).right.box.bottom);
}

function highest(line: PreparedLine, index: number): number {
  return Math.max(pairOf(line, index).left.box.top, pairOf(line, index).right.box.top);
}

/** Runs of neighbouring bands that have ink, as polylines. */
function unbroken(bands: number[], at: (band: number) => number): Polyline[] {
  const runs: Polyline[] = [];
  let run: Polyline = [];
  for (const band of bands) {
    const x = at(band);
    if (Math.abs(x) < Infinity) {
      run.push(x, heightOfBand(band));
      continue;
    }
    if (run.length > 0) runs.push(run);
    run = [];
  }
  return run.length > 0 ? [...runs, run] : runs;
}
