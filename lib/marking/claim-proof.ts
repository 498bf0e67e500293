import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { firstSlot, tasksFor } from '@/lib/critique/mark-tasks';
import { proofInHand, type ProofInHand } from '@/lib/critique/proof-in-hand';
import { proofOnly } from '@/shared/schemas/critique';

/** How long a proof stays kept for the marker who has it open; an open page asks again well before. */
export const leaseMinutes = 10;

/** Keeps a proof for one marker while it is open, so that nobody works on it twice by accident. */
export const claimProof = operation({
  name: 'claim-proof',
  allow: 'mark:give',
  input: proofOnly,
  run: async ({ data, now }, { proof: token }) => {
    const hand = await proofInHand(data, token);
    const leaseUntil = await claim(data, hand, now);
    return { keptUntil: leaseUntil.toISOString() };
  },
});

/** Takes the task of a proof, making it where there is none. @throws CONFLICT that names who has it. */
export async function claim(data: ScopedData, { proof, round, me, task: known }: ProofInHand, now: Date): Promise<Date> {
  const task = known ?? (await tasksFor(data, round.id, [proof.id], now)).get(proof.id)!;
  const leaseUntil = new Date(now.getTime() + leaseMinutes * 60_000);
  if (await data.markTasks.claim(task.id, me.id, leaseUntil, now)) return leaseUntil;
  const holder = await data.markTasks.byProof(proof.id, firstSlot);
  const who = holder?.marker?.user?.name ?? 'Another marker';
  throw new AppError('CONFLICT', holder?.state === 'done'
    ? `${who} has finished marking this proof. Your notes can still be added; for the marks, ask them to reopen it.`
    : `${who} is marking this proof. You can look and leave notes; the marks are theirs until they give it back or leave it for ${leaseMinutes} minutes.`,
  { body: { heldBy: who } });
}
