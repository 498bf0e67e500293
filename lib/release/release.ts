import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import type { NewRelease } from '@/lib/data/releases';
import { isTaken } from '@/lib/data/retry';
import { roundContext } from '@/lib/review/context';
import { queueOrder } from '@/lib/review/order';
import { entriesOf, type QueueEntry } from '@/lib/review/queue';
import { courseSettingsOf } from '@/lib/rows/course';
import type { CriterionView } from '@/lib/rows/exercise';
import { roundByNumber } from '@/shared/schemas/critique';
import { idSchema } from '@/shared/schemas/id';
import { releaseRoundSchema } from '@/shared/schemas/release';
import { canonicalJson } from '@/shared/text/canonical-json';
import { buildSnapshots } from './snapshots';
import { type PlannedRelease, releasePlan } from './plan';
import { drawLines, nameInstructors, shownTo } from './released';

/**
 * Releases notes and marks of a round to the chosen students, all or none of them. A release is tied to the proof, the
 * references and the engine, and never changes; a release to a student who already has one is a correction with the
 * next number. Nothing is released that differs from what the page showed.
 */
export const releaseRound = operation({
  name: 'release-round',
  allow: 'release:make',
  input: releaseRoundSchema,
  run: async ({ data, now }, { exerciseId, roundNumber, to }) => {
    const context = await roundContext(data, exerciseId, roundNumber);
    const { round, course, settings, me } = context;
    const { order } = await queueOrder(data, context, now);
    const places = [...new Set(to.map(({ proofId: token }) => order.placeOf.get(token)))].flatMap((place) =>
      place === undefined ? [] : [order.counted[place]!],
    );
    const byToken = new Map((await entriesOf(data, context, order, places, now)).map((entry) => [entry.token, entry]));
    const chosen = to
      .map(({ proofId }) => byToken.get(proofId))
      .filter((entry): entry is QueueEntry => entry !== undefined);
    const [{ criteria, plan }, before] = await Promise.all([
      releasePlan(data, context, chosen),
      data.releases.numbersOf(
        round.id,
        places.map(({ memberId }) => memberId),
      ),
    ]);
    refuseUnseen(to, byToken, plan);
    const built = await buildSnapshots(data, plan, criteria, settings.referencesShown);
    const rows = plan.map(({ proofId, memberId }): NewRelease => {
      const { snapshot, referenceSetId, engine } = built.get(proofId)!;
      return {
        roundId: round.id,
        memberId,
        number: (before.get(memberId)?.number ?? 0) + 1,
        proofId,
        referenceSetId,
        engine,
        snapshot: canonicalJson(snapshot),
        releasedById: me.id,
        releasedAt: now,
      };
    });
    try {
      await data.transaction(async (inside) => {
        await inside.releases.create(rows);
        await inside.releases.markReleased(round.id);
        await inside.audit.recordAll(
          rows.map(({ memberId, number, proofId }) => ({
            courseId: course.id,
            verb: number > 1 ? 'release corrected' : 'round released',
            subject: `member:${memberId}`,
            details: { round: round.number, number, proof: proofId },
          })),
          now,
        );
      });
    } catch (error) {
      if (isTaken(error))
        throw new AppError(
          'CONFLICT',
          'Another person released to one of these students at the same moment. Nothing went out from here; the page shows the current state.',
        );
      throw error;
    }
    return { released: rows.length, corrected: rows.filter(({ number }) => number > 1).length };
  },
});

/** Every student on the list must still be as the page showed them. */
function refuseUnseen(
  to: readonly { proofId: string; seen: string }[],
  byToken: ReadonlyMap<string, QueueEntry>,
  plan: readonly PlannedRelease[],
): void {
  const seenNow = new Map(plan.map(({ proofId, seen }) => [proofId, seen]));
  const changed = to.filter(({ proofId: token, seen }) => {
    const entry = byToken.get(token);
    return !entry || seenNow.get(entry.proofId) !== seen;
  });
  if (changed.length === 0) return;
  const names = changed
    .slice(0, 5)
    .map(({ proofId }) => byToken.get(proofId)?.shownAs ?? `a proof that no longer counts (${proofId})`);
  throw new AppError(
    'CONFLICT',
    `Since this page was made, something has changed for ${names.join(', ')}${changed.length > 5 ? ` and ${changed.length - 5} more` : ''}. Nothing was released. Look at the preview again, then release.`,
  );
}

/** Exactly what one student will see once the round is released to them. */
export const previewRelease = operation({
  name: 'preview-release',
  allow: 'release:make',
  input: z.extend(roundByNumber, { proof: idSchema }),
  run: async ({ data, now }, which) => {
    const { entry, seen, snapshot, unsure } = await previewOf(data, which, now);
    return { shownAs: entry.shownAs, unsure, seen, snapshot, drawn: await drawLines(data, entry.proofId) };
  },
});

/** What would be released for one proof of the queue now, with the names of instructors in it. */
export async function previewOf(
  data: ScopedData,
  { exerciseId, roundNumber, proof }: { exerciseId: string; roundNumber: number; proof: string },
  now: Date,
) {
  const context = await roundContext(data, exerciseId, roundNumber);
  const { order } = await queueOrder(data, context, now);
  const place = order.counted[order.placeOf.get(proof) ?? -1];
  const [entry] = place ? await entriesOf(data, context, order, [place], now) : [];
  if (!entry || entry.token !== proof) throw notFound();
  const { criteria, plan } = await releasePlan(data, context, [entry]);
  const built = (await buildSnapshots(data, plan, criteria, context.settings.referencesShown)).get(entry.proofId);
  const course = await data.courses.settingsOfProof(entry.proofId);
  if (!built || !plan[0] || !course) throw notFound();
  return {
    entry,
    seen: plan[0].seen,
    snapshot: await nameInstructors(data, shownTo(built.snapshot, courseSettingsOf(course).figuresHidden)),
    unsure: unsureOf(plan[0], criteria),
  };
}

/** Where the first marker's level would count only because nothing better is known, in words for the instructor. */
function unsureOf({ marks }: PlannedRelease, criteria: readonly CriterionView[]) {
  return criteria.flatMap(({ versionId, title, levels }) => {
    const mark = marks.find(({ criterionVersionId }) => criterionVersionId === versionId);
    if (!mark || (mark.from !== 'differs' && mark.from !== 'second-waits')) return [];
    return [{ title, level: mark.level === null ? null : (levels[mark.level]?.title ?? null), from: mark.from }];
  });
}
