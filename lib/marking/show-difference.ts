import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { settledSlot } from '@/lib/critique/mark-tasks';
import { proofInHand } from '@/lib/critique/proof-in-hand';
import { shownAs, tokenOf } from '@/lib/critique/shown-as';
import { levelsOf } from '@/lib/critique/stored';
import type { ScopedData } from '@/lib/data';
import { criterionView } from '@/lib/exercise/read-exercise';
import { proofOnly } from '@/shared/schemas/critique';
import { marksOfProofs } from './effective-marks';
import { maySettle } from './settle-mark';

/** One proof as two markers judged it: both levels by each criterion, the one that counts, and every change of every mark with its author and reason. */
export const showDifference = operation({
  name: 'show-difference',
  allow: 'mark:settle',
  input: proofOnly,
  run: async ({ data }, { proof: token }) => {
    const hand = await proofInHand(data, token);
    const { proof, round, exercise, course, first, second, hidden } = hand;
    // Until both have finished there is nothing to lay side by side.
    if (hand.two !== 'done') throw notFound();
    const [rows, marks, settled, history] = await Promise.all([
      data.criteria.ofExercise(exercise.id),
      marksOfProofs(data, round, [proof.id]),
      data.markTasks.byProof(proof.id, settledSlot).then((task) => (task ? data.marks.ofTasks([task.id]) : [])),
      data.marks.historyOf(proof.id),
    ]);
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      exercise: { id: exercise.id, title: exercise.title },
      round: { number: round.number, title: round.title },
      proof: {
        token: tokenOf({ proofId: proof.id, alias: first!.alias }, hidden),
        shownAs: shownAs({ name: proof.member.user?.name ?? null, alias: first!.alias }, hidden),
        specimenId: firstLine(proof.items),
      },
      markers: {
        first: first!.marker?.user?.name ?? 'a former marker',
        second: second!.marker?.user?.name ?? 'a former marker',
      },
      maySettle: maySettle(hand),
      released: hand.released,
      criteria: rows.map(criterionView).map(({ versionId, title, description, weight, levels }) => ({
        versionId,
        title,
        description,
        weight,
        levels: levels.map((level) => ({ title: level.title, points: level.points })),
        ...marks.given(proof.id, versionId),
        effective: marks.effective(proof.id, versionId),
        version: settled.find(({ criterionVersionId }) => criterionVersionId === versionId)?.version ?? -1,
      })),
      history: history.map(eventView),
    };
  },
});

type EventRow = Awaited<ReturnType<ScopedData['marks']['historyOf']>>[number];

function eventView({ mark, who, why, before, after, at }: EventRow) {
  const levels = levelsOf(mark.criterionVersion);
  const named = (level: number | null) => (level === null ? null : (levels[level]?.title ?? `level ${level + 1}`));
  return {
    slot: mark.task.slot,
    criterion: mark.criterionVersion.title,
    who: who?.user?.name ?? null,
    why,
    before: named(before),
    after: named(after),
    at: at.toISOString(),
  };
}

type Items = Awaited<ReturnType<typeof proofInHand>>['proof']['items'];
const firstLine = (items: Items): string | null =>
  items.toSorted((one, other) => one.specimenVersion.specimen.position - other.specimenVersion.specimen.position)[0]
    ?.specimenVersion.specimenId ?? null;
