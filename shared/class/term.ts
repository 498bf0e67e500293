import { grouped } from '@/shared/grouped';
import type { Pack } from '@/shared/schemas/pack';
import type { SideKind } from '@/shared/schemas/measure';
import type { Ground, Spacing } from '@/shared/schemas/spacing';
import { median } from '@/shared/stats/median';

/**
 * A line of a term as it may be shown: drawn, and with the pairs that are outside tolerance where a comparison may be
 * seen.
 */
export type TermLine = {
  text: string;
  pack: Pack;
  ground: Ground;
  spacing: Spacing;
  evenness: number | null;
  pairs: { rest: number; within: boolean; sides: readonly [SideKind, SideKind] | null }[] | null;
};

export type TermRound = {
  exercise: { id: string; title: string };
  number: number;
  title: string;
  sent: number;
  receivedAt: string | null;
  late: { days: number; deduct: number } | null;
  /**
   * Why the rest is missing: names are hidden, nothing was released yet, nothing was sent; null when nothing is
   * missing.
   */
  silent: 'hidden' | 'not released' | 'nothing sent' | null;
  proofId: string | null;
  /** As released; null before. */
  released: { number: number; percent: number | null; marks: { title: string; level: string | null }[] } | null;
  notes: { all: number; settled: number } | null;
  lines: TermLine[];
};

export type Term = {
  course: { id: string; title: string; timeZone: string };
  student: { id: string; name: string; section: string | null };
  rounds: TermRound[];
};

/** Median absolute deviation over all compared pairs of a round, in 1/1000 em; null where nothing may be compared. */
export function roundDeviation({ lines }: Pick<TermRound, 'lines'>): number | null {
  const sizes = lines.flatMap(({ pairs }) => (pairs ?? []).map(({ rest }) => Math.abs(rest)));
  return sizes.length === 0 ? null : median(sizes);
}

/** Median unevenness of a round’s lines, in percent; null where no line is long enough. */
export function roundEvenness({ lines }: Pick<TermRound, 'lines'>): number | null {
  const known = lines.flatMap(({ evenness }) => (evenness === null ? [] : [100 * evenness]));
  return known.length === 0 ? null : median(known);
}

/** The last round of each exercise of which anything is shown. */
export const lastRounds = (rounds: readonly TermRound[]): TermRound[] =>
  [
    ...grouped(
      rounds.filter(({ lines }) => lines.length > 0),
      ({ exercise }) => exercise.id,
    ).values(),
  ].map((own) => own.at(-1)!);

/** Which kinds of side are still outside tolerance in these rounds, most often first. */
export function stillMissed(
  rounds: readonly TermRound[],
): { left: SideKind; right: SideKind; outside: number; pairs: number }[] {
  const seen = rounds.flatMap(({ lines }) =>
    lines.flatMap(({ pairs }) => (pairs ?? []).flatMap(({ within, sides }) => (sides ? [{ within, sides }] : []))),
  );
  return [...grouped(seen, ({ sides }) => sides.join(' ')).values()]
    .map((group) => ({
      left: group[0]!.sides[0],
      right: group[0]!.sides[1],
      outside: group.filter(({ within }) => !within).length,
      pairs: group.length,
    }))
    .sort((one, other) => other.outside / other.pairs - one.outside / one.pairs || other.pairs - one.pairs);
}
