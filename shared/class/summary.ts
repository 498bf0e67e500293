import * as z from 'zod/mini';
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
  outside: z.int(),
});
const classLineSchema = z.strictObject({
  specimenVersionId: z.string(),
  specimenId: z.string(),
  text: z.string(),
  /** How many set it, and for how many there is a comparison. */
  sent: z.int(),
  compared: z.int(),
  tightness: z.nullable(spreadSchema),
  pairs: z.array(classPairSchema),
  /** Members whose settings of the line are the same in every number, where anything was set at all. */
  identical: z.array(z.array(z.string())),
});
const missedSidesSchema = z.strictObject({
  left: sideKindSchema,
  right: sideKindSchema,
  pairs: z.int(),
  outside: z.int(),
  median: number,
});

/** What a class has and has not seen in one round: it names members by id only. */
export const classSummarySchema = z.strictObject({
  version: z.literal(1),
  proofs: z.int(),
  lines: z.array(classLineSchema),
  sides: z.array(missedSidesSchema),
});
export type ClassSummary = z.infer<typeof classSummarySchema>;
export type ClassLine = z.infer<typeof classLineSchema>;
export type MissedSides = z.infer<typeof missedSidesSchema>;

/** One line of one proof that counts; `rests` per pair after tightness is taken out, null where nothing compares it. */
export type LineOfMember = {
  memberId: string;
  specimenVersionId: string;
  tracking: number;
  offsets: readonly number[];
  compared: { tightness: number; pairs: readonly { rest: number; within: boolean }[] } | null;
};
export type LineFacts = {
  specimenVersionId: string;
  specimenId: string;
  text: string;
  letters: readonly string[];
  sides: readonly (readonly [SideKind, SideKind])[];
};

/** Sums a class up, line by line in the order given and by kinds of side, those it misses most first. */
export function summarise(facts: readonly LineFacts[], lines: readonly LineOfMember[], proofs: number): ClassSummary {
  const byVersion = grouped(lines, ({ specimenVersionId }) => specimenVersionId);
  const summed = facts.map((fact) => lineSummary(fact, byVersion.get(fact.specimenVersionId) ?? []));
  return { version: 1, proofs, lines: summed, sides: missedSides(facts, byVersion) };
}

function lineSummary(
  { specimenVersionId, specimenId, text, letters, sides }: LineFacts,
  own: readonly LineOfMember[],
): ClassLine {
  const compared = own.flatMap((line) => (line.compared ? [line.compared] : []));
  const pairs = letters.slice(1).map((right, index) => {
    const all = compared.flatMap((line) => line.pairs[index] ?? []);
    return {
      letters: `${letters[index]}${right}`,
      sides: sides[index] ? ([...sides[index]] as [SideKind, SideKind]) : null,
      spread: spreadOf(all.map(({ rest }) => rest)),
      outside: all.filter(({ within }) => !within).length,
    };
  });
  return {
    specimenVersionId,
    specimenId,
    text,
    sent: own.length,
    compared: compared.length,
    tightness: spreadOf(compared.map(({ tightness }) => tightness)),
    pairs,
    identical: identicalSpacings(own),
  };
}

const spreadOf = (values: readonly number[]): Spread | null =>
  values.length === 0
    ? null
    : { median: quantile(values, 0.5), lower: quantile(values, 0.25), upper: quantile(values, 0.75) };

/** Groups of members whose settings of one line are the same in every number, where anything was set at all. */
export function identicalSpacings(
  lines: readonly Pick<LineOfMember, 'memberId' | 'tracking' | 'offsets'>[],
): string[][] {
  const touched = lines.filter(({ tracking, offsets }) => tracking !== 0 || offsets.some((offset) => offset !== 0));
  return [...grouped(touched, ({ tracking, offsets }) => `${tracking}|${offsets.join()}`).values()]
    .filter((group) => group.length > 1)
    .map((group) => group.map(({ memberId }) => memberId));
}

/** Every compared pair of the class by the two sides that face each other, those most often outside first. */
function missedSides(facts: readonly LineFacts[], byVersion: ReadonlyMap<string, LineOfMember[]>): MissedSides[] {
  const seen = facts.flatMap(({ specimenVersionId, sides }) =>
    (byVersion.get(specimenVersionId) ?? []).flatMap(({ compared }) =>
      (compared?.pairs ?? []).flatMap((pair, index) => (sides[index] ? [{ sides: sides[index], ...pair }] : [])),
    ),
  );
  return [...grouped(seen, ({ sides: [left, right] }) => `${left} ${right}`).values()]
    .map((group) => ({
      left: group[0]!.sides[0],
      right: group[0]!.sides[1],
      pairs: group.length,
      outside: group.filter(({ within }) => !within).length,
      median: quantile(
        group.map(({ rest }) => rest),
        0.5,
      ),
    }))
    .sort((one, other) => other.outside / other.pairs - one.outside / one.pairs || other.pairs - one.pairs);
}
