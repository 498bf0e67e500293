import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { entriesOf } from '@/lib/critique/queue';
import { queueOrder } from '@/lib/critique/queue-order';
import { roundInHand } from '@/lib/critique/round-in-hand';
import { roundOnly } from '@/shared/schemas/critique';
import { idSchema } from '@/shared/schemas/note';
import { buildSnapshots } from './build-snapshots';
import { drawLines } from './draw-lines';
import { nameTeachers } from './name-teachers';
import { releasePlan } from './release-plan';

/** Exactly what one student will see once the round is released to them. */
export const previewRelease = operation({
  name: 'preview-release',
  allow: 'release:make',
  input: z.extend(roundOnly, { proof: idSchema }),
  run: async ({ data, now }, { exerciseId, roundNumber, proof }) => {
    const hand = await roundInHand(data, exerciseId, roundNumber);
    const { order } = await queueOrder(data, hand, now);
    const place = order.counted[order.placeOf.get(proof) ?? -1];
    const [entry] = place ? await entriesOf(data, hand, order, [place], now) : [];
    if (!entry || entry.token !== proof) throw notFound();
    const { criteria, plan } = await releasePlan(data, hand, [entry]);
    const built = (await buildSnapshots(data, plan, criteria, hand.settings.referencesShown)).get(entry.proofId);
    if (!built || !plan[0]) throw notFound();
    return { shownAs: entry.shownAs, seen: plan[0].seen, snapshot: await nameTeachers(data, built.snapshot), drawn: await drawLines(data, entry.proofId) };
  },
});
