import { expect, it } from 'vitest';
import { isTaken } from '@/lib/data/retry';
import { Prisma } from '@/prisma/generated/sqlite/client/client';
import { executeBatch } from '@/lib/data/batch';
import { describeOnBothDatabases, describeOnSqlite } from '@/tests/fixtures/databases';

const at = new Date('2027-03-08T09:30:15.250Z');
const insert = (key: string) =>
  Prisma.sql`INSERT INTO "Installation" ("key", "value", "setAt") VALUES (${key}, ${'kept'}, ${at})`;
const touch = (key: string) => Prisma.sql`UPDATE "Installation" SET "value" = ${'touched'} WHERE "key" = ${key}`;

describeOnBothDatabases('statements executed together', (suite) => {
  const standing = async (prefix: string) =>
    (await suite.db.installation.findMany({ where: { key: { startsWith: prefix } } })).map(
      ({ key, value }) => `${key} ${value}`,
    );

  it('say how many rows each changed, and a moment reads back as it was given', async () => {
    expect(await executeBatch(suite.db, [insert('one'), touch('one'), touch('none')])).toEqual([1, 1, 0]);
    expect(await suite.db.installation.findUnique({ where: { key: 'one' } })).toEqual({
      key: 'one',
      value: 'touched',
      setAt: at,
    });
  });

  it('change nothing when one of them fails, and say that a key is taken', async () => {
    await suite.db.installation.create({ data: { key: 'taken', value: 'first', setAt: at } });
    const error = await executeBatch(suite.db, [insert('taken beside it'), insert('taken')]).catch(
      (caught: unknown) => caught,
    );
    expect(isTaken(error)).toBe(true);
    expect(await standing('taken')).toEqual(['taken first']);
  });

  it('are part of the transaction they are given', async () => {
    await expect(
      suite.db.$transaction(async (inside) => {
        expect(await executeBatch(inside, [insert('inside'), touch('inside')])).toEqual([1, 1]);
        throw new Error('changed its mind');
      }),
    ).rejects.toThrow('changed its mind');
    expect(await standing('inside')).toEqual([]);
  });

  it('stand beside transactions and each other, many at once', async () => {
    await Promise.all(
      Array.from({ length: 40 }, (_, index) =>
        index % 2 === 0
          ? executeBatch(suite.db, [insert(`many ${index}`), touch(`many ${index}`)])
          : suite.db.$transaction((inside) =>
              inside.installation.create({ data: { key: `many ${index}`, value: 'touched', setAt: at } }),
            ),
      ),
    );
    expect((await standing('many')).filter((row) => row.endsWith('touched'))).toHaveLength(40);
  });
});

describeOnSqlite('statements executed together on SQLite', (suite) => {
  it('store a moment as Prisma does', async () => {
    await executeBatch(suite.db, [insert('together')]);
    await suite.db.installation.create({ data: { key: 'prisma', value: 'kept', setAt: at } });
    const stored = await suite.db.$queryRawUnsafe<{ setAt: string }[]>(
      'SELECT "key", CAST("setAt" AS TEXT) AS "setAt" FROM "Installation" ORDER BY "key"',
    );
    expect(stored.map(({ setAt }) => setAt)).toEqual([stored[0]?.setAt, stored[0]?.setAt]);
  });

  it('connect by themselves, again after the database was closed', async () => {
    await suite.db.$disconnect();
    expect(await executeBatch(suite.db, [insert('again')])).toEqual([1]);
    expect(await suite.db.installation.findUnique({ where: { key: 'again' } })).not.toBeNull();
  });
});
