import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import { countedProofs } from '@/lib/review/counted';
import { measureOf, spacingOf } from '@/lib/rows/spacing';
import {
  classSummarySchema,
  summarise,
  type ClassSummary,
  type LineFacts,
  type LineOfMember,
} from '@/shared/class/summary';
import { canonicalJson } from '@/shared/text/canonical-json';
import { summaryOf } from '@/lib/data/summary-cache';

type Round = { id: string; exerciseId: string; markingStartedAt: Date | null };

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
  return summarise(versions.flatMap(factsOf), lines, proofIds.length);
}

type Item = Awaited<ReturnType<ScopedData['classSummary']['spacings']>>[number];
type Version = Awaited<ReturnType<ScopedData['classSummary']['versions']>>[number];

/** Only what is summed up of a comparison: reading all of it for a class takes several times as long. */
const restsOnly = z.object({
  nearest: z.nullable(z.int()),
  tightness: z.number(),
  pairs: z.array(z.object({ rest: z.number(), within: z.boolean() })),
});

function lineOf({ specimenVersionId, proof, comparisons: [compared], ...item }: Item): LineOfMember {
  const rests = compared ? z.parse(restsOnly, JSON.parse(compared.payload)) : null;
  return {
    memberId: proof.memberId,
    specimenVersionId,
    ...spacingOf(item),
    compared: rests !== null && rests.nearest !== null ? rests : null,
  };
}

function factsOf({ id, specimenId, text, measured }: Version): LineFacts[] {
  if (!measured) return [];
  const { letters, pairs } = measureOf(measured);
  return [
    {
      specimenVersionId: id,
      specimenId,
      text,
      letters,
      sides: pairs.map(({ sides }) => [sides.left, sides.right] as const),
    },
  ];
}
