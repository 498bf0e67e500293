import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { proofOnly } from '@/shared/schemas/critique';
import { idSchema } from '@/shared/schemas/id';
import { proofContext, type ProofContext } from './context';
import { firstSlot, type MarkTaskRow, secondSlot, tasksFor } from './tasks';

/** How long a proof stays claimed for the marker who has it open; an open page renews it well before. */
export const leaseMinutes = 10;

/** Claims a proof for one marker while it is open, so that two don't work on it by accident. */
export const claimProof = operation({
  name: 'claim-proof',
  allow: 'mark:give',
  input: proofOnly,
  run: async ({ data, now }, { proof: token }) => {
    const context = await proofContext(data, token);
    const { leaseUntil } = await claim(data, context, now);
    return { keptUntil: leaseUntil.toISOString() };
  },
});

type Held = { taskId: string; leaseUntil: Date };

/** Takes the task of a proof, making it where there is none. @throws CONFLICT that names who has it. */
export async function claim(
  data: ScopedData,
  { proof, round, me, slot, task: known }: ProofContext,
  now: Date,
): Promise<Held> {
  const leaseUntil = new Date(now.getTime() + leaseMinutes * 60_000);
  if (known && (await data.markTasks.renew(known.id, me.id, leaseUntil))) return { taskId: known.id, leaseUntil };
  await tasksFor(data, round.id, [proof.id], now);
  for (let attempt = 0; attempt < 20; attempt += 1) {
    // The first marking's version is read before anything else: it is the version of the whole proof (see below).
    const first = await data.markTasks.byProof(proof.id, firstSlot);
    const task = slot === firstSlot ? first : await data.markTasks.byProof(proof.id, secondSlot);
    if (!first || !task) throw notFound();
    const parts = await data.markTasks.partsOf([proof.id], me.id);
    if (parts.some((part) => part.slot !== slot && part.slot !== 'settled')) throw ownWork(slot);
    const taken =
      slot === firstSlot
        ? await data.markTasks.take(first, me.id, leaseUntil, now)
        : await takeSecond(data, first, task, me.id, leaseUntil, now);
    if (taken) return { taskId: task.id, leaseUntil };
    const held = await data.markTasks.byProof(proof.id, slot);
    if (held && !mayBeTaken(held, me.id, now)) throw heldBy(held);
  }
  throw new AppError('CONFLICT', 'Many people opened this proof at the same moment. Nothing was lost; open it again.');
}

/**
 * Claims the second marking. No member may have both, and one unique key can't compare two rows; so claiming either
 * also takes a version of the first: of two that begin at the same version one has to look again.
 */
async function takeSecond(
  data: ScopedData,
  first: MarkTaskRow,
  second: MarkTaskRow,
  memberId: string,
  leaseUntil: Date,
  now: Date,
): Promise<boolean> {
  try {
    await data.transaction(async (inside) => {
      const both =
        (await inside.markTasks.touch(first)) && (await inside.markTasks.take(second, memberId, leaseUntil, now));
      if (!both) throw new Stale();
    });
    return true;
  } catch (error) {
    if (error instanceof Stale) return false;
    throw error;
  }
}

/** Undoes the transaction it is thrown in. */
class Stale extends Error {}

const mayBeTaken = ({ markerId, state, leaseUntil }: MarkTaskRow, memberId: string, now: Date): boolean =>
  markerId === null || markerId === memberId || (state === 'open' && (leaseUntil === null || leaseUntil < now));

const ownWork = (slot: string): AppError =>
  new AppError(
    'CONFLICT',
    slot === secondSlot
      ? 'You have a part in the first marking of this proof, so another marker has to be the second.'
      : 'You are the second marker of this proof, so its first marking is for another marker.',
  );

function heldBy({ state, marker }: MarkTaskRow): AppError {
  const who = marker?.user?.name ?? 'Another marker';
  return new AppError(
    'CONFLICT',
    state === 'done'
      ? `${who} has finished marking this proof. Your notes can still be added; for the marks, ask them to reopen it.`
      : `${who} is marking this proof. You can look and leave notes; the marks are theirs until they give it back or leave it for ${leaseMinutes} minutes.`,
    { body: { heldBy: who } },
  );
}

/** Lets go of a proof, so that another marker can take it at once. Marks and notes stay. */
export const unclaimProof = operation({
  name: 'unclaim-proof',
  allow: 'mark:give',
  input: proofOnly,
  run: async ({ data, now: _now }, { proof: token }) => {
    const { task, me } = await proofContext(data, token);
    if (!task) throw notFound();
    return { givenBack: await data.markTasks.unclaim(task.id, me.id) };
  },
});

/** Says that a proof is marked, or opens it again. It goes out only when the instructor releases it. */
export const finishProof = operation({
  name: 'finish-proof',
  allow: 'mark:give',
  input: z.strictObject({ proof: idSchema, to: z.enum(['done', 'open'], 'A proof is open or done.') }),
  run: async ({ data, now }, { proof: token, to }) => {
    const context = await proofContext(data, token);
    const { proof, me, course, exercise, task } = context;
    if (to === 'done') {
      const unmarked = await unmarkedCriteria(context);
      if (unmarked.length > 0)
        throw new AppError('INVALID', `Not marked yet: ${unmarked.join(', ')}. Give each a level, then finish.`);
      await claim(data, context, now);
    }
    if (!task) throw notFound();
    if (to === 'open' && context.two === 'done') {
      throw new AppError(
        'CONFLICT',
        'Both markers have finished this proof and can see each other’s marks, so these marks can no longer be changed. To change what counts, settle it with a reason on the agreement page.',
      );
    }
    if (!(await data.markTasks.setState(task.id, me.id, to, now))) {
      throw new AppError(
        'CONFLICT',
        `${task.marker?.user?.name ?? 'Another marker'} marked this proof; only they can open it again.`,
      );
    }
    await data.audit.record(
      { courseId: course.id, verb: to === 'done' ? 'proof marked' : 'proof reopened', subject: `proof:${proof.id}` },
      now,
    );
    return { state: to };

    async function unmarkedCriteria({ task: at }: typeof context): Promise<string[]> {
      const [criteria, marks] = await Promise.all([
        data.criteria.ofExercise(exercise.id),
        at ? data.marks.ofTasks([at.id]) : [],
      ]);
      const marked = new Set(
        marks.filter(({ level }) => level !== null).map(({ criterionVersionId }) => criterionVersionId),
      );
      return criteria
        .flatMap(({ versions }) => versions)
        .filter(({ id }) => !marked.has(id))
        .map(({ title }) => `“${title}”`);
    }
  },
});
