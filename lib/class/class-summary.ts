import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import { letOthersIn } from '@/lib/let-others-in';
import { countedProofs, type MarkedRound } from '@/lib/review/counted';
import { wrongStartOf } from '@/lib/rows/specimen';
import { measureOf, spacingOf } from '@/lib/rows/spacing';
import {
  classSummarySchema,
  summarising,
  type ClassSummary,
  type Judged,
  type LineFacts,
  type LineOfMember,
} from '@/shared/class/summary';
import { usualRangeSchema } from '@/shared/schemas/measure';
import { beyondHalfRange } from '@/shared/scoring';
import { canonicalJson } from '@/shared/text/canonical-json';
import { summaryOf } from '@/lib/data/summary-cache';

type Round = MarkedRound & { exerciseId: string };

const proofsAtOnce = 50;

/**
 * What the class has and has not seen in a round. Worked out once for each state of the round (proofs, choices,
 * references; comparing again throws it away) and read from its row after, so that looking costs the same for 30
 * students and for 3,000.
 */
export async function classSummary(
  data: ScopedData,
  round: Round,
  courseId: string,
  now: Date,
): Promise<{ summary: ClassSummary; students: number }> {
  const state = await data.roundState.of(round, courseId);
  if (state === null) throw notFound();
  const { students, counted, compared } = state;
  const basis = canonicalJson([counted, compared]);
  const summary = await summaryOf(data, {
    roundId: round.id,
    kind: 'class',
    basis,
    schema: classSummarySchema,
    make: () => workOut(data, round),
    now,
  });
  return { summary, students };
}

async function workOut(data: ScopedData, round: Round): Promise<ClassSummary> {
  const [counted, versions] = await Promise.all([countedProofs(data, round), data.classSummary.versions(round.id)]);
  const proofIds = counted.flatMap(({ proof }) => (proof ? [proof.id] : []));
  const lines: LineOfMember[] = [];
  for (let from = 0; from < proofIds.length; from += proofsAtOnce) {
    const items = await data.classSummary.spacings(proofIds.slice(from, from + proofsAtOnce));
    lines.push(...items.map(lineOf));
  }
  const work = summarising(versions.flatMap(factsOf), lines, proofIds.length);
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    await letOthersIn();
  }
}

type Item = Awaited<ReturnType<ScopedData['classSummary']['spacings']>>[number];
type Version = Awaited<ReturnType<ScopedData['classSummary']['versions']>>[number];

/** Only what is summed up of a comparison: reading all of it for a class takes several times as long. */
const restsOnly = z.object({
  nearest: z.nullable(z.int()),
  tightness: z.number(),
  pairs: z.array(z.object({ rest: z.number(), within: z.boolean() })),
});

/** Of a line without a reference: where its pairs are beside the usual range, and which are spoken of. */
const usualOnly = z.object({
  pairs: z.array(
    z.object({
      total: z._default(z.number(), 0),
      usual: z._default(z.nullable(usualRangeSchema), null),
      surprise: z._default(z.nullable(z.number()), null),
    }),
  ),
  line: z._default(z.object({ tightness: z._default(z.number(), 0) }), { tightness: 0 }),
  findings: z.array(
    z.object({
      kind: z.optional(z.string()),
      from: z.optional(z.nullable(z.int())),
      to: z.optional(z.nullable(z.int())),
    }),
  ),
});

function lineOf({
  specimenVersionId,
  proof,
  comparisons: [compared],
  measurements: [measured],
  ...item
}: Item): LineOfMember {
  return {
    memberId: proof.memberId,
    specimenVersionId,
    ...spacingOf(item),
    judged: byReference(compared) ?? byUsualRange(measured),
  };
}

function byReference(compared: { payload: string } | undefined): Judged | null {
  const found = compared ? z.parse(restsOnly, JSON.parse(compared.payload)) : null;
  return found === null || found.nearest === null
    ? null
    : { yardstick: 'reference', tightness: found.tightness, pairs: found.pairs };
}

function byUsualRange(measured: { payload: string } | undefined): Judged | null {
  if (!measured) return null;
  const { pairs, line, findings } = z.parse(usualOnly, JSON.parse(measured.payload));
  const spoken = findings.filter(({ kind }) => kind === 'usual' || kind === 'misplaced');
  const judged = pairs.map((pair, index) => {
    const rest = beyondHalfRange(pair, line.tightness);
    const outside = spoken.some(({ from, to }) => from === index || to === index);
    return rest === null ? null : { rest, within: !outside };
  });
  // An older engine knew no usual range.
  return judged.every((pair) => pair === null)
    ? null
    : { yardstick: 'usual-range', tightness: line.tightness, pairs: judged };
}

function factsOf({ id, specimenId, text, details, measured }: Version): LineFacts[] {
  if (!measured) return [];
  const { letters, pairs } = measureOf(measured);
  return [
    {
      specimenVersionId: id,
      specimenId,
      text,
      letters,
      start: wrongStartOf({ details })?.spacing ?? null,
      sides: pairs.map(({ sides }) => [sides.left, sides.right] as const),
    },
  ];
}
