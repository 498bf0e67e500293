import { expect, it } from 'vitest';
import { eraseAccount } from '@/lib/account/erase';
import { exportOwnData } from '@/lib/account/records';
import { savePracticeResults, getPractice } from '@/lib/account/practice-results';
import { hashPassword } from '@/lib/account/password';
import type { PracticeResult } from '@/shared/schemas/practice';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { addPerson } from '@/tests/fixtures/people';

const result = (requestKey: string, more: Partial<PracticeResult> = {}): PracticeResult => ({
  requestKey,
  at: '2026-03-01T09:00:00.000Z',
  task: 'which gap',
  kind: 'round',
  size: 48,
  fault: 21,
  trials: 41,
  turns: [20, 22.5],
  unmoved: { shown: 7, seen: 2 },
  ...more,
});

describeOnBothDatabases('results of practice', (suite) => {
  it('come back as they were kept, oldest first, and only to the person', async () => {
    const [mine, other] = [await addPerson(suite.db), await addPerson(suite.db)];
    await savePracticeResults(mine.caller, {
      results: [result('later-one', { at: '2026-03-05T09:00:00.000Z', fault: 12, kind: 'any' }), result('first-one')],
    });
    await savePracticeResults(other.caller, { results: [result('first-one', { fault: 90 })] });
    const { results } = await getPractice(mine.caller, {});
    expect(results).toEqual([
      result('first-one'),
      result('later-one', { at: '2026-03-05T09:00:00.000Z', fault: 12, kind: 'any' }),
    ]);
    expect((await getPractice(other.caller, {})).results.map(({ fault }) => fault)).toEqual([90]);
  });

  it('are kept once, however often and from however many windows they are sent', async () => {
    const { caller, id } = await addPerson(suite.db);
    await Promise.all(
      Array.from({ length: 12 }, () =>
        savePracticeResults(caller, { results: [result('one-sitting'), result('another-sitting')] }),
      ),
    );
    await savePracticeResults(caller, { results: [result('one-sitting', { fault: 5 })] });
    const rows = await suite.db.practiceResult.findMany({ where: { userId: id }, orderBy: { requestKey: 'asc' } });
    expect(rows.map(({ requestKey, threshold }) => [requestKey, threshold])).toEqual([
      ['another-sitting', 21],
      ['one-sitting', 21],
    ]);
  });

  it('of a clock that runs ahead are dated to their arrival', async () => {
    const { caller } = await addPerson(suite.db);
    const now = new Date('2027-03-08T10:00:00.000Z');
    await savePracticeResults(
      caller,
      { results: [result('from-tomorrow', { at: '2027-03-09T10:00:00.000Z' })] },
      { now },
    );
    expect((await getPractice(caller, {})).results[0]!.at).toBe(now.toISOString());
  });

  it('are in the person’s own data, and go with the person', async () => {
    const { caller, email, id } = await addPerson(suite.db, {
      passwordHash: await hashPassword('paper boats in rain'),
    });
    await savePracticeResults(caller, { results: [result('one-sitting')] });
    expect((await exportOwnData(caller, {})).practice).toEqual([result('one-sitting')]);
    await eraseAccount(caller, { email, password: 'paper boats in rain' });
    expect(await suite.db.practiceResult.count({ where: { userId: id } })).toBe(0);
  });

  it('of earlier releases stay readable: asked of lines made even by measure, and without a look or a turn told', async () => {
    const { caller, id } = await addPerson(suite.db);
    const row = { userId: id, kind: 'round', size: 48, threshold: 21 };
    await suite.db.practiceResult.createMany({
      data: [
        {
          ...row,
          id: `${id}-old`,
          requestKey: 'old-sitting',
          payload: '{"task":"more even","trials":41,"turns":[20,22.5]}',
          at: new Date('2026-03-01T09:00:00Z'),
        },
        { ...row, id: `${id}-older`, requestKey: 'older-sitting', payload: '{"task":"gap off"}', at: new Date(0) },
      ],
    });
    expect((await getPractice(caller, {})).results).toEqual([
      result('older-sitting', { at: new Date(0).toISOString(), task: 'gap off', trials: 0, turns: [], unmoved: null }),
      result('old-sitting', { task: 'more even', unmoved: null }),
    ]);
    // One that waited on a device since then has no count of questions without a move, and is stored all the same.
    const { unmoved: _unmoved, ...waiting } = result('waiting-one', { task: 'gap off' });
    await savePracticeResults(caller, { results: [waiting] });
    expect((await getPractice(caller, {})).results.at(-1)).toEqual({ ...waiting, unmoved: null });
  });

  it('with a wrong value are refused, the value quoted', async () => {
    const { caller } = await addPerson(suite.db);
    await expect(
      savePracticeResults(caller, { results: [result('one-sitting', { fault: -3 })] }),
    ).rejects.toMatchObject({ code: 'INVALID' });
  });
});
