import { beforeAll, expect, it } from 'vitest';
import { answerInThread, editNote, setNoteState, writeNote } from '@/lib/review/notes';
import { getProofLine } from '@/lib/review/desk';
import { currentBody } from '@/shared/critique/run';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { allAtOnce, callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

describeOnBothDatabases('notes', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const note = (key: string, over = {}) => ({
    proofId: ids.nextProof,
    specimenVersionId: ids.specimenVersion,
    requestKey: key,
    fromPair: 0,
    toPair: 0,
    body: 'Close this.',
    suggestion: [-9],
    ...over,
  });

  it('sent many times with one key are one note', async () => {
    const { done } = await allAtOnce(
      Array.from({ length: 8 }, () => () => writeNote(as('assistant'), note('the-same-key'), { now })),
    );
    expect(done).toBe(8);
    expect(await suite.db.note.count({ where: { requestKey: 'the-same-key' } })).toBe(1);
    expect(await suite.db.noteEntry.count({ where: { note: { requestKey: 'the-same-key' } } })).toBe(1);
  });

  it('refuse a pair the line does not have, and a suggestion of another length, in words', async () => {
    await expect(
      writeNote(as('assistant'), note('key-of-bad-1', { fromPair: 3, toPair: 3 }), { now }),
    ).rejects.toMatchObject({ code: 'INVALID', userMessage: expect.stringContaining('The line has 1 pairs; pair 4') });
    await expect(
      writeNote(as('assistant'), note('key-of-bad-2', { suggestion: [1, 2] }), { now }),
    ).rejects.toMatchObject({ code: 'INVALID', userMessage: expect.stringContaining('2 offsets') });
  });

  it('change once for one version, whoever tries at the same moment, and keep what they said before', async () => {
    const made = await writeNote(as('assistant'), note('key-of-edited'), { now });
    const edit = (body: string) => () =>
      editNote(as('instructor'), { noteId: made.id, version: made.version, body, suggestion: [-12] }, { now });
    const { done, refused } = await allAtOnce(['one', 'two', 'three', 'four'].map(edit));
    expect(done).toBe(1);
    expect(refused).toEqual(['CONFLICT', 'CONFLICT', 'CONFLICT']);
    const entries = await suite.db.noteEntry.findMany({ where: { noteId: made.id }, orderBy: { seq: 'asc' } });
    expect(entries.map(({ seq, replacesSeq }) => [seq, replacesSeq])).toEqual([
      [1, null],
      [2, 1],
    ]);
    expect(entries[0]!.body).toBe('Close this.');
  });

  it('tell who read an older version what they say now', async () => {
    const made = await writeNote(as('assistant'), note('key-of-stale'), { now });
    await editNote(as('assistant'), { noteId: made.id, version: 0, body: 'Open it.', suggestion: null }, { now });
    await expect(
      editNote(as('instructor'), { noteId: made.id, version: 0, body: 'Mine.', suggestion: null }, { now }),
    ).rejects.toMatchObject({ code: 'CONFLICT', userMessage: expect.stringContaining('Open it.') });
  });

  it('keep every answer, each in its own place, and one that comes twice once', async () => {
    const made = await writeNote(as('assistant'), note('key-of-thread'), { now });
    const bodies = Array.from({ length: 6 }, (_, index) => `Answer ${index}`);
    const { done } = await allAtOnce(
      bodies.map((body) => () => answerInThread(as('instructor'), { noteId: made.id, afterSeq: 1, body }, { now })),
    );
    expect(done).toBe(6);
    await answerInThread(as('instructor'), { noteId: made.id, afterSeq: 1, body: 'Answer 0' }, { now });
    const entries = await suite.db.noteEntry.findMany({ where: { noteId: made.id }, orderBy: { seq: 'asc' } });
    expect(entries.map(({ seq }) => seq)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(
      entries
        .slice(1)
        .map(({ body }) => body)
        .sort(),
    ).toEqual(bodies);
  });

  it('are taken away and brought back, never deleted', async () => {
    const made = await writeNote(as('assistant'), note('key-of-removed'), { now });
    const removed = await setNoteState(as('assistant'), { noteId: made.id, version: 0, to: 'removed' }, { now });
    const at = { proof: ids.nextProof, specimenId: ids.specimen };
    expect((await getProofLine(as('assistant'), at, { now })).notes.map(({ id }) => id)).not.toContain(made.id);
    await setNoteState(as('assistant'), { noteId: made.id, version: removed.version, to: 'restored' }, { now });
    expect((await getProofLine(as('assistant'), at, { now })).notes.map(({ id }) => id)).toContain(made.id);
  });

  it('of the round before come with how their pair has moved since', async () => {
    const line = await getProofLine(as('assistant'), { proof: ids.nextProof, specimenId: ids.specimen }, { now });
    // Both proofs of this world hold −4; the note suggested −10.
    expect(line.earlier).toEqual([
      {
        id: ids.note,
        round: 1,
        body: 'A little closer.',
        fromPair: 0,
        toPair: 0,
        changes: [{ pair: 0, then: -4, now: -4, moved: 0, toward: 'same' }],
      },
    ]);
    expect(currentBody(line.notes[0]!.entries)).toBe('Not released yet.');
  });
});
