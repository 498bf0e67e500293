import * as z from 'zod/mini';
import type { Spacing } from '@/shared/schemas/spacing';
import { sideKindSchema, type SideKind } from '@/shared/schemas/measure';
import { grouped } from '@/shared/grouped';
import { quantile } from '@/shared/stats/quantile';

const number = z.number();

/** Median and quartiles (type 7) of a deviation over the class, in 1/1000 em. */
const spreadSchema = z.strictObject({ median: number, lower: number, upper: number });
export type Spread = z.infer<typeof spreadSchema>;

const classPairSchema = z.strictObject({
  letters: z.string(),
  sides: z.nullable(z.tuple([sideKindSchema, sideKindSchema])),
  spread: z.nullable(spreadSchema),
  /** For how many the pair was judged at all, and how many of these were outside. */
  judged: z.int(),
  outside: z.int(),
});
/** What a line is held against: its nearest reference or, where it has none, the usual range. */
const yardstickSchema = z.enum(['reference', 'usual-range']);
export type Yardstick = z.infer<typeof yardstickSchema>;

const classLineSchema = z.strictObject({
  specimenVersionId: z.string(),
  specimenId: z.string(),
  text: z.string(),
  /** How many set it, and how many of these were held against the line's yardstick; null where nobody was. */
  sent: z.int(),
  judged: z.int(),
  yardstick: z.nullable(yardstickSchema),
  tightness: z.nullable(spreadSchema),
  /** As the middle of the class spaced it: the median of each gap, tracking and offset together. Null: no spacings. */
  middle: z.nullable(z.strictObject({ tracking: number, offsets: z.array(number) })),
  pairs: z.array(classPairSchema),
  /** Members whose settings of the line are the same in every number, where anything was set at all. */
  identical: z.array(z.array(z.string())),
});
const missedSidesSchema = z.strictObject({
  left: sideKindSchema,
  right: sideKindSchema,
  /** The pairs of letters that show it, most often outside first; at most three. @example ['TA', 'VA'] */
  letters: z.array(z.string()),
  pairs: z.int(),
  outside: z.int(),
  median: number,
});

/** What a class has and has not seen in one round: it names members by id only. */
export const classSummarySchema = z.strictObject({
  version: z.literal(3),
  proofs: z.int(),
  lines: z.array(classLineSchema),
  sides: z.array(missedSidesSchema),
});
export type ClassSummary = z.infer<typeof classSummarySchema>;
export type ClassLine = z.infer<typeof classLineSchema>;
export type MissedSides = z.infer<typeof missedSidesSchema>;

/**
 * One line of one proof that counts. `rest` is what is left of a pair's distance after the line's tightness is taken out,
 * 1/1000 em: from the nearest reference, or from the half range that designers give it (0 within). A pair that the usual
 * range says nothing of is null, and so is a line that nothing is known of.
 */
export type LineOfMember = {
  memberId: string;
  specimenVersionId: string;
  tracking: number;
  offsets: readonly number[];
  judged: Judged | null;
};
export type Judged = {
  yardstick: Yardstick;
  tightness: number;
  pairs: readonly ({ rest: number; within: boolean } | null)[];
};
export type LineFacts = {
  specimenVersionId: string;
  specimenId: string;
  text: string;
  letters: readonly string[];
  sides: readonly (readonly [SideKind, SideKind])[];
  /** What the line began from, where it is not the face's own. */
  start?: Spacing | null;
};

