import { BOTTOM, heightOfBand, STEP } from '@/shared/outline/edge-profile';
import { inkRuns } from '@/shared/geometry/ink-runs';
import type { Contours } from '@/shared/outline/flatten';
import { REACH } from './area';
import { pairOf } from './at-total';
import type { PreparedLine } from './prepared-line';

/** Points x0 y0 x1 y1 … in 1/1000 em, y up, x from the origin of the left letter. */
export type Polyline = number[];

/** Both edges of one gap for drawing, as the outline has them (`drawn`, broken where there is no ink) and as they are seen. */
export type PairProfiles = { leftDrawn: Polyline[]; rightDrawn: Polyline[]; leftSeen: Polyline; rightSeen: Polyline };

/** Profiles of a pair at a total, 1/1000 em: what “show me why” draws. */
export function pairProfiles(line: PreparedLine, index: number, total: number): PairProfiles {
  const pair = pairOf(line, index);
  const shift = pair.left.advance + pair.wordSpace + total;
  const bands = [...pair.seen.white.keys()].filter(
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
 * The white between two letters as a closed polygon, for the hatch: between the fine edges, each side to the reach,
 * over the heights where either letter has ink. Slivers by overshoot are left out.
 */
export function pairWhite(line: PreparedLine, index: number, total: number, reach = REACH): Polyline {
  const { left, right, wordSpace } = pairOf(line, index);
  const shift = left.advance + wordSpace + total;
  const bottom = Math.max(BOTTOM, lowest(line, index)),
    top = highest(line, index);
  const leftEdge: Polyline = [],
    rightEdge: Polyline = [];
  const count = Math.max(1, Math.floor((top - bottom) / SLICE));
  const slice = (top - bottom) / count;
  for (let step = 0; step <= count; step += 1) {
    const y = bottom + Math.min(step * slice, top - bottom);
    const lean = line.face.slant * y;
    const inner = Math.min(Math.max(y, bottom + 0.01), top - 0.01);
    const from = Math.max(
      rightmost(left.upright.contours, inner),
      left.upright.box.right - (isSliver(left.box, inner, bottom, top) ? 0 : reach),
    );
    const to =
      Math.min(
        leftmost(right.upright.contours, inner),
        right.upright.box.left + (isSliver(right.box, inner, bottom, top) ? 0 : reach),
      ) + shift;
    leftEdge.push(from + lean, y);
    rightEdge.push(Math.max(from, to) + lean, y);
  }
  for (let i = rightEdge.length - 2; i >= 0; i -= 2) leftEdge.push(rightEdge[i]!, rightEdge[i + 1]!);
  return leftEdge;
}

/** Height of the slices of the hatch, 1/1000 em. */
const SLICE = 4;

/** Edge profile of one letter of the line and the heights it is taken at, 1/1000 em. */
export function letterProfile(
  line: PreparedLine,
  letter: number,
): { heights: number[]; left: number[]; right: number[]; leftSeen: number[]; rightSeen: number[] } {
  const shape = line.letters[letter]!;
  return {
    heights: [...shape.edge.left.keys()].map(heightOfBand),
    left: [...shape.edge.left],
    right: [...shape.edge.right],
    leftSeen: [...shape.seen.left],
    rightSeen: [...shape.seen.right],
  };
}

/** A round that overshoots its neighbour leaves a sliver over or under it: not drawn behind the neighbour's edge. 1/1000 em. */
const OVERSHOOT = 24;

/** Whether at this height there is nothing but the other letter's overshoot, from `bottom` or up to `top` of the pair. */
function isSliver(box: { bottom: number; top: number }, y: number, bottom: number, top: number): boolean {
  return (y < box.bottom && box.bottom - bottom <= OVERSHOOT) || (y > box.top && top - box.top <= OVERSHOOT);
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

function rightmost(contours: Contours, y: number): number {
  return inkRuns(contours, y).at(-1) ?? -Infinity;
}

function leftmost(contours: Contours, y: number): number {
  return inkRuns(contours, y)[0] ?? Infinity;
}
