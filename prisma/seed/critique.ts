import type { Caller } from '@/lib/access/actor';
import { beginMarking } from '@/lib/critique/begin-marking';
import { showLine, type CritiqueLine } from '@/lib/critique/show-line';
import { showQueue } from '@/lib/critique/show-queue';
import { writeNote } from '@/lib/critique/write-note';
import { finishProof } from '@/lib/marking/finish-proof';
import { giveMark } from '@/lib/marking/give-mark';
import { releaseRound } from '@/lib/release/release-round';
import { showReleasePlan } from '@/lib/release/show-release-plan';
import { faultsOf, type PairFault } from '@/shared/critique/faults';
import { spacedLetters } from '@/shared/critique/run';
import { localInstant } from './local-instant';
import { fillStockNote, firstStockNotes } from '@/shared/critique/stock-note';

type Seats = { exerciseId: string; instructorId: string; assistantId: string; timeZone: string };

const hour = 3_600_000;

/** The assistant goes through round 1, one or two notes a line on the first three lines, marks every proof; the instructor releases to all. */
export async function seedCritique({ exerciseId, instructorId, assistantId, timeZone }: Seats, now: Date): Promise<void> {
  const round = { exerciseId, roundNumber: 1 };
  // After the last late proof, and before round 2 opens at nine.
  const at = { now: localInstant(now, timeZone, -4, '07:00') };
  const assistant = person(assistantId);
  const { round: { version } } = await showQueue(assistant, round, at);
  await beginMarking(assistant, { ...round, version }, at);
  const { queue, specimens } = await showQueue(assistant, round, at);
  for (const { token } of queue) {
    for (const { id: specimenId } of specimens.slice(0, 3)) await annotate(assistant, await showLine(assistant, { proof: token, specimenId }, at), at);
    await mark(assistant, await showLine(assistant, { proof: token, specimenId: specimens[0]!.id }, at), at);
  }
  const instructor = person(instructorId);
  const out = { now: localInstant(now, timeZone, -4, '08:30') };
  const plan = await showReleasePlan(instructor, round, out);
  await releaseRound(instructor, { ...round, to: plan.rows.map(({ token, seen }) => ({ proofId: token, seen })) }, out);
}

/** In round 2 the critique has begun: a remark on the first line of the first proof, nothing released. */
export async function seedSecondCritique({ exerciseId, assistantId }: Seats, now: Date): Promise<void> {
  const at = { now: new Date(now.getTime() - 2 * hour) };
  const assistant = person(assistantId);
  const { queue, specimens } = await showQueue(assistant, { exerciseId, roundNumber: 2 }, at);
  const first = queue[0];
  if (first && specimens[0]) await annotate(assistant, await showLine(assistant, { proof: first.token, specimenId: specimens[0].id }, at), at);
}

/** The two worst pairs of a line get a stock note; the first of them with a suggestion. A line without a fault is praised. */
async function annotate(marker: Caller, { proof, line, pack, spacing, measure, comparison }: CritiqueLine, at: { now: Date }): Promise<void> {
  const letters = spacedLetters(pack);
  const faults = faultsOf(measure, comparison, line.tolerance).slice(0, 2);
  const write = (key: string, place: Pick<PairFault, 'first' | 'last'> | null, body: string, suggestion: number[] | null) =>
    writeNote(marker, {
      proofId: proof.token, specimenVersionId: line.specimenVersionId, requestKey: `demo-note-${key}`,
      fromPair: place?.first ?? null, toPair: place?.last ?? null, body, suggestion,
    }, at);
  if (faults.length === 0) await write('line', null, 'This line is well seen; nothing stands out.', null);
  for (const [index, fault] of faults.entries()) {
    const stock = firstStockNotes.find((note) => note.fault === fault.fault) ?? firstStockNotes[0]!;
    const rest = comparison?.pairs[fault.first]?.rest ?? 0;
    const suggestion = index === 0 && fault.first === fault.last && rest !== 0 ? [Math.round(spacing.offsets[fault.first]! - rest)] : null;
    await write(String(index), fault, fillStockNote(stock.body, letters.slice(fault.first, fault.last + 2), fault.fault), suggestion);
  }
}

/** Each criterion at its proposed level where the measure proposes one, else in the middle; then the proof is done. */
async function mark(marker: Caller, { proof, marks, comparison }: CritiqueLine, at: { now: Date }): Promise<void> {
  for (const { versionId, levels, proposed } of marks.criteria) {
    const level = proposed?.level ?? (comparison !== null && comparison.outside > 5 ? 0 : Math.floor(levels.length / 2));
    await giveMark(marker, { proofId: proof.token, criterionVersionId: versionId, level, version: -1, why: '' }, at);
  }
  await finishProof(marker, { proof: proof.token, to: 'done' }, at);
}

const person = (userId: string): Caller => ({ kind: 'person', userId, sessionId: 'demo', address: 'demo' });
