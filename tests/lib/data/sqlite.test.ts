import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { openDatabase } from '@/lib/data/open';
import { describeOnBothDatabases, describeOnSqlite } from '../../fixtures/databases';

const at = new Date(0);
const row = (key: string) => ({ data: { key, value: 'kept', setAt: at } });

describeOnBothDatabases('an open transaction', (suite) => {
  it('that is rolled back takes nothing of anybody else’s with it', async () => {
    const failing = suite.db.$transaction(async (inside) => {
      await inside.installation.create(row('inside'));
      await wait(100);
      throw new Error('changed its mind');
    });
    await wait(30);
    const acknowledged = suite.db.installation.create(row('outside'));
    await expect(failing).rejects.toThrow('changed its mind');
    await acknowledged;
    expect(await suite.db.installation.findMany({ select: { key: true } })).toEqual([{ key: 'outside' }]);
  });

  it('is not seen from outside before it is committed', async () => {
    let seen: unknown;
    const second = openDatabase(suite.url);
    await suite.db.$transaction(async (inside) => {
      await inside.installation.create(row('unfinished'));
      seen = await second.installation.findUnique({ where: { key: 'unfinished' } });
    });
    expect(seen).toBeNull();
    expect(await second.installation.findUnique({ where: { key: 'unfinished' } })).not.toBeNull();
    await second.$disconnect();
  });
});

describeOnSqlite('the SQLite connection', (suite) => {
  it('is in WAL, flushes every commit, and keeps foreign keys', async () => {
    const pragma = async (name: string) =>
      Object.values((await suite.db.$queryRawUnsafe<object[]>(`PRAGMA ${name}`))[0] ?? {})[0];
    expect(await pragma('journal_mode')).toBe('wal');
    expect(Number(await pragma('synchronous'))).toBe(2);
    expect(Number(await pragma('foreign_keys'))).toBe(1);
  });

  it('waits for another process that writes, and loses none of both', async () => {
    const second = openDatabase(suite.url);
    const write = (db: typeof suite.db, name: string) =>
      Promise.all(
        Array.from({ length: 25 }, (_, index) =>
          db.$transaction(async (inside) => {
            await inside.installation.count();
            await inside.installation.create(row(`${name} ${index}`));
          }),
        ),
      );
    await Promise.all([write(suite.db, 'one'), write(second, 'two')]);
    await second.$disconnect();
    expect(await suite.db.installation.count()).toBe(50);
  });

  it('goes on after a commit that failed', async () => {
    await expect(
      suite.db.$transaction(async (inside) => {
        await inside.$executeRawUnsafe('PRAGMA defer_foreign_keys = ON');
        await inside.section.create({ data: { id: 'orphan', courseId: 'no such course', name: 'x', createdAt: at } });
      }),
    ).rejects.toThrow();
    expect(await suite.db.section.count()).toBe(0);
    await suite.db.$transaction((inside) => inside.installation.create(row('afterwards')));
    expect(await suite.db.installation.findUnique({ where: { key: 'afterwards' } })).not.toBeNull();
  });
});
