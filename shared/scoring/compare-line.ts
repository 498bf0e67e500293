import { ENGINE } from '@/shared/measure/engine';
import { round2 } from '@/shared/measure/round';
import type { LineComparison, LineMeasure, PairComparison, ReferenceSpacing } from '@/shared/schemas/measure';
import { checkReference } from './check-reference';
import { comparisonFindings } from './comparison-findings';
import { distanceOf, placements, type Placement } from './placements';

/**
 * Lays a line as set beside its references and compares it with the nearest one, never with an average.
 * Nearest is the reference from which the line strays least, pair by pair and measured in that pair's tolerance,
 * after each line's own tightness is taken out; of equals, the one nearer in tightness, then the earlier.
 * @throws MeasureError when a reference does not fit the line.
 */
export function compareLine(line: LineMeasure, references: ReferenceSpacing[]): LineComparison {
  references.forEach((reference) => checkReference(line, reference));
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
  const { findings, outside } = comparisonFindings(line, { ...placement, reference, pairs, others: references.length });
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

/** A pair that touches or crosses here does so in the reference too when the reference sets it no wider, tightness included. */
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
