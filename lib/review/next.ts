import * as z from 'zod/mini';
import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import { roundByNumber } from '@/shared/schemas/critique';
import { idSchema } from '@/shared/schemas/id';
import { orderForMarker, secondQueue } from './second-marker';
import { claim } from './claim';
import { proofContext, roundContext, type RoundContext } from './context';
import { type InOrder, myQueue, type MyQueue, queueOrder } from './order';
import { entriesOf } from './queue';
import { firstSlot } from './tasks';

const atOnce = 20;

/**
 * Claims the next waiting proof of the queue, for this marker alone: two requests at the same moment get two proofs.
 * `after` is the proof they are leaving, which is not given again. Skipped ones follow only when all others are done or
 * claimed. `second` asks for the next of the second marking, which has its own queue.
 */
export const claimNextProof = operation({
  name: 'claim-next-proof',
  allow: 'mark:give',
  input: z.strictObject({
    ...roundByNumber.shape,
    section: z.nullable(idSchema),
    after: z.nullable(idSchema),
    second: z._default(z.boolean(), false),
  }),
  run: async (
    { data, now },
    { exerciseId, roundNumber, section, after, second },
  ): Promise<{ proof: string | null; line: string | null }> => {
    const context = await roundContext(data, exerciseId, roundNumber);
    if (second) {
      const [token, specimens] = await Promise.all([
        secondTaken(data, context, after, now),
        data.specimens.ofExercise(exerciseId),
      ]);
      return { proof: token, line: token === null ? null : (specimens[0]?.id ?? null) };
    }
    const { order } = await queueOrder(data, context, now);
    const [mine, specimens] = await Promise.all([
      myQueue(data, context, order, section),
      data.specimens.ofExercise(exerciseId),
    ]);
    const here = after === null ? undefined : mine.counted[mine.placeOf.get(after) ?? -1];
    const taken = await firstTaken(data, mine, here, { roundId: context.round.id, memberId: context.me.id, now });
    if (!taken) return { proof: null, line: null };
    const [entry] = await entriesOf(data, context, order, [taken], now);
    return { proof: entry!.token, line: specimens[0]?.id ?? null };
  },
});

type For = { roundId: string; memberId: string; now: Date };

/**
 * The first that could be claimed: from here to the end of the queue, round from its beginning, and what was skipped
 * last of all. Which are free is asked for a few at a time; the claim alone decides.
 */
async function firstTaken(
  data: ScopedData,
  mine: MyQueue,
  here: InOrder | undefined,
  { roundId, memberId, now }: For,
): Promise<InOrder | null> {
  const taken = (proofId: string) => claimed(data, proofId, now);
  for (const start of here ? [here.alias, ''] : ['']) {
    for (let after = start; ;) {
      const open = await data.markTasks.openAfter(roundId, firstSlot, after, memberId, atOnce, now);
      for (const { proofId } of open) {
        const place = mine.placeOf.get(proofId);
        if (place !== undefined && proofId !== here?.proofId && !mine.skipped.has(proofId) && (await taken(proofId)))
          return mine.counted[place]!;
      }
      if (open.length < atOnce) break;
      after = open.at(-1)!.alias;
    }
  }
  const skipped = mine.counted.filter(({ proofId }) => mine.skipped.has(proofId) && proofId !== here?.proofId);
  for (const one of skipped) if (await taken(one.proofId)) return one;
  return null;
}

/** The first second marking that could be claimed, from here on and round from the beginning. */
async function secondTaken(
  data: ScopedData,
  context: RoundContext,
  after: string | null,
  now: Date,
): Promise<string | null> {
  const places = await secondQueue(data, context, now);
  const here = places.findIndex(({ task, proofId }) => task.alias === after || proofId === after);
  const round = [...places.slice(here + 1), ...places.slice(0, Math.max(here, 0))];
  for (const { task } of orderForMarker(round)) if (await claimed(data, task.alias, now)) return task.alias;
  return null;
}

/**
 * Claims an open proof; false where another marker has it or has finished it meanwhile, or where this marker may not
 * have it.
 */
async function claimed(data: ScopedData, token: string, now: Date): Promise<boolean> {
  const context = await proofContext(data, token);
  if (context.task?.state === 'done') return false;
  try {
    await claim(data, context, now);
    return true;
  } catch (error) {
    if (error instanceof AppError && error.code === 'CONFLICT') return false;
    throw error;
  }
}

/** Puts a proof off: it is last for this marker, at once free for others. Or puts it back in order. */
export const skipProof = operation({
  name: 'skip-proof',
  allow: 'mark:give',
  input: z.strictObject({
    proof: idSchema,
    to: z.enum(['skipped', 'taken-up'], 'A proof is skipped or taken up again.'),
  }),
  run: ({ data, now }, { proof: token, to }) =>
    retryOnConflict(async () => {
      const { proof, task, me, round } = await proofContext(data, token);
      if (to === 'taken-up') await data.markSkips.remove(proof.id, me.id);
      else {
        if (!(await data.markSkips.find(proof.id, me.id))) await data.markSkips.create(proof.id, me.id, now);
        if (task) await data.markTasks.unclaim(task.id, me.id);
      }
      return { exerciseId: round.exerciseId, roundNumber: round.number, to };
    }),
});
