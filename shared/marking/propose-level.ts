import type { StoredComparison, StoredMeasure } from '@/shared/schemas/stored-figures';
import { withUnit } from '@/shared/text/number';

/** What a level can be proposed from: nearness to the references, evenness of the line itself, letters that touch. */
export type ProposalBasis = 'distance' | 'evenness' | 'contact';

/** One line of a proof as it was measured; `comparison` is null where it has no reference. */
export type MeasuredLine = { measure: StoredMeasure; comparison: StoredComparison | null; tolerance: number };

/** A proposal is never applied by itself; it shows how it was reckoned. */
export type ProposedLevel = { level: number; arithmetic: string };

/**
 * Proposes one of `levelCount` levels, lowest 0, from what was measured; null where there is nothing to go by.
 * - distance: pairs within tolerance of the nearest reference over all pairs with one;
 * - evenness: pairs within tolerance of the centre of their own line over all pairs that have one;
 * - contact: from the top, one level down for each pair that touches or crosses and is not meant to.
 * The first two cut the share into equal steps (with four levels: 25, 50, 75 %).
 */
export function proposeLevel(
  basis: ProposalBasis,
  lines: readonly MeasuredLine[],
  levelCount: number,
): ProposedLevel | null {
  if (levelCount < 1) throw new RangeError(`A criterion with ${levelCount} levels cannot be proposed for.`);
  if (basis === 'contact') return fromContact(lines, levelCount);
  const held = basis === 'distance' ? lines.flatMap(heldToReference) : lines.flatMap(heldToLine);
  if (held.length === 0) return null;
  const within = held.filter(Boolean).length;
  const against =
    basis === 'distance'
      ? 'within tolerance of the nearest reference'
      : 'within tolerance of the middle of their own line';
  const level = Math.min(levelCount - 1, Math.floor((within * levelCount) / held.length));
  return {
    level,
    arithmetic: `${within} of ${held.length} pairs are ${against}: ${withUnit((within / held.length) * 100, '%', 1)}. ${stepsOf(level, levelCount)}`,
  };
}

const heldToReference = ({ comparison }: MeasuredLine): boolean[] =>
  comparison?.nearest == null ? [] : comparison.pairs.map(({ within }) => within);

const heldToLine = ({ measure, tolerance }: MeasuredLine): boolean[] =>
  measure.pairs
    .filter((pair) => pair.suggestion !== null)
    .map((pair) => Math.abs(pair.suggestion! - pair.offset) <= tolerance);

function fromContact(lines: readonly MeasuredLine[], levelCount: number): ProposedLevel | null {
  const pairs = lines.flatMap(({ measure, comparison }) =>
    measure.pairs.map(({ index, contact }) => ({ contact, meant: comparison?.meantContacts.includes(index) ?? false })),
  );
  if (pairs.length === 0) return null;
  const touching = pairs.filter(
    ({ contact, meant }) => (contact === 'touching' || contact === 'crossing') && !meant,
  ).length;
  const level = Math.max(0, levelCount - 1 - touching);
  return {
    level,
    arithmetic: `${touching} of ${pairs.length} pairs touch or cross; one level down from the top for each gives level ${level + 1} of ${levelCount}.`,
  };
}

const stepsOf = (level: number, levelCount: number): string =>
  `In ${levelCount} equal steps that is step ${level + 1}, ${withUnit((level / levelCount) * 100, '%', 1)} to ${withUnit(((level + 1) / levelCount) * 100, '%', 1)}.`;
