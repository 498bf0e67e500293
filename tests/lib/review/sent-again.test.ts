import { beforeEach, expect, it } from 'vitest';
import { chooseProof } from '@/lib/review/counted';
import { getProofLine } from '@/lib/review/desk';
import { giveMark } from '@/lib/review/marks';
import { setNoteState, writeNote } from '@/lib/review/notes';
import { getQueue } from '@/lib/review/queue';
import { saveDraft } from '@/lib/work/drafts';
import { getWork } from '@/lib/work/overview';
import { getProof, sendProof } from '@/lib/work/proofs';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { emptyAll } from '@/tests/fixtures/empty-all';
import { callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');
const minutes = (count: number) => new Date(now.getTime() + count * 60_000);

/** Notes and marks are given before “Begin marking”, and then the student sends again. Round 2 is due in six days. */
describeOnBothDatabases('a proof sent again after critique has begun', (suite) => {
  let ids: Ids;
  let version = 0;
  beforeEach(async () => {
    await emptyAll(suite);
    ids = await fillWorld(suite.db, now);
    version = 0;
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const round = () => ({ exerciseId: ids.exercise, roundNumber: 2 });
  const write = (proofId: string, key: string, over = {}, at = now) =>
    writeNote(
      as('assistant'),
      {
        proofId,
        specimenVersionId: ids.specimenVersion,
        requestKey: key,
        fromPair: 0,
        toPair: 0,
        body: `Note ${key}`,
        suggestion: null,
        ...over,
      },
      { now: at },
    );
  const mark = (proofId: string, at = now) =>
    giveMark(
      as('assistant'),
      { proofId, criterionVersionId: ids.criterionVersion, level: 2, version: -1, why: '' },
      { now: at },
    );
  async function sendAgain(offset: number, at: Date, key = 'again-and-again') {
    await saveDraft(
      as('student'),
      {
        draftId: ids.draft,
        baseVersion: version,
        clientId: 'bench',
        seq: version + 1,
        spacing: { tracking: 0, offsets: [offset] },
      },
      { now: at },
    );
    version += 1;
    return sendProof(
      as('student'),
      { exerciseId: ids.exercise, requestKey: key, reasoning: 'Once more.' },
      { now: at },
    );
  }
  const desk = (proof: string, at = minutes(60)) =>
    getProofLine(as('assistant'), { proof, specimenId: ids.specimen }, { now: at });
  const bodies = async (proof: string) => (await desk(proof)).notes.map(({ entries }) => entries[0]!.body);
  const inQueue = async () => (await getQueue(as('assistant'), round(), { now: minutes(60) })).queue;
  const dueSince = (at: Date) =>
    suite.db.$transaction([
      suite.db.round.update({ where: { id: ids.nextRound }, data: { dueAt: at } }),
      suite.db.roundExtension.deleteMany({ where: { roundId: ids.nextRound } }),
    ]);

  it('before the round is due: notes on an unchanged pair go along, once, however often they are sent', async () => {
    await write(ids.nextProof, 'on-the-pair');
    const again = await sendAgain(-4, minutes(5));
    await write(ids.nextProof, 'on-the-pair', {}, minutes(6));
    expect(await bodies(again.proofId)).toEqual(['Not released yet.', 'Note on-the-pair']);
    expect(await bodies(ids.nextProof)).toEqual([]);
  });

  it('before the round is due: notes on a changed pair stay readable on the earlier proof, and the desk says so', async () => {
    await write(ids.nextProof, 'on-the-line', { fromPair: null, toPair: null });
    const again = await sendAgain(-9, minutes(5));
    expect(await bodies(again.proofId)).toEqual([]);
    expect(await bodies(ids.nextProof)).toEqual(['Not released yet.', 'Note on-the-line']);
    expect((await desk(again.proofId)).sentAgain).toMatchObject([{ number: 1, token: ids.nextProof, notes: 2 }]);
  });

  it('before the round is due: marks say “look again” and count only when they are given again', async () => {
    await mark(ids.nextProof);
    const again = await sendAgain(-9, minutes(5));
    const shown = await desk(again.proofId);
    expect(shown.sentAgain).toMatchObject([{ number: 1, marks: [{ title: 'Evenness', level: 'Even' }] }]);
    expect(shown.marks.criteria[0]!.mark.level).toBeNull();
    expect(await inQueue()).toMatchObject([{ token: again.proofId, lookAgain: true }]);
    await mark(again.proofId, minutes(10));
    expect(await inQueue()).toMatchObject([{ token: again.proofId, lookAgain: false }]);
  });

  it('a note that is written on the earlier proof while the later one arrives goes along too', async () => {
    const again = await sendAgain(-4, minutes(5));
    await write(ids.nextProof, 'too-late-for-it', {}, minutes(6));
    expect(await bodies(again.proofId)).toContain('Note too-late-for-it');
  });

  it('notes withdrawn and notes that a release shows stay where they are', async () => {
    const withdrawn = await write(ids.nextProof, 'withdrawn-one');
    await setNoteState(as('assistant'), { noteId: withdrawn.id, version: 0, to: 'removed' }, { now });
    const again = await sendAgain(-4, minutes(5));
    expect(await bodies(again.proofId)).toEqual(['Not released yet.']);
    const note = await suite.db.note.findUniqueOrThrow({ where: { id: withdrawn.id } });
    expect(note.proofItemId).toBe(ids.nextProofItem);
    const released = await suite.db.note.findUniqueOrThrow({ where: { id: ids.note } });
    expect(released.proofItemId).toBe(ids.proofItem);
  });

  it.each(['note', 'mark'] as const)('after the round is due the first %s fixes the proof', async (kind) => {
    await dueSince(minutes(-60));
    if (kind === 'note') await write(ids.nextProof, 'the-first-one');
    else await mark(ids.nextProof);
    const again = await sendAgain(-9, minutes(5));
    expect(again).toMatchObject({ counts: false, critiqueBegun: true });
    expect(await inQueue()).toMatchObject([{ token: ids.nextProof, later: [{ number: 2 }] }]);
    expect((await desk(again.proofId)).proof.counts).toBe(false);
    expect(await getProof(as('student'), { proofId: ids.nextProof }, { now: minutes(6) })).toMatchObject({
      counts: 'counts',
    });
    expect(await getProof(as('student'), { proofId: again.proofId }, { now: minutes(6) })).toMatchObject({
      counts: 'kept',
    });
  });

  it('after the round is due a late proof counts as long as nothing has been said about the one before since', async () => {
    await dueSince(minutes(-60));
    const again = await sendAgain(-9, minutes(5));
    expect(again).toMatchObject({ counts: true });
    expect(await inQueue()).toMatchObject([{ token: again.proofId, later: [] }]);
  });

  it('an extension moves the due date of its own student: until then the later proof counts', async () => {
    await suite.db.round.update({ where: { id: ids.nextRound }, data: { dueAt: minutes(-60) } });
    await mark(ids.nextProof);
    const again = await sendAgain(-9, minutes(5));
    expect(again).toMatchObject({ counts: true, critiqueBegun: true });
    expect(await inQueue()).toMatchObject([{ token: again.proofId }]);
  });

  it('what counts can be put right by the instructor; notes on unchanged pairs follow', async () => {
    await dueSince(minutes(-60));
    await write(ids.nextProof, 'the-first-one');
    const again = await sendAgain(-4, minutes(5));
    expect(await bodies(again.proofId)).toEqual([]);
    await chooseProof(as('instructor'), { proof: again.proofId }, { now: minutes(7) });
    expect(await bodies(again.proofId)).toContain('Note the-first-one');
    expect(await inQueue()).toMatchObject([{ token: again.proofId }]);
  });

  it('the student is told which of their proofs counts', async () => {
    const again = await sendAgain(-9, minutes(5));
    expect(again).toMatchObject({ counts: true, critiqueBegun: true });
    const work = await getWork(as('student'), { exerciseId: ids.exercise }, { now: minutes(6) });
    expect(work.proofs.filter((proof) => proof.round === 2).map(({ number, counts }) => [number, counts])).toEqual([
      [2, 'counts'],
      [1, 'replaced'],
    ]);
  });
});
