import { numberText, withUnit } from '@/shared/text/number';

/** A criterion as it is marked: its weight, and the points of each level (percent of the weight), lowest first. */
export type MarkedCriterion = {
  title: string;
  weight: number;
  levels: readonly { title: string; points: number }[];
  level: number | null;
};

export type Total = {
  /** Share of what could be had, 0 to 100, before any late rule; null until every criterion has its level. */
  percent: number | null;
  /** The arithmetic, a line a criterion, and a last line with the sum. */
  arithmetic: string[];
};

/**
 * The total of a proof: each criterion gives the points of its level as a share of its weight;
 * the sum is taken over the sum of weights. Nothing is rounded before the last step.
 * @throws RangeError for a level the criterion does not have, or for weights that sum to nothing.
 */
export function totalOf(criteria: readonly MarkedCriterion[]): Total {
  const weights = criteria.reduce((sum, criterion) => sum + criterion.weight, 0);
  if (!(weights > 0))
    throw new RangeError(`The weights of the criteria sum to ${weights}; they must sum to more than 0.`);
  const shares = criteria.map(shareOf);
  const arithmetic = criteria.map((criterion, index) => lineOf(criterion, shares[index]!));
  if (shares.some((share) => share === null)) return { percent: null, arithmetic };
  const earned = shares.reduce<number>((sum, share, index) => sum + share! * criteria[index]!.weight, 0);
  const percent = (earned / weights) * 100;
  return {
    percent,
    arithmetic: [...arithmetic, `Together ${text(earned)} of ${text(weights)}, which is ${withUnit(percent, '%', 2)}`],
  };
}

/** What the level gives, 0 to 1. */
function shareOf({ title, levels, level }: MarkedCriterion): number | null {
  if (level === null) return null;
  const given = levels[level];
  if (!given) throw new RangeError(`“${title}” has ${levels.length} levels; level ${level + 1} is not among them.`);
  return given.points / 100;
}

function lineOf({ title, weight, levels, level }: MarkedCriterion, share: number | null): string {
  if (level === null || share === null) return `${title}: not marked yet (weight ${text(weight)})`;
  return `${title}: ${levels[level]!.title}, ${withUnit(levels[level]!.points, '%', 2)} of weight ${text(weight)} = ${text(share * weight)}`;
}

const text = (value: number): string => numberText(value, 2);
