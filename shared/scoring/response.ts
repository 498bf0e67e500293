import { inPixels } from '@/shared/exercise/sizes';
import { round2 } from '@/shared/measure/round';
import type { Finding } from '@/shared/schemas/finding';
import type { LineMeasure } from '@/shared/schemas/measure';
import { median } from '@/shared/stats/median';
import { wideOrTight, WHOLE_LINE } from './findings/measured';

/** One specimen of a text: how it was set and what it was set in. `drawnFor` in px, null for a reading face. */
export type SetSpecimen = {
  measure: LineMeasure;
  family: string;
  weight: number;
  drawnFor: { from: number; to: number } | null;
};

/** A hint about two specimens of one text, by their places in the list given. */
export type ResponseHint = { first: number; second: number; finding: Finding };

/**
 * How a setter answered to size, weight and face across specimens of one text. Hints only, each with its source.
 * Specimens of other texts than the first are passed over.
 */
export function responseHints(specimens: SetSpecimen[]): ResponseHint[] {
  return specimens.flatMap((one, first) =>
    specimens.slice(first + 1).flatMap((other, step) => {
      if (one.measure.text !== other.measure.text) return [];
      const finding = hintFor(one, other);
      return finding ? [{ first, second: first + 1 + step, finding }] : [];
    }),
  );
}

function hintFor(one: SetSpecimen, other: SetSpecimen): Finding | null {
  if (one.family !== other.family) return copied(one, other) ? faceHint(one, other) : null;
  if (one.weight !== other.weight)
    return weightHint(one.weight < other.weight ? one : other, one.weight < other.weight ? other : one);
  return sizeHint(pixelsOf(one) < pixelsOf(other) ? one : other, pixelsOf(one) < pixelsOf(other) ? other : one);
}

/** The band is as wide as the response itself, and never under this, 1/1000 em. */
const LEAST_BAND = 12;

function sizeHint(small: SetSpecimen, large: SetSpecimen): Finding | null {
  const from = pixelsOf(small),
    to = pixelsOf(large);
  if (from === to) return null;
  const expected = expectedResponse(to, large.drawnFor) - expectedResponse(from, small.drawnFor);
  const done = addedBy(large) - addedBy(small);
  if (isUnseen(expected, to) || Math.abs(done - expected) <= Math.max(LEAST_BAND, Math.abs(expected))) return null;
  return {
    kind: 'size-response',
    weight: 'hint',
    ...WHOLE_LINE,
    sizes: [small.measure.size, large.measure.size],
    done: round2(done),
    expected: round2(expected),
    value: round2(done - expected),
    unit: 'per-mille',
    direction: wideOrTight(done - expected),
  };
}

function weightHint(light: SetSpecimen, bold: SetSpecimen): Finding | null {
  const shares = [light, bold].map(({ measure: { line } }) =>
    line.reference === null || line.stemGap === null ? null : line.reference / line.stemGap,
  );
  const weights: [number, number] = [light.weight, bold.weight];
  const common = { weight: 'hint', ...WHOLE_LINE, weights, direction: 'tight' } as const;
  if (copied(light, bold)) return { kind: 'weight-copied', ...common, value: 0, unit: 'count' };
  if (shares[0] === null || shares[1] === null || shares[1]! >= 0.85 * shares[0]!) return null;
  return { kind: 'weight-share', ...common, value: round2(shares[1]! / shares[0]!), unit: 'ratio' };
}

function faceHint(one: SetSpecimen, other: SetSpecimen): Finding {
  return {
    kind: 'face-copied',
    weight: 'hint',
    ...WHOLE_LINE,
    families: [one.family, other.family],
    value: 0,
    unit: 'count',
    direction: null,
  };
}

/** The same offsets in both, and not all of them too small to matter. */
function copied(one: SetSpecimen, other: SetSpecimen): boolean {
  const a = one.measure.pairs,
    b = other.measure.pairs;
  return (
    a.length === b.length &&
    a.every((pair, i) => pair.offset === b[i]!.offset) &&
    a.some((pair) => Math.abs(pair.offset) >= 10)
  );
}

/** What the setter added to a typical gap. */
function addedBy({ measure }: SetSpecimen): number {
  return measure.pairs.length === 0 ? 0 : median(measure.pairs.map((pair) => pair.tracking + pair.offset));
}

function pixelsOf({ measure }: SetSpecimen): number {
  return inPixels(measure.size);
}

/**
 * How much a face's total spacing is expected to change at a size, 1/1000 em: the product's one rule for size.
 * A reading face is taken as spaced for 16 px (12 pt); −10 for each doubling above, +15 for each halving below. A face
 * drawn for a range of sizes is at home in it and responds beyond its ends; one set through its optical-size axis has
 * responded already, and its range says so.
 * Source: spacing of n, H and o along the optical-size axes of Fraunces, Literata, Newsreader, Roboto Flex and
 * Source Serif 4 (mean −9.5 a doubling from 16 to 60, +16.6 a halving from 16 to 9; faces differ much). A hint, never a
 * fault.
 */
export function expectedResponse(pixels: number, drawnFor: { from: number; to: number } | null): number {
  const { from, to } = drawnFor ?? READING;
  if (pixels > to) return -ABOVE * doublings(pixels / to);
  if (pixels < from) return BELOW * doublings(from / pixels);
  return 0;
}

const READING = { from: 16, to: 16 };
const ABOVE = 10;
const BELOW = 15;

/** Whether a change would be too small to be seen at a size: under a third of a pixel. */
function isUnseen(perMille: number, pixels: number): boolean {
  return (Math.abs(perMille) * pixels) / 1000 < 1 / 3;
}

/**
 * How often 1 must be doubled to reach the ratio; within a doubling the way is straight, so that no logarithm is
 * needed.
 */
function doublings(ratio: number): number {
  let rest = ratio,
    count = 0;
  while (rest >= 2) {
    rest /= 2;
    count += 1;
  }
  return count + rest - 1;
}

/** How one specimen answers to its size and weight. Lengths in 1/1000 em; shares are of the face's own stem gap. */
export type ResponsePoint = {
  pixels: number;
  weight: number;
  family: string;
  /** Not drawn for a range of sizes of its own. */
  readingFace: boolean;
  /**
   * The middle gap of the line's letter pairs as set, and in the face's own spacing; null for a line without letter
   * pairs.
   */
  gap: number | null;
  asBuilt: number | null;
  stemGap: number | null;
  share: number | null;
  shareAsBuilt: number | null;
  /**
   * What was added to a typical gap, and what faces with optical sizes add at this size; the band is as wide as the
   * answer itself.
   */
  added: number;
  expected: number;
  lower: number;
  upper: number;
};

/** The figures of one specimen for the plot. Nothing here is a fault. */
export function responsePoint(specimen: SetSpecimen): ResponsePoint {
  const {
    measure: { line },
    family,
    weight,
    drawnFor,
  } = specimen;
  const pixels = pixelsOf(specimen);
  const expected = expectedResponse(pixels, drawnFor);
  const band = Math.max(LEAST_BAND, Math.abs(expected));
  return {
    pixels,
    weight,
    family,
    readingFace: drawnFor === null,
    gap: line.reference,
    asBuilt: line.asBuilt,
    stemGap: line.stemGap,
    share: shareOf(line.reference, line.stemGap),
    shareAsBuilt: shareOf(line.asBuilt, line.stemGap),
    added: addedBy(specimen),
    expected,
    lower: expected - band,
    upper: expected + band,
  };
}

const shareOf = (gap: number | null, stem: number | null): number | null =>
  gap === null || stem === null || stem <= 0 ? null : gap / stem;
