import type { Caller } from '@/lib/access/caller';
import { beginMarking } from '@/lib/review/counted';
import { type CritiqueLine, getProofLine } from '@/lib/review/desk';
import { getQueue } from '@/lib/review/queue';
import { writeNote } from '@/lib/review/notes';
import { releaseRound } from '@/lib/release/release';
import { getReleasePlan } from '@/lib/release/plan';
import { faultsOf, type PairFault } from '@/shared/critique/faults';
import { spacedLetters } from '@/shared/critique/run';
import { localInstant } from './local-instant';
import { mark } from './mark';
import { askForSecondMarker, seedSecondMarking, settleOne } from './second-marking';
import { fillStockNote, firstStockNotes } from '@/shared/critique/stock-note';

type Seats = {
  exerciseId: string;
  instructorId: string;
  assistantId: string;
  secondAssistantId: string;
  timeZone: string;
};

const hour = 3_600_000;

/**
 * The assistant goes through round 1, one or two notes a line on the first three lines, and marks every proof; a second
 * marker looks at a share of them, the instructor settles one difference and releases to all.
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
  for (const { token } of queue) {
    for (const { id: specimenId } of specimens.slice(0, 3))
      await annotate(assistant, await getProofLine(assistant, { proof: token, specimenId }, at), at);
    await mark(assistant, await getProofLine(assistant, { proof: token, specimenId: specimens[0]!.id }, at), at);
  }
  await seedSecondMarking(person(secondAssistantId), round, specimens[0]!.id, at);
  await settleOne(instructor, round, at);
  const out = { now: localInstant(now, timeZone, -4, '08:30') };
  const plan = await getReleasePlan(instructor, round, out);
  await releaseRound(instructor, { ...round, to: plan.rows.map(({ token, seen }) => ({ proofId: token, seen })) }, out);
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
      at,
    );
}

/** The two worst pairs of a line get a stock note; the first of them with a suggestion. A line without a fault is praised. */
async function annotate(
  marker: Caller,
  { proof, line, pack, spacing, measure, comparison }: CritiqueLine,
  at: { now: Date },
): Promise<void> {
  const letters = spacedLetters(pack);
  const faults = faultsOf(measure, comparison).slice(0, 2);
  const write = (
    key: string,
    place: Pick<PairFault, 'first' | 'last'> | null,
    body: string,
    suggestion: number[] | null,
  ) =>
    writeNote(
      marker,
      {
        proofId: proof.token,
        specimenVersionId: line.specimenVersionId,
        requestKey: `demo-note-${key}`,
        fromPair: place?.first ?? null,
        toPair: place?.last ?? null,
        body,
        suggestion,
      },
      at,
    );
  if (faults.length === 0) await write('line', null, 'This line is well judged; no gap is conspicuous.', null);
  for (const [index, fault] of faults.entries()) {
    const stock = firstStockNotes.find((note) => note.fault === fault.fault) ?? firstStockNotes[0]!;
    const rest = comparison?.pairs[fault.first]?.rest ?? 0;
    const suggestion =
      index === 0 && fault.first === fault.last && rest !== 0
        ? [Math.round(spacing.offsets[fault.first]! - rest)]
        : null;
    await write(
      String(index),
      fault,
      fillStockNote(stock.body, letters.slice(fault.first, fault.last + 2), fault.fault),
      suggestion,
    );
  }
}

const person = (userId: string): Caller => ({ kind: 'person', userId, sessionId: 'demo', address: 'demo' });
