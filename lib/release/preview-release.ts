import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { entriesOf } from '@/lib/review/queue';
import { queueOrder } from '@/lib/review/order';
import { roundInHand } from '@/lib/review/context';
import type { ScopedData } from '@/lib/data';
import type { CriterionView } from '@/lib/rows/exercise';
import { roundByNumber } from '@/shared/schemas/critique';
import { idSchema } from '@/shared/schemas/id';
import { buildSnapshots } from './build-snapshots';
import { drawLines } from './draw-lines';
import { nameTeachers } from './name-teachers';
import { releasePlan, type PlannedRelease } from './release-plan';

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

/** What would go out for one proof of the queue now, with the names of teachers in it. */
export async function previewOf(
  data: ScopedData,
  { exerciseId, roundNumber, proof }: { exerciseId: string; roundNumber: number; proof: string },
  now: Date,
) {
  const hand = await roundInHand(data, exerciseId, roundNumber);
  const { order } = await queueOrder(data, hand, now);
  const place = order.counted[order.placeOf.get(proof) ?? -1];
  const [entry] = place ? await entriesOf(data, hand, order, [place], now) : [];
  if (!entry || entry.token !== proof) throw notFound();
  const { criteria, plan } = await releasePlan(data, hand, [entry]);
  const built = (await buildSnapshots(data, plan, criteria, hand.settings.referencesShown)).get(entry.proofId);
  if (!built || !plan[0]) throw notFound();
  return {
    entry,
    seen: plan[0].seen,
    snapshot: await nameTeachers(data, built.snapshot),
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
