import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { letOthersIn } from '@/lib/let-others-in';
import { pairMapOf } from '@/lib/rows/spacing';
import { roundContext, type RoundContext } from '@/lib/review/context';
import { roundProgress, roundProgressSchema, type Follow, type RoundProgress } from '@/shared/class/progress';
import { followPair } from '@/shared/critique/pair-change';
import { canonicalJson } from '@/shared/text/canonical-json';
import { idSchema } from '@/shared/schemas/id';
import { classSummary } from './class-summary';
import { summaryOf } from '@/lib/data/summary-cache';
import { mapLines } from './map-line';

/**
 * How an exercise went from round to round, line by line. Each round is worked out once for its state and that of the
 * round before.
 */
export const getProgress = operation({
  name: 'get-progress',
  allow: 'class:see',
  input: z.strictObject({ exerciseId: idSchema }),
  run: async ({ data, now }, { exerciseId }) => {
    const all = await data.classSummary.roundNumbers(exerciseId);
    if (all.length === 0) throw notFound();
    const contexts: RoundContext[] = [];
    for (const { number, proofs } of all) if (proofs > 0) contexts.push(await roundContext(data, exerciseId, number));
    const { exercise, course } = contexts[0] ?? (await roundContext(data, exerciseId, all[0]!.number));
    const rounds: { number: number; title: string; lines: RoundProgress['lines'] }[] = [];
    for (const [index, context] of contexts.entries()) {
      const { lines } = await progressOf(data, context, contexts[index - 1] ?? null, now);
      rounds.push({ number: context.round.number, title: context.round.title, lines });
    }
    return {
      course: { id: course.id, title: course.title },
      exercise: { id: exercise.id, title: exercise.title },
      rounds,
    };
  },
});

async function progressOf(
  data: ScopedData,
  { round, course }: RoundContext,
  before: RoundContext | null,
  now: Date,
): Promise<RoundProgress> {
  const [state, stateBefore] = await Promise.all([
    data.roundState.of(round, course.id),
    before ? data.roundState.of(before.round, course.id) : null,
  ]);
  if (state === null) throw notFound();
  const basis = canonicalJson([state.counted, state.compared, stateBefore?.counted ?? null]);
  return summaryOf(data, {
    roundId: round.id,
    kind: 'progress',
    basis,
    schema: roundProgressSchema,
    now,
    make: async () => {
      const [lines, earlier] = [await linesOf(round), before ? await linesOf(before.round) : []];
      const specimenIds = [...new Set(lines.map(({ specimenId }) => specimenId))];
      const follow = await followed(data, specimenIds);
      const progress: RoundProgress = { version: 1, lines: [] };
      for (const id of specimenIds) {
        await letOthersIn();
        const own = (line: { specimenId: string }) => line.specimenId === id;
        progress.lines.push(...roundProgress(lines.filter(own), earlier.filter(own), follow).lines);
      }
      return progress;
    },
  });

  async function linesOf(one: RoundContext['round']) {
    const { summary } = await classSummary(data, one, course.id, now);
    return mapLines(data, one, course.id, summary.lines, now);
  }
}

/** Leads pairs through the versions of their lines. */
async function followed(data: ScopedData, specimenIds: readonly string[]): Promise<Follow> {
  const versions = (await Promise.all(specimenIds.map((id) => data.critique.versionsOf(id)))).map((rows) =>
    rows.map((row) => ({ id: row.id, map: pairMapOf(row) })),
  );
  return (pair, fromVersion, toVersion) => {
    if (fromVersion === toVersion) return pair;
    const line = versions.find((rows) => rows.some(({ id }) => id === fromVersion)) ?? [];
    const [from, to] = [fromVersion, toVersion].map((wanted) => line.findIndex(({ id }) => id === wanted)) as [
      number,
      number,
    ];
    return from < 0 || to < from
      ? null
      : followPair(
          pair,
          line.slice(from + 1, to + 1).map(({ map }) => map ?? []),
        );
  };
}
