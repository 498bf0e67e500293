import { quantile } from '@/shared/stats/quantile';
import type { Spacing } from '@/shared/schemas/spacing';
import type { MapLine } from './map';

/** Least, quartiles (type 7) and most of the totals of a pair, in 1/1000 em. */
type TotalSpread = { count: number; least: number; lower: number; median: number; upper: number; most: number };
export type PairTotals = {
  letters: string;
  values: number[];
  spread: TotalSpread | null;
  references: { name: string; value: number }[];
  band: { from: number; to: number } | null;
};
type Reference = { name: string; spacing: Spacing; tolerances: readonly number[] };

/**
 * A class of so many and more is shown by its spread alone: single dots could not be distinguished, and the page stays
 * small.
 */
const mostValues = 40;

/**
 * What a class set at each pair of a line, as totals: built-in + tracking + offset. The band reaches from the lowest to
 * the highest that a reference with its tolerance allows; null without references.
 * @param builtIn per pair, in 1/1000 em.
 */
export function pairTotals(
  line: MapLine,
  builtIn: readonly number[],
  references: readonly Reference[],
  usualTolerance: number,
): { text: string; count: number; pairs: PairTotals[] } {
  const pairs = builtIn.map((given, pair): PairTotals => {
    const totalOf = ({ tracking, offsets }: Spacing) => Math.round((given + tracking + offsets[pair]!) * 10) / 10;
    const values = line.rows.map(totalOf).sort((one, other) => one - other);
    const marks = references.map(({ name, spacing, tolerances }) => ({
      name,
      value: totalOf(spacing),
      tolerance: tolerances[pair] ?? usualTolerance,
    }));
    return {
      letters: `${line.letters[pair] ?? ''}${line.letters[pair + 1] ?? ''}`,
      values: values.length <= mostValues ? values : [],
      spread: spreadOf(values),
      references: marks.map(({ name, value }) => ({ name, value })),
      band:
        marks.length === 0
          ? null
          : {
              from: Math.min(...marks.map(({ value, tolerance }) => value - tolerance)),
              to: Math.max(...marks.map(({ value, tolerance }) => value + tolerance)),
            },
    };
  });
  return { text: line.text, count: line.rows.length, pairs };
}

function spreadOf(values: readonly number[]): TotalSpread | null {
  if (values.length === 0) return null;
  const at = (share: number) => quantile(values, share);
  return { count: values.length, least: at(0), lower: at(0.25), median: at(0.5), upper: at(0.75), most: at(1) };
}
