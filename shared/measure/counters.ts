import { inkRuns, transposed } from '@/shared/geometry/ink-runs';
import { type Contours, signedArea, windingAt } from '@/shared/geometry/polygon';
import type { LetterShape } from './letter-shape';

/**
 * White inside a letter. `closed`: shut in by one contour (o, the eye of e). `open`: between two strokes side by side
 * (n, H) or one over the other (c, E). Where a letter is made of contours that overlap (a bowl pushed into its stem),
 * its closed counter is read in slices like an open one: counted alike, and called open. Outline x0 y0 x1 y1 … in
 * 1/1000 em; area in (1/1000 em)²; height in 1/1000 em.
 */
export type Counter = {
  kind: 'closed' | 'open';
  between: 'all-round' | 'sides' | 'above-and-below';
  outline: number[];
  area: number;
  height: number;
};

/** Height of the slices that open counters are read in, and the least area that is a counter and no notch. */
const SLICE = 10;
const LEAST_AREA = 4000;
/**
 * White between serifs above and below a stem is a bay and no counter: it is less than a quarter as deep as it is high.
 */
const LEAST_DEPTH = 0.25;

/** All counters of a letter: the closed ones, those between sides, those between top and bottom. */
export function counters({ upright: { contours, box }, slant }: LetterShape): Counter[] {
  const closed = contours
    .filter((points) => isHole(contours, points))
    .map((points): Counter => {
      const heights = points.filter((_, i) => i % 2 === 1);
      return {
        kind: 'closed',
        between: 'all-round',
        outline: [...points],
        area: Math.abs(signedArea(points)),
        height: spanOf(heights),
      };
    });
  const holes = contours.filter((points) => isHole(contours, points));
  const level = whiteRuns(contours, box.bottom, box.top).filter(
    ({ at, from, to }) => windingAt(holes, (from + to) / 2, at) === 0,
  );
  const upright = whiteRuns(transposed(contours), box.left, box.right).filter(
    ({ at, from, to }) => !isBetweenSides(contours, at, (from + to) / 2),
  );
  return [
    ...closed,
    ...pieces(level).map((runs) => pieceOf(runs, 'sides')),
    ...pieces(upright).map((runs) => pieceOf(runs, 'above-and-below')),
  ]
    .filter(
      ({ area, height, between }) =>
        area >= LEAST_AREA && (between !== 'above-and-below' || area >= LEAST_DEPTH * height * height),
    )
    .map((counter) => ({ ...counter, outline: leaning(counter.outline, slant) }));
}

/** Counters are read along the slant; their outlines lean with the letter. */
function leaning(outline: number[], slant: number): number[] {
  return slant === 0 ? outline : outline.map((value, i) => (i % 2 === 0 ? value + slant * outline[i + 1]! : value));
}

const widths = new WeakMap<LetterShape, number | null>();

/**
 * The mean width of a letter's white, 1/1000 em: area over height of its counters that are closed or lie between two
 * strokes side by side. Null for a letter that has none (l, r, T).
 */
export function counterWidth(shape: LetterShape): number | null {
  const known = widths.get(shape);
  if (known !== undefined) return known;
  let area = 0,
    height = 0;
  for (const counter of counters(shape)) {
    if (counter.between === 'above-and-below') continue;
    area += counter.area;
    height += counter.height;
  }
  const width = height === 0 ? null : area / height;
  widths.set(shape, width);
  return width;
}

/** A contour with white just inside it and ink outside. */
function isHole(contours: Contours, points: Float64Array): boolean {
  const ax = points[0]!,
    ay = points[1]!,
    bx = points[2]!,
    by = points[3]!;
  const inwards = signedArea(points) > 0 ? 1 : -1;
  const long = Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
  const dx = ((ay - by) / long) * inwards * 0.05,
    dy = ((bx - ax) / long) * inwards * 0.05;
  const x = (ax + bx) / 2,
    y = (ay + by) / 2;
  return windingAt(contours, x + dx, y + dy) === 0 && windingAt(contours, x - dx, y - dy) !== 0;
}

type Run = { at: number; from: number; to: number };

/** White between two runs of ink, on level lines through the middle of each slice. */
function whiteRuns(contours: Contours, bottom: number, top: number): Run[] {
  const runs: Run[] = [];
  for (let at = bottom + SLICE / 2; at < top; at += SLICE) {
    const ink = inkRuns(contours, at);
    for (let i = 1; i + 1 < ink.length; i += 2) runs.push({ at, from: ink[i]!, to: ink[i + 1]! });
  }
  return runs;
}

function isBetweenSides(contours: Contours, x: number, y: number): boolean {
  const ink = inkRuns(contours, y);
  return ink.length > 0 && ink[0]! < x && ink[ink.length - 1]! > x;
}

/** Runs on neighbouring lines that overlap belong to one piece of white. */
function pieces(runs: Run[]): Run[][] {
  const found: Run[][] = [];
  for (const run of runs) {
    const piece = found.find((other) => {
      const last = other[other.length - 1]!;
      return run.at - last.at < SLICE * 1.5 && run.at > last.at && run.from < last.to && run.to > last.from;
    });
    if (piece) piece.push(run);
    else found.push([run]);
  }
  return found;
}

/**
 * Runs as one outline; its ends reach to the edges of the first and last slice, so that it encloses what is counted, to
 * the unit.
 */
function pieceOf(runs: Run[], between: 'sides' | 'above-and-below'): Counter {
  const there: number[] = [],
    back: number[] = [];
  let area = 0;
  for (const { at, from, to } of withEnds(runs)) {
    if (between === 'sides') {
      there.push(from, at);
      back.push(to, at);
    } else {
      there.push(at, from);
      back.push(at, to);
    }
  }
  for (const { from, to } of runs) area += (to - from) * SLICE;
  for (let i = back.length - 2; i >= 0; i -= 2) there.push(back[i]!, back[i + 1]!);
  const height = between === 'sides' ? runs.length * SLICE : spanOf(runs.flatMap(({ from, to }) => [from, to]));
  return { kind: 'open', between, outline: there, area, height };
}

function withEnds(runs: Run[]): Run[] {
  const first = runs[0]!,
    last = runs[runs.length - 1]!;
  return [{ ...first, at: first.at - SLICE / 2 }, ...runs, { ...last, at: last.at + SLICE / 2 }];
}

function spanOf(values: ArrayLike<number>): number {
  let least = Infinity,
    most = -Infinity;
  for (let i = 0; i < values.length; i += 1) {
    least = Math.min(least, values[i]!);
    most = Math.max(most, values[i]!);
  }
  return most - least;
}
