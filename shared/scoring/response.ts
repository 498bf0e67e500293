import type { Finding, LineMeasure } from '@/shared/schemas/measure';
import { median } from '@/shared/stats/median';
import { makeFinding, pixelsPerMille } from './findings/make-finding';
import { expectedResponse, isUnseen } from './size-response';
import { thousandths, typeset } from './words';

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
export const LEAST_BAND = 12;

function sizeHint(small: SetSpecimen, large: SetSpecimen): Finding | null {
  const from = pixelsOf(small),
    to = pixelsOf(large);
  if (from === to) return null;
  const expected = expectedResponse(to, large.drawnFor) - expectedResponse(from, small.drawnFor);
  const done = addedBy(large) - addedBy(small);
  if (isUnseen(expected, to) || Math.abs(done - expected) <= Math.max(LEAST_BAND, Math.abs(expected))) return null;
  const did = done === 0 ? 'is spaced alike' : `was set ${thousandths(done)} ${done > 0 ? 'wider' : 'tighter'}`;
  return makeFinding({
    kind: 'size-response',
    weight: 'hint',
    value: done - expected,
    direction: done > expected ? 'wide' : 'tight',
    sentence: `From ${sizeOf(small)} to ${sizeOf(large)} this line ${did}. Faces with optical sizes are about ${thousandths(expected)} ${expected < 0 ? 'tighter' : 'wider'} there (the mean of five such faces, which differ much).`,
  });
}

function weightHint(light: SetSpecimen, bold: SetSpecimen): Finding | null {
  const shares = [light, bold].map(({ measure: { line } }) =>
    line.reference === null || line.stemGap === null ? null : line.reference / line.stemGap,
  );
  if (copied(light, bold)) {
    return makeFinding({
      kind: 'size-response',
      weight: 'hint',
      value: 0,
      unit: 'count',
      direction: 'tight',
      sentence: `Weights ${light.weight} and ${bold.weight} carry the same offsets. In the bolder weight gaps are narrower, so the same offset takes a larger share of them and the line may crowd (19 families: from 400 to 700 stem gaps fall by about 40 thousandths of an em).`,
    });
  }
  if (shares[0] === null || shares[1] === null || shares[1]! >= 0.85 * shares[0]!) return null;
  return makeFinding({
    kind: 'size-response',
    weight: 'hint',
    value: shares[1]! / shares[0]!,
    unit: 'ratio',
    direction: 'tight',
    sentence: `As a share of the stem gap, weight ${bold.weight} is set clearly tighter than weight ${light.weight}. A bold usually keeps its share, since gap and counter shrink together.`,
  });
}

function faceHint(one: SetSpecimen, other: SetSpecimen): Finding {
  return makeFinding({
    kind: 'size-response',
    weight: 'hint',
    value: 0,
    unit: 'count',
    sentence: `${one.family} and ${other.family} carry the same offsets. What is decided in one face rarely suits another (common practice).`,
  });
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
export function addedBy({ measure }: SetSpecimen): number {
  return measure.pairs.length === 0 ? 0 : median(measure.pairs.map((pair) => pair.tracking + pair.offset));
}

export function pixelsOf({ measure }: SetSpecimen): number {
  return pixelsPerMille(measure) * 1000;
}

function sizeOf({ measure: { size } }: SetSpecimen): string {
  return `${typeset(size.value, 1)}\u2009${size.unit}`;
}
