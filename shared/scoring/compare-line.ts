import { ENGINE } from '@/shared/measure/engine';
import { MeasureError } from '@/shared/measure-error';
import { round2 } from '@/shared/measure/round';
import type { LineComparison, LineMeasure, PairComparison, ReferenceSpacing } from '@/shared/schemas/measure';
import { median } from '@/shared/stats/median';
import { ENOUGH_PAIRS, letterPairs } from './findings/measured';
import { leastTolerance } from './least-tolerance';
import { comparisonFindings } from './comparison-findings';

/**
 * Compares a line with its references and reports the nearest one, never an average. Nearest is the reference from
 * which the line strays least, pair by pair and measured in that pair's tolerance, after each line's own tightness is
 * taken out; no tolerance is finer than what can be seen at the size; of equals, the one nearer in tightness, then the
 * earlier.
 * @throws MeasureError when a reference does not fit the line.
 */
export function compareLine(line: LineMeasure, given: ReferenceSpacing[]): LineComparison {
  given.forEach((reference) => checkReference(line, reference));
  const least = leastTolerance(line.size);
  const references = given.map((reference) => ({
    ...reference,
    tolerances: reference.tolerances.map((tolerance) => Math.max(least, tolerance)),
  }));
  const all = references.map((reference) => placements(line, reference));
  const distances = all.map(distanceOf);
  const nearest = nearestOf(distances, all);
  if (nearest === null) {
    return {
      engine: ENGINE,
      nearest: null,
      author: null,
      tightness: 0,
      tightnessTolerance: 0,
      pairs: [],
      outside: 0,
      meanRest: 0,
      meantContacts: [],
      distances: [],
      findings: [],
    };
  }
  const placement = all[nearest]!,
    reference = references[nearest]!;
  const pairs = placement.rests.map((rest, index): PairComparison => ({
    index,
    deviation: round2(placement.deviations[index]!),
    rest: round2(rest),
    tolerance: reference.tolerances[index]!,
    within: Math.abs(rest) <= reference.tolerances[index]!,
    reason: reference.reasons[index] ?? null,
    asAnother:
      Math.abs(rest) > reference.tolerances[index]! &&
      all.some(
        (other, which) => which !== nearest && Math.abs(other.rests[index]!) <= references[which]!.tolerances[index]!,
      ),
    referencesDiffer: round2(spread(all.map((other) => other.rests[index]!))),
  }));
  const { findings, outside } = comparisonFindings(line, {
    ...placement,
    reference,
    pairs,
    references: references.length,
  });
  return {
    engine: ENGINE,
    nearest,
    author: reference.author,
    tightness: round2(placement.tightness),
    tightnessTolerance: round2(placement.tightnessTolerance),
    pairs,
    outside,
    meanRest: round2(mean(placement.rests.map(Math.abs))),
    meantContacts: meantContacts(line, placement),
    distances: distances.map(round2),
    findings,
  };
}

/**
 * A pair that touches or crosses here does so in the reference too when the reference sets it no wider, tightness
 * included.
 */
function meantContacts(line: LineMeasure, { deviations }: Placement): number[] {
  return line.pairs
    .filter(({ contact, index }) => (contact === 'touching' || contact === 'crossing') && deviations[index]! >= 0)
    .map(({ index }) => index);
}

function nearestOf(distances: number[], all: Placement[]): number | null {
  let best: number | null = null;
  distances.forEach((distance, index) => {
    const held = best === null ? Infinity : distances[best]!;
    const closer =
      distance < held || (distance === held && Math.abs(all[index]!.tightness) < Math.abs(all[best!]!.tightness));
    if (closer) best = index;
  });
  return best;
}

function spread(values: number[]): number {
  let least = Infinity,
    most = -Infinity;
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return values.length === 0 ? 0 : most - least;
}

function mean(values: number[]): number {
  let sum = 0;
  for (const value of values) sum += value;
  return values.length === 0 ? 0 : sum / values.length;
}

/** A line compared with one reference, in 1/1000 em: deviations[i] = tightness + rests[i]. */
type Placement = {
  deviations: number[];
  tightness: number;
  tightnessTolerance: number;
  rests: number[];
  tolerances: number[];
};

function placements(line: LineMeasure, reference: ReferenceSpacing): Placement {
  const deviations = line.pairs.map(
    (pair, index) => pair.tracking + pair.offset - reference.tracking - reference.offsets[index]!,
  );
  // Only letter pairs show how tightly a line is set. In a short line only tracking does: one pair's own miss is not
  // the line's.
  const between = letterPairs(line).map(({ index }) => deviations[index]!);
  const tightness = between.length < ENOUGH_PAIRS ? trackingOf(line) - reference.tracking : median(between);
  return {
    deviations,
    tightness,
    tightnessTolerance: reference.tolerances.length === 0 ? 0 : median(reference.tolerances),
    rests: deviations.map((deviation) => deviation - tightness),
    tolerances: reference.tolerances,
  };
}

function trackingOf({ pairs }: LineMeasure): number {
  return pairs[0]?.tracking ?? 0;
}

/** Mean over the pairs of |rest| in shares of the pair's tolerance. */
function distanceOf({ rests, tolerances }: Placement): number {
  let sum = 0;
  rests.forEach((rest, index) => {
    sum += Math.abs(rest) / tolerances[index]!;
  });
  return rests.length === 0 ? 0 : sum / rests.length;
}

/** @throws MeasureError when a reference does not fit the line it is held against, quoting the value. */
function checkReference(line: LineMeasure, reference: ReferenceSpacing): void {
  const pairs = line.pairs.length;
  const wrong = (name: string, count: number) =>
    new MeasureError(
      'wrong-length',
      `“${line.text}” has ${pairs} gaps, but the reference by ${reference.author} has ${count} ${name}. Set the reference again for this version of the line.`,
      String(count),
    );
  if (reference.offsets.length !== pairs) throw wrong('offsets', reference.offsets.length);
  if (reference.tolerances.length !== pairs) throw wrong('tolerances', reference.tolerances.length);
  for (const value of [reference.tracking, ...reference.offsets]) {
    if (!Number.isInteger(value))
      throw new MeasureError(
        'bad-offset',
        `The reference by ${reference.author} holds “${value}”. Offsets and tracking are whole thousandths of an em.`,
        String(value),
      );
  }
  for (const value of reference.tolerances) {
    if (!(value >= 0 && value < Infinity))
      throw new MeasureError(
        'bad-tolerance',
        `The reference by ${reference.author} holds the tolerance “${value}”. A tolerance is 0 or more thousandths of an em.`,
        String(value),
      );
  }
}
