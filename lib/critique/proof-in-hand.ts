import { notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import { settingsOf } from '@/lib/exercise/read-exercise';
import { firstSlot } from './mark-tasks';

/** A proof as a marker has it before them: whose it is, what holds in its exercise, and whether its name may be seen. */
export async function proofInHand(data: ScopedData, token: string) {
  const proof = await data.critique.proof(token);
  if (!proof) throw notFound();
  const { round } = proof;
  const { exercise } = round;
  const settings = settingsOf(exercise);
  const [me, task, released] = await Promise.all([
    data.markTasks.marker(exercise.courseId),
    data.markTasks.byProof(proof.id, firstSlot),
    data.releases.numbersOfProof(proof.id),
  ]);
  if (!me) throw notFound();
  const hidden = settings.namesHidden && released.length === 0;
  return { proof, round, exercise, course: exercise.course, settings, me, task, hidden, released: released.length > 0 };
}

export type ProofInHand = Awaited<ReturnType<typeof proofInHand>>;
