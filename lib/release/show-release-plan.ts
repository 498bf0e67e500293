import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import { entriesOf } from '@/lib/review/queue';
import { queueOrder } from '@/lib/review/order';
import { roundInHand } from '@/lib/review/context';
import { roundByNumber } from '@/shared/schemas/critique';
import { pageNumberSchema, pageOf } from '@/shared/schemas/page';
import { releasePlan } from './release-plan';

/** Rows on one page of the plan. */
export const perPage = 100;

/** What would go out to whom in a round, in outline, with what each has already. */
export const showReleasePlan = operation({
  name: 'show-release-plan',
  allow: 'release:make',
  input: z.extend(roundByNumber, { page: pageNumberSchema }),
  run: async ({ data, now }, { exerciseId, roundNumber, page: asked }) => {
    const hand = await roundInHand(data, exerciseId, roundNumber);
    const { round, exercise, course, settings } = hand;
    const { order } = await queueOrder(data, hand, now);
    const { page, pages, from, to } = pageOf(asked, order.counted.length, perPage);
    const places = order.counted.slice(from, to);
    const [shown, { criteria, plan }, released] = await Promise.all([
      entriesOf(data, hand, order, places, now),
      releasePlan(data, hand, places),
      data.releases.numbersOf(
        round.id,
        places.map(({ memberId }) => memberId),
      ),
    ]);
    const planOf = new Map(plan.map((release) => [release.proofId, release]));
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      exercise: { id: exercise.id, title: exercise.title },
      round: { number: round.number, title: round.title, state: round.state, begun: round.markingStartedAt !== null },
      namesHidden: settings.namesHidden,
      referencesShown: settings.referencesShown,
      criteria: criteria.length,
      page,
      pages,
      students: order.counted.length,
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
            /** Criteria by which two markers differ and nobody has settled it; or that wait for the second marker. The first marker's level would count. */
            differing: release.marks.filter(({ from }) => from === 'differs').length,
            secondWaits: release.marks.some(({ from }) => from === 'second-waits'),
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
