import * as z from 'zod/mini';
import { grouped } from '@/shared/grouped';
import { median } from '@/shared/stats/median';
import { quantile } from '@/shared/stats/quantile';
import type { MapLine, MapRow } from './map';

const number = z.number();
const spread = z.nullable(z.strictObject({ median: number, lower: number, upper: number }));

const lineProgressSchema = z.strictObject({
  specimenId: z.string(),
  text: z.string(),
  students: z.int(),
  /** Over the students of their median absolute deviation, in 1/1000 em; null where nothing is compared. */
  deviation: spread,
  /**
   * Over the students of the unevenness of the line (median absolute deviation of the gaps over their middle), in
   * percent.
   */
  evenness: spread,
  /**
   * Pairs of students who set the line in the round before as well: nearer to the reference now, farther, or as they
   * were.
   */
  moved: z.nullable(z.strictObject({ nearer: z.int(), farther: z.int(), same: z.int() })),
});
export type LineProgress = z.infer<typeof lineProgressSchema>;

/** A round compared with the one before, line by line, without names. */
export const roundProgressSchema = z.strictObject({ version: z.literal(1), lines: z.array(lineProgressSchema) });
export type RoundProgress = z.infer<typeof roundProgressSchema>;

/**
 * The place of a pair of an earlier version of a line in a later one; null where it is gone. Equal versions: the pair
 * itself.
 */
export type Follow = (pair: number, fromVersion: string, toVersion: string) => number | null;

/**
 * @param before the round before, empty for the first. Versions of one specimen are taken together, as they are one
 * line to the class.
 */
export function roundProgress(now: readonly MapLine[], before: readonly MapLine[], follow: Follow): RoundProgress {
  const lines = [...grouped(now, ({ specimenId }) => specimenId)].map(([specimenId, versions]): LineProgress => {
    const rows = versions.flatMap((line) => line.rows);
    return {
      specimenId,
      text: versions.at(-1)!.text,
      students: rows.length,
      deviation: spreadOf(rows.flatMap(ownDeviation)),
      evenness: spreadOf(rows.flatMap(({ evenness }) => (evenness === null ? [] : [100 * evenness]))),
      moved: movedIn(
        versions,
        before.filter((line) => line.specimenId === specimenId),
        follow,
      ),
    };
  });
  return { version: 1, lines };
}

/** Median absolute deviation of one setting from its reference, in 1/1000 em; empty where nothing is compared. */
function ownDeviation({ against, tenths }: Pick<MapRow, 'against' | 'tenths'>): number[] {
  const sizes = tenths.flatMap((far) => (far === null ? [] : [Math.abs(far) / 10]));
  return against === null || sizes.length === 0 ? [] : [median(sizes)];
}

const spreadOf = (values: readonly number[]): LineProgress['deviation'] =>
  values.length === 0
    ? null
    : { median: quantile(values, 0.5), lower: quantile(values, 0.25), upper: quantile(values, 0.75) };

function movedIn(now: readonly MapLine[], before: readonly MapLine[], follow: Follow): LineProgress['moved'] {
  const earlier = new Map(
    before.flatMap((line) => line.rows.map((row) => [row.memberId, { row, version: line.specimenVersionId }] as const)),
  );
  const counts = { nearer: 0, farther: 0, same: 0 };
  for (const line of now) {
    for (const row of line.rows) {
      const then = earlier.get(row.memberId);
      if (!then || row.against === null || then.row.against === null) continue;
      then.row.tenths.forEach((far, pair) => {
        const at = follow(pair, then.version, line.specimenVersionId);
        const farNow = at === null ? null : (row.tenths[at] ?? null);
        if (far === null || farNow === null) return;
        const difference = Math.abs(farNow) - Math.abs(far);
        counts[difference < 0 ? 'nearer' : difference > 0 ? 'farther' : 'same'] += 1;
      });
    }
  }
  return counts.nearer + counts.farther + counts.same === 0 ? null : counts;
}
