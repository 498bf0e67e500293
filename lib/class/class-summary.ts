import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import { isConflict } from '@/lib/data/retry';
import { countedProofs } from '@/lib/critique/counted-proofs';
import { measureOf } from '@/lib/critique/stored';
import { spacingOf } from '@/lib/draft/spacing-of';
import { classSummarySchema, summarise, type ClassSummary, type LineFacts, type LineOfMember } from '@/shared/class/summary';
import { canonicalJson } from '@/shared/json/canonical';

type Round = { id: string; exerciseId: string; markingStartedAt: Date | null };

const kind = 'class';
const proofsAtOnce = 50;

/**
 * What the class has and has not seen in a round. Worked out once for each state of the round (proofs, choices,
 * references; comparing again throws it away) and read from its row after, so that looking costs the same for 30 students and for 3,000.
 */
export async function classSummary(data: ScopedData, round: Round, courseId: string, now: Date): Promise<{ summary: ClassSummary; students: number }> {
  const state = await data.classSummary.stateOf(round, courseId);
  if (state === null) throw notFound();
  const students = Number(state.students);
  const basis = canonicalJson(state);
  const kept = await data.classSummary.kept(round.id, kind);
  if (kept && kept.basis === basis) return { summary: readOnce(kept.payload), students };
  const summary = await workOut(data, round);
  try {
    await data.classSummary.keep(round.id, kind, basis, canonicalJson(summary), now);
  } catch (error) {
    // Two who look at once both work it out, and either row will do.
    if (!isConflict(error)) throw error;
  }
  return { summary, students };
}

const read = new Map<string, ClassSummary>();
const mostRead = 40;

/** A payload that was read a moment ago is not taken apart again. Nobody changes a summary, so it can be shared. */
function readOnce(payload: string): ClassSummary {
  const known = read.get(payload) ?? z.parse(classSummarySchema, JSON.parse(payload));
  read.delete(payload);
  read.set(payload, known);
  if (read.size > mostRead) read.delete(read.keys().next().value!);
  return known;
}

async function workOut(data: ScopedData, round: Round): Promise<ClassSummary> {
  const [counted, versions] = await Promise.all([countedProofs(data, round), data.classSummary.versions(round.id)]);
  const proofIds = counted.flatMap(({ proof }) => (proof ? [proof.id] : []));
  const lines: LineOfMember[] = [];
  for (let from = 0; from < proofIds.length; from += proofsAtOnce) {
    const items = await data.classSummary.settings(proofIds.slice(from, from + proofsAtOnce));
    lines.push(...items.map(lineOf));
  }
  return summarise(versions.flatMap(factsOf), lines, proofIds.length);
}

type Item = Awaited<ReturnType<ScopedData['classSummary']['settings']>>[number];
type Version = Awaited<ReturnType<ScopedData['classSummary']['versions']>>[number];

/** Only what is summed up of a comparison: reading all of it for a class takes several times as long. */
const restsOnly = z.object({ nearest: z.nullable(z.int()), tightness: z.number(), pairs: z.array(z.object({ rest: z.number(), within: z.boolean() })) });

function lineOf({ specimenVersionId, proof, comparisons: [compared], ...item }: Item): LineOfMember {
  const rests = compared ? z.parse(restsOnly, JSON.parse(compared.payload)) : null;
  return { memberId: proof.memberId, specimenVersionId, ...spacingOf(item), compared: rests !== null && rests.nearest !== null ? rests : null };
}

function factsOf({ id, specimenId, text, measured }: Version): LineFacts[] {
  if (!measured) return [];
  const { letters, pairs } = measureOf(measured);
  return [{ specimenVersionId: id, specimenId, text, letters, sides: pairs.map(({ sides }) => [sides.left, sides.right] as const) }];
}
