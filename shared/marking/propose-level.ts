import type { CriterionBasis } from '@/shared/schemas/criterion';
import type { StoredComparison, StoredMeasure } from '@/shared/schemas/stored-figures';
import { numberText } from '@/shared/text/number';

/** What a level can be proposed from: every basis of a criterion but the marker's eye. */
export type ProposalBasis = Exclude<CriterionBasis, 'judgement'>;

/** One line of a proof as it was measured; `comparison` is null where it has no reference. */
export type MeasuredLine = { measure: StoredMeasure; comparison: StoredComparison | null };

/** A proposal is never applied by itself; it shows its arithmetic. */
export type ProposedLevel = { level: number; arithmetic: string };

/** Nothing is proposed from fewer pairs than this. */
const ENOUGH_PAIRS = 6;

/**
 * Proposes one of `levelCount` levels, lowest 0, from what was measured; null where there is nothing to go by.
 * - distance: pairs within tolerance of the nearest reference over all pairs with one;
 * - evenness: pairs inside what designers usually give them over all pairs that can be judged so, and never above what
 * the   worst pair allows: one outside takes a level, one of twice or three times the usual surprise as many;
 * - contact: from the top, one level down for each pair that touches or crosses and is not meant to.
 * The first two cut the share into equal steps (with four levels: 25, 50, 75%) and need six pairs.
 */
export function proposeLevel(
  basis: ProposalBasis,
  lines: readonly MeasuredLine[],
  levelCount: number,
): ProposedLevel | null {
  if (levelCount < 1) throw new RangeError(`A criterion with ${levelCount} levels cannot be proposed for.`);
  const from: Record<ProposalBasis, () => ProposedLevel | null> = {
    distance: () => fromDistance(lines, levelCount),
    evenness: () => fromUsual(lines, levelCount),
    contact: () => fromContact(lines, levelCount),
  };
  return from[basis]();
}

function fromDistance(lines: readonly MeasuredLine[], levelCount: number): ProposedLevel | null {
  const held = lines.flatMap(({ comparison }) =>
    comparison?.nearest == null ? [] : comparison.pairs.map(({ within }) => within),
  );
  if (held.length < ENOUGH_PAIRS) return null;
  const { level, share } = levelOf(held, levelCount);
  return {
    level,
    arithmetic: `${share.within} of ${held.length} pairs are within tolerance of the nearest reference: ${share.percent}. ${stepsOf(level, levelCount)}`,
  };
}

function fromUsual(lines: readonly MeasuredLine[], levelCount: number): ProposedLevel | null {
  const judged = lines.flatMap(({ measure }) =>
    measure.pairs.flatMap(({ index, outside, surprise }) =>
      outside === null || surprise === null
        ? []
        : [{ name: `${measure.letters[index]}${measure.letters[index + 1]}`, outside, surprise: Math.abs(surprise) }],
    ),
  );
  if (judged.length < ENOUGH_PAIRS) return null;
  const { level, share } = levelOf(
    judged.map(({ outside }) => !outside),
    levelCount,
  );
  const counted = `${share.within} of ${judged.length} pairs are inside what designers usually give them: ${share.percent}. ${stepsOf(level, levelCount)}`;
  const [worst] = judged.filter(({ outside }) => outside).sort((one, other) => other.surprise - one.surprise);
  const most = worst ? Math.max(0, levelCount - 1 - Math.max(1, Math.floor(worst.surprise))) : levelCount - 1;
  if (!worst || level <= most) return { level, arithmetic: counted };
  return { level: most, arithmetic: `${counted} The worst pair, ${worst.name}, allows level ${most + 1} at most.` };
}

function levelOf(held: readonly boolean[], levelCount: number) {
  const within = held.filter(Boolean).length;
  return {
    level: Math.min(levelCount - 1, Math.floor((within * levelCount) / held.length)),
    share: { within, percent: `${numberText((within / held.length) * 100, 1)}%` },
  };
}

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
  `In ${levelCount} equal steps that is step ${level + 1}, ${numberText((level / levelCount) * 100, 1)}% to ${numberText(((level + 1) / levelCount) * 100, 1)}%.`;
