import type { Caller } from '@/lib/access/caller';
import { openBench } from '@/lib/work/bench';
import { saveDraft } from '@/lib/work/drafts';
import { sendProof } from '@/lib/work/proofs';
import { getWork } from '@/lib/work/overview';
import { type HabitAt, habitsOfStudents, spacingBy } from './habits';
import { localInstant } from './local-instant';
import { type OwnSpacing, ownSpacings } from './own-spacing';

const hour = 3_600_000;

/** Round 1: all but the last two send; one sends twice, one is late, and two send the very same. */
export async function seedFirstRound({ exerciseId, studentIds, timeZone }: Seats, now: Date): Promise<void> {
  const sending = studentIds.slice(0, Math.max(1, studentIds.length - 2));
  for (const [index, userId] of sending.entries()) {
    // The last of them has looked over the shoulder of the first.
    const like = index === sending.length - 1 && index > 0 ? 0 : index;
    // The round was due at six in the evening, five days ago.
    const at =
      index === 3 ? localInstant(now, timeZone, -5, '23:00') : new Date(now.getTime() - (6 + (index % 9)) * 24 * hour);
    await setLines(userId, exerciseId, ownSpacings, { student: like }, at);
    const says = habitsOfStudents[like % habitsOfStudents.length]!.says[0]!;
    if (index === 2) await send(userId, exerciseId, 'first-thoughts', says, new Date(at.getTime() - hour));
    await send(userId, exerciseId, 'round-1', says, at);
  }
}

/** Round 2: a third of them have been at it again, each nearer than before. */
export async function seedSecondRound({ exerciseId, studentIds }: Seats, now: Date): Promise<void> {
  for (const [index, userId] of studentIds.slice(0, Math.ceil(studentIds.length / 3)).entries()) {
    const at = new Date(now.getTime() - (2 + index) * 7 * hour);
    await setLines(userId, exerciseId, ownSpacings, { student: index, round: 'second' }, at);
    await send(userId, exerciseId, 'round-2', habitsOfStudents[index % habitsOfStudents.length]!.says[1]!, at);
  }
}

type Seats = { exerciseId: string; studentIds: readonly string[]; timeZone: string };

/** Sets every line of an exercise with this student's habits. */
export async function setLines(
  userId: string,
  exerciseId: string,
  spacings: readonly OwnSpacing[],
  habit: Omit<HabitAt, 'place'>,
  at: Date,
): Promise<void> {
  const { lines } = await getWork(person(userId), { exerciseId }, { now: at });
  for (const [place, { specimenId }] of lines.entries()) {
    const { draft, line } = await openBench(person(userId), { exerciseId, specimenId }, { now: at });
    const spacing = spacingBy(line.pack, spacings[place]!, { ...habit, place });
    await saveDraft(
      person(userId),
      { draftId: draft.id, baseVersion: draft.version, clientId: `demo-${at.getTime()}`, seq: 1, spacing },
      { now: at },
    );
  }
}

export async function send(
  userId: string,
  exerciseId: string,
  requestKey: string,
  reasoning: string,
  at: Date,
): Promise<void> {
  await sendProof(person(userId), { exerciseId, requestKey: `demo-${requestKey}`, reasoning, zoom: 1 }, { now: at });
}

const person = (userId: string): Caller => ({ kind: 'person', userId, sessionId: 'demo', address: 'demo' });
