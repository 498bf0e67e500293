import { beforeAll, expect, it } from 'vitest';
import type { Caller } from '@/lib/access/caller';
import { getDraft, saveDraft } from '@/lib/work/drafts';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';

const now = new Date('2027-03-08T10:00:00Z');

describeOnBothDatabases('save-draft', (suite) => {
  let ids: Ids;
  let student: Caller;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
    student = { kind: 'person', userId: ids.users.student, sessionId: ids.sessions.student, address: '192.0.2.1' };
  });

  const change = (baseVersion: number, clientId: string, seq: number, offset: number) => ({
    draftId: ids.draft,
    baseVersion,
    clientId,
    seq,
    spacing: { tracking: 3, offsets: [offset] },
  });

  it('keeps a change, and keeps it once when it comes again', async () => {
    expect(await saveDraft(student, change(0, 'one', 1, -7), { now })).toEqual({ version: 1 });
    expect(await saveDraft(student, change(0, 'one', 1, -7), { now })).toEqual({ version: 1 });
    expect(await suite.db.draftChange.count({ where: { draftId: ids.draft } })).toBe(1);
    expect(await getDraft(student, { draftId: ids.draft })).toEqual({
      version: 1,
      spacing: { tracking: 3, offsets: [-7] },
    });
    // Plain statements write instants as the client reads them.
    expect((await suite.db.draft.findUniqueOrThrow({ where: { id: ids.draft } })).updatedAt).toEqual(now);
    expect(
      (await suite.db.draftChange.findFirstOrThrow({ where: { draftId: ids.draft, receivedAt: { gte: now } } }))
        .receivedAt,
    ).toEqual(now);
  });

  it('answers a change made on an older version with what it has instead, and changes nothing', async () => {
    expect(await saveDraft(student, change(0, 'two', 1, 9), { now })).toEqual({
      conflict: { version: 1, spacing: { tracking: 3, offsets: [-7] } },
    });
    expect(await suite.db.draftChange.count({ where: { draftId: ids.draft } })).toBe(1);
  });

  it('lets one of twenty at once follow a version, and tells the others what won', async () => {
    const answers = await Promise.all(
      Array.from({ length: 20 }, (_, index) => saveDraft(student, change(1, `race-${index}`, 1, index), { now })),
    );
    const made = answers.filter((answer) => 'version' in answer);
    expect(made).toEqual([{ version: 2 }]);
    const { spacing } = await getDraft(student, { draftId: ids.draft });
    for (const answer of answers) if ('conflict' in answer) expect(answer.conflict).toEqual({ version: 2, spacing });
    expect(await suite.db.draftChange.count({ where: { draftId: ids.draft } })).toBe(2);
  });

  it('answers the same change sent five times at once the same', async () => {
    const answers = await Promise.all(
      Array.from({ length: 5 }, () => saveDraft(student, change(2, 'again', 1, 40), { now })),
    );
    expect(answers).toEqual(Array.from({ length: 5 }, () => ({ version: 3 })));
  });

  it('keeps nothing of another student’s draft, of one’s own once removed, or after a version that is not there yet', async () => {
    const others = { ...change(0, 'stranger', 1, 5), draftId: ids.drafts.otherStudent };
    await expect(saveDraft(student, others, { now })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    expect(await saveDraft(student, change(9, 'ahead', 1, 5), { now })).toMatchObject({ conflict: { version: 3 } });
    await suite.db.member.update({ where: { id: ids.members.student }, data: { removedAt: now } });
    await expect(saveDraft(student, change(3, 'gone', 1, 5), { now })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await suite.db.member.update({ where: { id: ids.members.student }, data: { removedAt: null } });
    expect(await suite.db.draftChange.count({ where: { clientId: { in: ['stranger', 'ahead', 'gone'] } } })).toBe(0);
    expect(await suite.db.draft.findUniqueOrThrow({ where: { id: ids.drafts.otherStudent } })).toMatchObject({
      version: 0,
      offsets: '[0]',
    });
  });

  it('keeps a line of many gaps, and one of none', async () => {
    for (const offsets of [[], [-3, 0, 12, 2000, -2000]]) {
      await suite.db.draft.update({
        where: { id: ids.drafts.otherStudent },
        data: { version: 0, offsets: JSON.stringify(offsets.map(() => 0)), changes: { deleteMany: {} } },
      });
      const other: Caller = {
        kind: 'person',
        userId: ids.users.otherStudent,
        sessionId: ids.sessions.otherStudent,
        address: '192.0.2.1',
      };
      const sent = {
        draftId: ids.drafts.otherStudent,
        baseVersion: 0,
        clientId: 'many',
        seq: 1,
        spacing: { tracking: -4, offsets },
      };
      expect(await saveDraft(other, sent, { now })).toEqual({ version: 1 });
      expect(await getDraft(other, { draftId: sent.draftId })).toEqual({ version: 1, spacing: sent.spacing });
      await expect(
        saveDraft(
          other,
          { ...sent, baseVersion: 1, seq: 2, spacing: { tracking: 0, offsets: [...offsets, 1] } },
          { now },
        ),
      ).rejects.toMatchObject({ code: 'INVALID' });
    }
  });

  it('refuses another number of gaps, and quotes both', async () => {
    await expect(
      saveDraft(student, { ...change(3, 'long', 1, 0), spacing: { tracking: 0, offsets: [1, 2] } }),
    ).rejects.toThrow(/1 gaps?, and 2 offsets/);
  });

  it.each([[Number.NaN], [2001], [0.5], [Infinity]])('refuses an offset of %s', async (offset) => {
    await expect(saveDraft(student, change(3, 'odd', 1, offset))).rejects.toMatchObject({ code: 'INVALID' });
  });
});