/** Sums a class up, line by line in the order given and by kinds of side, those it misses most first. */
export function summarise(facts: readonly LineFacts[], lines: readonly LineOfMember[], proofs: number): ClassSummary {
  const work = summarising(facts, lines, proofs);
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

/** The same in steps, for a process that has others to answer between them. */
export function* summarising(
  facts: readonly LineFacts[],
  lines: readonly LineOfMember[],
  proofs: number,
): Generator<undefined, ClassSummary> {
  const byVersion = grouped(lines, ({ specimenVersionId }) => specimenVersionId);
  const summed: ClassLine[] = [];
  for (const fact of facts) {
    yield;
    summed.push(lineSummary(fact, byVersion.get(fact.specimenVersionId) ?? []));
  }
  return { version: 3, proofs, lines: summed, sides: yield* missedSides(facts, byVersion) };
}

function lineSummary(
  { specimenVersionId, specimenId, text, letters, sides, start }: LineFacts,
  own: readonly LineOfMember[],
): ClassLine {
  const { yardstick, lines } = judgedAlike(own);
  const pairs = letters.slice(1).map((right, index) => {
    const all = lines.flatMap((line) => line.pairs[index] ?? []);
    return {
      letters: `${letters[index]}${right}`,
      sides: sides[index] ? ([...sides[index]] as [SideKind, SideKind]) : null,
      spread: spreadOf(all.map(({ rest }) => rest)),
      judged: all.length,
      outside: all.filter(({ within }) => !within).length,
    };
  });
  return {
    specimenVersionId,
    specimenId,
    text,
    sent: own.length,
    judged: lines.length,
    yardstick,
    tightness: spreadOf(lines.map(({ tightness }) => tightness)),
    middle: middleOf(own),
    pairs,
    identical: identicalSpacings(own, start),
  };
}

/** A line has one yardstick: its references, once anything is compared with them. */
function judgedAlike(own: readonly LineOfMember[]): { yardstick: Yardstick | null; lines: Judged[] } {
  const all = own.flatMap(({ judged }) => (judged ? [judged] : []));
  const compared = all.filter(({ yardstick }) => yardstick === 'reference');
  if (compared.length > 0) return { yardstick: 'reference', lines: compared };
  return { yardstick: all.length > 0 ? 'usual-range' : null, lines: all };
}

/** The median gap is drawn, not the median of tracking and that of offsets: a person may do one with the other. */
function middleOf(own: readonly LineOfMember[]): ClassLine['middle'] {
  if (own.length === 0) return null;
  const gaps = own[0]!.offsets.map((_, index) =>
    quantile(
      own.map(({ tracking, offsets }) => tracking + (offsets[index] ?? 0)),
      0.5,
    ),
  );
  return { tracking: 0, offsets: gaps };
}

const spreadOf = (values: readonly number[]): Spread | null =>
  values.length === 0
    ? null
    : { median: quantile(values, 0.5), lower: quantile(values, 0.25), upper: quantile(values, 0.75) };

/**
 * Groups of members whose settings of one line are the same in every number, where anything was set at all: `start` is
 * what the line began from, null for the face's own.
 */
export function identicalSpacings(
  lines: readonly Pick<LineOfMember, 'memberId' | 'tracking' | 'offsets'>[],
  start: Spacing | null = null,
): string[][] {
  const touched = lines.filter(
    ({ tracking, offsets }) =>
      tracking !== (start?.tracking ?? 0) || offsets.some((offset, pair) => offset !== (start?.offsets[pair] ?? 0)),
  );
  return [...grouped(touched, ({ tracking, offsets }) => `${tracking}|${offsets.join()}`).values()]
    .filter((group) => group.length > 1)
    .map((group) => group.map(({ memberId }) => memberId));
}

type Tally = { pairs: number; outside: number };
type SidesTally = Tally & { left: SideKind; right: SideKind; rests: number[]; letters: Map<string, Tally> };

/** Every judged pair of the class by the two sides that face each other, those most often outside first; in steps. */
function* missedSides(
  facts: readonly LineFacts[],
  byVersion: ReadonlyMap<string, LineOfMember[]>,
): Generator<undefined, MissedSides[]> {
  const tallies = new Map<string, SidesTally>();
  for (const fact of facts) {
    yield;
    tallySides(tallies, fact, judgedAlike(byVersion.get(fact.specimenVersionId) ?? []).lines);
  }
  const missed: MissedSides[] = [];
  for (const { left, right, letters, pairs, outside, rests } of tallies.values()) {
    yield;
    missed.push({ left, right, letters: mostMissed(letters), pairs, outside, median: quantile(rests, 0.5) });
  }
  return missed.sort((one, other) => other.outside / other.pairs - one.outside / one.pairs || other.pairs - one.pairs);
}

function tallySides(tallies: Map<string, SidesTally>, { letters, sides }: LineFacts, lines: readonly Judged[]): void {
  const of = sides.map(([left, right], index) => {
    const there = { left, right, pair: `${letters[index]}${letters[index + 1]}` };
    return { ...there, key: `${left} ${right}` };
  });
  for (const { pairs } of lines)
    for (const [index, judged] of pairs.entries()) {
      const at = of[index];
      if (!judged || !at) continue;
      const known = tallies.get(at.key);
      const sum: SidesTally = known ?? {
        left: at.left,
        right: at.right,
        rests: [],
        letters: new Map(),
        pairs: 0,
        outside: 0,
      };
      if (!known) tallies.set(at.key, sum);
      const pair = sum.letters.get(at.pair) ?? { pairs: 0, outside: 0 };
      sum.letters.set(at.pair, pair);
      sum.rests.push(judged.rest);
      for (const tally of [sum, pair]) {
        tally.pairs += 1;
        if (!judged.within) tally.outside += 1;
      }
    }
}

function mostMissed(letters: ReadonlyMap<string, Tally>): string[] {
  return [...letters]
    .map(([pair, { pairs, outside }]) => ({ pair, share: outside / pairs }))
    .sort((one, other) => other.share - one.share)
    .slice(0, 3)
    .map(({ pair }) => pair);
}
