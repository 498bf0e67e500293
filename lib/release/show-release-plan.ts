import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import { queueOf } from '@/lib/critique/queue';
import { roundInHand } from '@/lib/critique/round-in-hand';
import { roundOnly } from '@/shared/schemas/critique';
import { releasePlan } from './release-plan';

/** Rows on one page of the plan. */
export const perPage = 100;

/** What would go out to whom in a round, in outline, with what each has already. */
export const showReleasePlan = operation({
  name: 'show-release-plan',
  allow: 'release:make',
  input: z.extend(roundOnly, { page: z._default(z.coerce.number().check(z.int(), z.gte(1)), 1) }),
  run: async ({ data, now }, { exerciseId, roundNumber, page }) => {
    const hand = await roundInHand(data, exerciseId, roundNumber);
    const { round, exercise, course, settings } = hand;
    const queue = await queueOf(data, hand, now);
    const shown = queue.slice((page - 1) * perPage, page * perPage);
    const [{ criteria, plan }, released] = await Promise.all([releasePlan(data, hand, shown), data.releases.numbersOf(round.id)]);
    const planOf = new Map(plan.map((release) => [release.proofId, release]));
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      exercise: { id: exercise.id, title: exercise.title },
      round: { number: round.number, title: round.title, state: round.state, begun: round.markingStartedAt !== null },
      namesHidden: settings.namesHidden,
      referencesShown: settings.referencesShown,
      criteria: criteria.length,
      page, pages: Math.max(1, Math.ceil(queue.length / perPage)), students: queue.length,
      rows: shown.flatMap(({ token, shownAs, section, hidden, proofId, memberId, state, later }) => {
        const release = planOf.get(proofId);
        const before = released.get(memberId);
        if (!release) return [];
        return [{
          token, shownAs, section: hidden ? null : section, state, tooLate: later.length,
          notes: release.notes, unmarked: release.unmarked, percent: release.percent, late: release.late,
          seen: release.seen,
          released: before ? { number: before.number, at: before.at.toISOString(), otherProof: before.proofId !== proofId } : null,
        }];
      }),
    };
  },
});
