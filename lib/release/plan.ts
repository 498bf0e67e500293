import { createHash } from 'node:crypto';
import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { roundContext, type RoundContext } from '@/lib/review/context';
import { marksOfProofs, totalWithLate } from '@/lib/review/marks';
import { myQueue, queueOrder, sectionsOf } from '@/lib/review/order';
import { entriesOf } from '@/lib/review/queue';
import { criterionView, type CriterionView } from '@/lib/rows/exercise';
import { lateOf } from '@/lib/work/rounds';
import { someBegun } from '@/shared/exercise/rounds';
import { grouped } from '@/shared/grouped';
import type { EffectiveMark, Late } from '@/shared/marking/marks';
import { roundByNumber, sectionSchema } from '@/shared/schemas/critique';
import { pageNumberSchema, pageOf } from '@/shared/schemas/page';
import { canonicalJson } from '@/shared/text/canonical-json';

/** Rows on one page of the plan. */
const perPage = 100;

/** What would go out to whom in a round, in outline, with what each has already. */
export const getReleasePlan = operation({
  name: 'get-release-plan',
  allow: 'release:make',
  input: z.extend(roundByNumber, { page: pageNumberSchema, section: sectionSchema }),
  run: async ({ data, now }, { exerciseId, roundNumber, page: asked, section: sectionId }) => {
    const context = await roundContext(data, exerciseId, roundNumber);
    const { round, exercise, course, settings } = context;
    const { order } = await queueOrder(data, context, now);
    const [part, sections] = await Promise.all([myQueue(data, context, order, sectionId), sectionsOf(data, context)]);
    const { page, pages, from, to } = pageOf(asked, part.counted.length, perPage);
    const places = part.counted.slice(from, to);
    const [shown, { criteria, plan }, released] = await Promise.all([
      entriesOf(data, context, order, places, now),
      releasePlan(data, context, places),
      data.releases.numbersOf(
        round.id,
        places.map(({ memberId }) => memberId),
      ),
    ]);
    const planOf = new Map(plan.map((release) => [release.proofId, release]));
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      exercise: { id: exercise.id, title: exercise.title },
      round: { number: round.number, title: round.title, state: round.state, begun: someBegun(round) },
      namesHidden: settings.namesHidden,
      referencesShown: settings.referencesShown,
      criteria: criteria.length,
      page,
      pages,
      students: part.counted.length,
      sections,
      section: part.section,
      rows: shown.flatMap(({ token, shownAs, section, hidden, proofId, memberId, state, later }) => {
        const release = planOf.get(proofId);
        const before = released.get(memberId);
        if (!release) return [];
        return [
          {
            token,
            shownAs,
            section: hidden ? null : section,
            state,
            tooLate: later.length,
            notes: release.notes,
            unmarked: release.unmarked,
            percent: release.percent,
            late: release.late,
            /**
             * Criteria on which two markers differ without a settlement, or which wait for the second marker. The first
             * marker's level would count.
             */
            differing: release.marks.filter((mark) => mark.from === 'differs').length,
            secondWaits: release.marks.some((mark) => mark.from === 'second-waits'),
            seen: release.seen,
            released: before
              ? { number: before.number, at: before.at.toISOString(), otherProof: before.proofId !== proofId }
              : null,
          },
        ];
      }),
    };
  },
});

/**
 * An outline of what would be released to one student; `seen` is a digest of all of it and changes whenever any of it
 * does.
 */
export type PlannedRelease = {
  proofId: string;
  memberId: string;
  seen: string;
  notes: number;
  unmarked: number;
  percent: number | null;
  late: Late | null;
  marks: ({ criterionVersionId: string } & EffectiveMark)[];
};

/**
 * Outlines what would go out for these proofs. Reads versions and not words, so that it stays cheap for a whole class:
 * a snapshot is a function of exactly what is stamped here.
 */
export async function releasePlan(
  data: ScopedData,
  { round, settings, exercise }: RoundContext,
  queue: readonly { proofId: string }[],
): Promise<{ criteria: CriterionView[]; plan: PlannedRelease[] }> {
  const proofIds = queue.map(({ proofId }) => proofId);
  const [criteriaRows, marks, proofs, notes, lines] = await Promise.all([
    data.criteria.ofExercise(exercise.id),
    marksOfProofs(data, round, proofIds),
    data.critique.proofsWithMembers(round.id, proofIds),
    data.notes.stampsOf(proofIds),
    data.critique.comparedWith(proofIds),
  ]);
  const criteria = criteriaRows.map(criterionView);
  const notesOf = grouped(notes, ({ proofItem }) => proofItem.proofId);
  const linesOf = grouped(lines, ({ proofId }) => proofId);
  const plan = proofs.map(({ id, memberId, member, receivedAt }) => {
    const own = notesOf.get(id) ?? [];
    const late = lateOf(round, member, receivedAt);
    const marked = criteria.map((criterion) => ({ ...criterion, mark: marks.effective(id, criterion.versionId) }));
    const stamp = {
      proof: id,
      late,
      references: settings.referencesShown,
      marks: marked.map(({ versionId, mark }) => [versionId, mark.level, mark.from]),
      notes: own.map((note) => [note.id, note.version, note._count.entries]),
      lines: (linesOf.get(id) ?? []).map((line) => [line.id, line.comparisons[0]?.id ?? null]),
    };
    return {
      proofId: id,
      memberId,
      late,
      notes: own.length,
      seen: createHash('sha256').update(canonicalJson(stamp)).digest('hex'),
      unmarked: marked.filter(({ mark }) => mark.level === null).length,
      percent: totalWithLate(marked, late).after,
      marks: marked.map(({ versionId, mark }) => ({ criterionVersionId: versionId, ...mark })),
    };
  });
  return { criteria, plan };
}
