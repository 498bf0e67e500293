import type { Caller } from '@/lib/access/caller';
import { beginMarking } from '@/lib/review/counted';
import { type CritiqueLine, getProofLine } from '@/lib/review/desk';
import { getQueue } from '@/lib/review/queue';
import { answerInThread, setNoteState, writeNote } from '@/lib/review/notes';
import { database } from '@/lib/data/client';
import { answerNote } from '@/lib/release/released';
import { releaseRound } from '@/lib/release/release';
import { getReleasePlan } from '@/lib/release/plan';
import { spacedLetters } from '@/shared/critique/run';
import { localInstant } from './local-instant';
import { mark } from './mark';
import { askForSecondMarker, seedSecondMarking, settleOne } from './second-marking';
import { type Remark, remarksOn } from './remarks';

type Seats = {
  exerciseId: string;
  instructorId: string;
  assistantId: string;
  secondAssistantId: string;
  timeZone: string;
};

const hour = 3_600_000;

type At = { now: Date };

/**
 * The assistant goes through round 1, with notes on the first three lines and on the fourth of every third proof, and
 * marks every proof; a second marker looks at a share of them, the instructor settles one difference and releases to
 * all. A few students answer.
 */
export async function seedCritique(
  { exerciseId, instructorId, assistantId, secondAssistantId, timeZone }: Seats,
  now: Date,
): Promise<void> {
  const round = { exerciseId, roundNumber: 1 };
  // After the last late proof, and before round 2 opens at nine.
  const at = { now: localInstant(now, timeZone, -4, '07:00') };
  const [instructor, assistant] = [person(instructorId), person(assistantId)];
  const {
    round: { version },
  } = await getQueue(assistant, round, at);
  await beginMarking(assistant, { ...round, version }, at);
  const { queue, specimens, round: begun } = await getQueue(assistant, round, at);
  await askForSecondMarker(instructor, round, begun.version, at);
  const written: WrittenNote[] = [];
  for (const [place, { token }] of queue.entries()) {
    const shown: CritiqueLine[] = [];
    for (const { id: specimenId } of specimens.slice(0, place % 3 === 0 ? 4 : 3))
      shown.push(await getProofLine(assistant, { proof: token, specimenId }, at));
    for (const [turn, line] of shown.entries()) written.push(...(await annotate(assistant, line, place + turn, at)));
    await mark(assistant, shown[0]!, at);
  }
  await seedSecondMarking(person(secondAssistantId), round, specimens[0]!.id, at);
  await settleOne(instructor, round, at);
  const out = { now: localInstant(now, timeZone, -4, '08:30') };
  const plan = await getReleasePlan(instructor, round, out);
  await releaseRound(instructor, { ...round, to: plan.rows.map(({ token, seen }) => ({ proofId: token, seen })) }, out);
  await answer(assistant, written, { now: localInstant(now, timeZone, -3, '20:00') });
}

/** In round 2 the critique has begun: a remark on the first line of the first proof, nothing released. */
export async function seedSecondCritique(
  { exerciseId, assistantId }: Pick<Seats, 'exerciseId' | 'assistantId'>,
  now: Date,
): Promise<void> {
  const at = { now: new Date(now.getTime() - 2 * hour) };
  const assistant = person(assistantId);
  const { queue, specimens } = await getQueue(assistant, { exerciseId, roundNumber: 2 }, at);
  const first = queue[0];
  if (first && specimens[0])
    await annotate(
      assistant,
      await getProofLine(assistant, { proof: first.token, specimenId: specimens[0].id }, at),
      0,
      at,
    );
}

/** Writes what there is to say of a line that has a reference. @returns the notes, with what they say. */
export async function annotate(
  marker: Caller,
  { proof, line, pack, spacing, measure, comparison }: CritiqueLine,
  turn: number,
  at: At,
): Promise<WrittenNote[]> {
  if (!measure || !comparison) return [];
  const builtIn = pack.builtIn.map((units) => (units * 1000) / pack.unitsPerEm);
  const remarks = remarksOn({ letters: spacedLetters(pack), builtIn, spacing, measure, comparison }, turn);
  const written: WrittenNote[] = [];
  for (const [index, { says, at: place, body, suggestion }] of remarks.entries()) {
    const { id } = await writeNote(
      marker,
      {
        proofId: proof.token,
        specimenVersionId: line.specimenVersionId,
        requestKey: `demo-note-${index}`,
        fromPair: place?.first ?? null,
        toPair: place?.last ?? null,
        body,
        suggestion,
      },
      at,
    );
    written.push({ id, says });
  }
  return written;
}

type WrittenNote = { id: string; says: Remark['says'] };

/** Students' replies to released notes, by the notes' words, and the assistant's answers. */
const answers: Partial<Record<Remark['says'], { student: string; assistant: string }>> = {
  wide: {
    student: 'I see it now: with the line on its head it is a hole.',
    assistant: 'Yes. Look at it that way again before you send the next proof.',
  },
  tight: {
    student: 'On my screen it looked fine. At its true size I see it.',
    assistant: 'Good. Judge this line at its true size only.',
  },
  right: {
    student: 'I had looked at one side of the letter only.',
    assistant: 'Three letters at a time, then both sides are in view.',
  },
  'whole-tight': {
    student: 'Should I open the small lines as much?',
    assistant: 'Yes, and more: small type wants more air.',
  },
};

/** One note of each of these kinds is answered, and the first thread is settled. */
async function answer(assistant: Caller, notes: readonly WrittenNote[], at: At): Promise<void> {
  for (const [says, { student, assistant: reply }] of Object.entries(answers)) {
    const note = notes.find((one) => one.says === says);
    if (!note) continue;
    const { proofItem } = await database().note.findUniqueOrThrow({
      where: { id: note.id },
      select: { proofItem: { select: { proof: { select: { member: { select: { userId: true } } } } } } },
    });
    const { userId } = proofItem.proof.member;
    if (!userId) continue;
    await answerNote(person(userId), { noteId: note.id, afterSeq: 1, body: student }, at);
    const { version } = await answerInThread(assistant, { noteId: note.id, afterSeq: 2, body: reply }, at);
    if (says === 'wide') await setNoteState(assistant, { noteId: note.id, version, to: 'settled' }, at);
  }
}

const person = (userId: string): Caller => ({ kind: 'person', userId, sessionId: 'demo', address: 'demo' });
