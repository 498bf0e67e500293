import { beforeAll, expect, it } from 'vitest';
import type { Caller } from '@/lib/access/caller';
import { newId } from '@/lib/data/ids';
import { openBench } from '@/lib/work/bench';
import { saveDraft } from '@/lib/work/drafts';
import { getSameText } from '@/lib/work/same-text';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';

const now = new Date('2027-03-08T10:00:00Z');
const at = { now };

describeOnBothDatabases('lines of one text together', (suite) => {
  let ids: Ids;
  let small: string;
  const caller = (who: 'student' | 'otherStudent' | 'instructor'): Caller => ({
    kind: 'person',
    userId: ids.users[who],
    sessionId: ids.sessions[who],
    address: '192.0.2.1',
  });
  const together = (who: Parameters<typeof caller>[0], more = {}) =>
    getSameText(caller(who), { exerciseId: ids.exercise, ...more }, at);
  const bench = (who: Parameters<typeof caller>[0], specimenId: string, more = {}) =>
    openBench(caller(who), { exerciseId: ids.exercise, specimenId, ...more }, at);
  const save = async (who: Parameters<typeof caller>[0], specimenId: string, offset: number, more = {}) => {
    const { draft } = await bench(who, specimenId, more);
    const spacing = { tracking: 2, offsets: [offset] };
    expect(
      await saveDraft(
        caller(who),
        { draftId: draft.id, baseVersion: draft.version, clientId: 'bench', seq: draft.version + 1, spacing },
        at,
      ),
    ).toEqual({ version: draft.version + 1 });
    return spacing;
  };

  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
    small = newId();
    await suite.db.specimen.create({ data: { id: small, exerciseId: ids.exercise, position: 2, createdAt: now } });
  });

  it('has nothing to show while no text stands more than once, and no other text', async () => {
    expect(await together('student')).toMatchObject({ text: null, texts: [], lines: [] });
    await expect(together('student', { text: 'HO' })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await suite.db.specimenVersion.create({
      data: {
        id: newId(),
        specimenId: small,
        number: 1,
        text: 'HO',
        packSha: 'a'.repeat(64),
        size: 24,
        unit: 'px',
        ground: 'light',
        createdAt: now,
      },
    });
  });

  it('shows a student their own drafts, small before large', async () => {
    await save('student', ids.specimen, -30);
    await save('otherStudent', ids.specimen, 99);
    const { lines, text, texts } = await together('student', { text: 'HO' });
    expect([text, texts]).toEqual(['HO', [{ text: 'HO', count: 2 }]]);
    expect(lines.map(({ specimenId, place, touched, spacing }) => ({ specimenId, place, touched, spacing }))).toEqual([
      { specimenId: small, place: 2, touched: false, spacing: { tracking: 0, offsets: [0] } },
      { specimenId: ids.specimen, place: 1, touched: true, spacing: { tracking: 2, offsets: [-30] } },
    ]);
    await expect(together('student', { text: 'OH' })).rejects.toMatchObject({ code: 'NOT_FOUND' });
  });

  it('tells how the gaps follow size only where the bench may tell evenness: to staff, and after a proof of the round', async () => {
    // The exercise shows nothing before a proof, evenness after it; the student sent one in this round, the other did
    // not.
    expect((await together('otherStudent')).response).toBeNull();
    expect((await together('otherStudent')).shownAfter).toBe(2);
    expect((await together('student')).response?.points.map(({ pixels, added }) => [pixels, added])).toEqual([
      [24, 0],
      [96, -28],
    ]);
    expect((await together('instructor')).response?.points).toHaveLength(2);
  });

  it('offers the setting of another line as a start and replaces nothing', async () => {
    const { start, draft, ofThisText: count } = await bench('student', small, { start: ids.specimen });
    expect(start?.spacing).toEqual({ tracking: 2, offsets: [-30] });
    expect([draft.version, draft.spacing, count]).toEqual([0, { tracking: 0, offsets: [0] }, 2]);
    // Not from itself, not where nothing was set, and not from another student's.
    expect((await bench('student', small, { start: small })).start).toBeNull();
    expect((await bench('otherStudent', ids.specimen, { start: small })).start).toBeNull();
    expect((await bench('student', small, { start: 'guessed' })).start).toBeNull();
  });

  it('keeps a trial apart from the work, and offers it for the line', async () => {
    const tried = await save('student', small, 55, { trial: true });
    expect(await bench('student', small, { trial: true })).toMatchObject({
      purpose: 'trial',
      trial: true,
      draft: { spacing: tried },
    });
    expect(await bench('student', small, { start: 'trial' })).toMatchObject({
      purpose: 'work',
      trial: false,
      draft: { version: 0 },
      start: { label: 'Your trial of this line', spacing: tried },
    });
    expect((await together('student')).lines[0]).toMatchObject({ touched: false });
    expect((await bench('student', ids.specimen, { trial: true })).overlays).toContainEqual({
      id: 'work',
      label: 'Your line, as it is now',
      spacing: { tracking: 2, offsets: [-30] },
    });
  });

  it('lets a line of a closed exercise be tried, too', async () => {
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { state: 'closed', closedAt: now } });
    expect(await bench('student', small, { trial: true })).toMatchObject({
      purpose: 'trial',
      exercise: { state: 'closed' },
    });
    expect(await bench('instructor', small)).toMatchObject({ purpose: 'trial', trial: false, tells: 'everything' });
  });
});
