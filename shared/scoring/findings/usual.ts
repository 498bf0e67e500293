import { round2 } from '@/shared/measure/round';
import type { Finding, FindingOf } from '@/shared/schemas/finding';
import type { LineMeasure, PairMeasure } from '@/shared/schemas/measure';
import { centreOf } from '@/shared/usual-range/range';
import { spokenOutside, whiteMiddle } from '@/shared/usual-range/spoken';
import { misplacedLetters } from '../misplaced-letters';
import { atPair, ENOUGH_PAIRS, letterPairs, wideOrTight, yardstickOf } from './measured';

/**
 * Pairs outside what type designers usually give them, the greatest surprise first, and letters out of place by the
 * same witness. A pair is named only where the range and the white one sees agree; pairs that running text would join
 * are not.
 */
export function usualFindings(measured: LineMeasure): Finding[] {
  const misplaced = misplacedByUsual(measured);
  const covered = new Set(misplaced.flatMap(({ from, to }) => [from, to]));
  const alone = spokenPairs(measured).filter(({ index }) => !covered.has(index));
  return [
    ...misplaced,
    ...alone
      .sort((one, other) => Math.abs(other.surprise!) - Math.abs(one.surprise!) || one.index - other.index)
      .map((pair) => usualFinding(measured, pair)),
  ];
}

/** The most conspicuous pair, for a headline beside the spread; none where every pair is about as usual. */
export function unusualFindings(measured: LineMeasure): Finding[] {
  if (letterPairs(measured).length < ENOUGH_PAIRS) return [];
  let worst: PairMeasure | null = null;
  for (const pair of judged(measured)) {
    const white = pair.apparentGap - (whiteMiddle(pair, measured.line) ?? pair.apparentGap);
    if (Math.abs(pair.surprise!) < 1 || white * pair.surprise! <= 0) continue;
    if (worst === null || Math.abs(pair.surprise!) > Math.abs(worst.surprise!)) worst = pair;
  }
  if (worst === null) return [];
  return [
    {
      kind: 'stands-out',
      weight: 'fact',
      ...atPair(worst),
      surprise: worst.surprise!,
      value: missOf(measured, worst),
      unit: 'per-mille',
      direction: wideOrTight(worst.surprise!),
      beside: yardstickOf(measured),
    },
  ];
}

/** A line set so tight that contact and equal clearance decide: there the usual range is silent, and this says so. */
export function setTightFindings(measured: LineMeasure): Finding[] {
  const silent = measured.pairs.filter(({ usual, surprise }) => usual !== null && surprise === null);
  if (silent.length === 0) return [];
  const sorted = [...silent].sort((one, other) => one.clearance - other.clearance || one.index - other.index);
  const nearest = sorted[0]!,
    furthest = sorted[sorted.length - 1]!;
  return [
    {
      kind: 'set-tight',
      weight: 'fact',
      ...atPair(nearest),
      furthest: [furthest.left, furthest.right],
      value: round2(furthest.clearance - nearest.clearance),
      unit: 'per-mille',
      direction: null,
    },
  ];
}

/** Letters that running text joins to one shape (common practice): there is no gap to be set between them. */
const JOINED: ReadonlySet<string> = new Set(['fi', 'fl', 'fj']);

function isJoined({ left, right, wordSpace }: Pick<PairMeasure, 'left' | 'right' | 'wordSpace'>): boolean {
  return wordSpace === 0 && JOINED.has(left + right);
}

export function joinedFindings({ pairs }: LineMeasure): Finding[] {
  return pairs.filter(isJoined).map((pair) => ({
    kind: 'joined',
    weight: 'hint',
    ...atPair(pair),
    value: round2(pair.clearance),
    unit: 'per-mille',
    direction: null,
  }));
}

/** Which pairs may be named, in which direction (shared/usual-range/spoken.ts). */
function spokenPairs(measured: LineMeasure): PairMeasure[] {
  return judged(measured).filter((pair) => spokenOutside(pair, measured.line) !== null);
}

function judged({ pairs }: LineMeasure): PairMeasure[] {
  return pairs.filter((pair) => pair.usual !== null && pair.surprise !== null && !isJoined(pair));
}

/** How far a pair is beyond the centre of its range, the line's tightness taken out; above 0 wider. */
function missOf({ line }: LineMeasure, pair: PairMeasure): number {
  return round2(pair.total - line.tightness - centreOf(pair.usual!));
}

function usualFinding(measured: LineMeasure, pair: PairMeasure): FindingOf<'usual'> {
  const usual = pair.usual!;
  return {
    kind: 'usual',
    weight: 'hint',
    ...atPair(pair),
    surprise: pair.surprise!,
    own: round2(pair.total - measured.line.tightness),
    half: [usual.halfLow, usual.halfHigh],
    leftAlone: usual.leftAlone,
    lineTightness: measured.line.tightness,
    size: measured.size,
    value: missOf(measured, pair),
    unit: 'per-mille',
    direction: wideOrTight(pair.surprise!),
    beside: yardstickOf(measured),
  };
}

/**
 * From this surprise on a gap may be half of a letter out of place; one of its two gaps must be spoken of by itself.
 */
const NOTABLE = 0.75;

/** Two gaps that err in opposite ways, one of them outside, and a shift of the letter between that settles both. */
function misplacedByUsual(measured: LineMeasure): FindingOf<'misplaced'>[] {
  const spoken = new Set(spokenPairs(measured).map(({ index }) => index));
  const known = new Set(judged(measured).map(({ index }) => index));
  const gaps = measured.pairs.map((pair) => {
    if (!known.has(pair.index)) return { rest: 0, tolerance: 0, within: true };
    const rest = missOf(measured, pair);
    // A miss of one surprise is what such pairs vary by.
    const tolerance = pair.surprise === 0 ? 0 : Math.abs(rest / pair.surprise!);
    return { rest, tolerance, within: Math.abs(pair.surprise!) < NOTABLE };
  });
  return misplacedLetters(measured.letters.length, gaps)
    .filter(({ letter }) => spoken.has(letter - 1) || spoken.has(letter))
    .map(({ letter, shift }) => ({
      kind: 'misplaced',
      weight: 'hint',
      from: letter - 1,
      to: letter,
      letter,
      name: measured.letters[letter]!,
      value: round2(shift),
      unit: 'per-mille',
      direction: shift > 0 ? 'right' : 'left',
      beside: yardstickOf(measured),
    }));
}
