import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { backUp } from '@/lib/data/backup/back-up';
import { restore } from '@/lib/data/backup/restore';
import { openDatabase } from '@/lib/data/open';
import { fillWorld } from '../../access/fill-world';
import { schemaModels } from '../../fixtures/schema-models';
import { describeOnBothDatabases, emptyDatabase, freshDatabase } from '../../fixtures/databases';

const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-backup-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describeOnBothDatabases('a backup', (suite) => {
  const to = (name: string) => path.join(folder, `${suite.provider}-${name}`);
  const keysIn = async (url: string) => {
    const db = openDatabase(url);
    const rows = await db.installation.findMany({ select: { key: true } });
    await db.$disconnect();
    return rows.map(({ key }) => key).sort();
  };
  const write = (key: string) => suite.db.installation.create({ data: { key, value: 'ü', setAt: new Date(0) } });
  let first = '';

  beforeAll(async () => {
    await write('first');
    first = await backUp(suite.url, to('first'));
  }, 60_000);

  it('comes back into an empty database as it was', async () => {
    const url = await emptyDatabase(suite.provider);
    expect(await restore(url, first)).toBeNull();
    expect(await keysIn(url)).toEqual(['first']);
  });

  it('is whole although people write meanwhile: pairs are in it together or not at all', async () => {
    let busy = true;
    let written = 0;
    const writing = (async () => {
      while (busy) {
        const number = (written += 1);
        await suite.db.$transaction(async (inside) => {
          for (const half of ['a', 'b'])
            await inside.installation.create({
              data: { key: `pair-${number}-${half}`, value: 'x'.repeat(2000), setAt: new Date(0) },
            });
        });
        // SQLite answers without letting anything else have its turn.
        await new Promise((resolve) => {
          setImmediate(resolve);
        });
      }
    })();
    while (written < 5)
      await new Promise((resolve) => {
        setTimeout(resolve, 5);
      });
    const file = await backUp(suite.url, to('busy')).finally(() => {
      busy = false;
    });
    await writing;
    const url = await emptyDatabase(suite.provider);
    await restore(url, file);
    const keys = (await keysIn(url)).filter((key) => key.startsWith('pair-'));
    expect(keys.length).toBeGreaterThanOrEqual(8);
    expect(keys.filter((key) => key.endsWith('-a')).length).toBe(keys.filter((key) => key.endsWith('-b')).length);
  }, 60_000);

  it('never writes over a file, and leaves none behind when it fails', async () => {
    await expect(backUp(suite.url, to('first'))).rejects.toThrow('exists already');
    const nowhere =
      suite.provider === 'sqlite' ? `file:${to('nothing-here')}` : suite.url.replace(/\w+$/, 'nothing_here');
    await expect(backUp(nowhere, to('fails'))).rejects.toThrow(/nothing.here/);
    expect(
      readdirSync(folder).filter(
        (name) => name.includes('fails') || name.includes('.part') || name.includes('nothing'),
      ),
    ).toEqual([]);
  });

  it('does not take the place of data unless told to, and then keeps what was there', async () => {
    const url = await freshDatabase(suite.provider);
    const db = openDatabase(url);
    await db.installation.create({ data: { key: 'mine', value: '', setAt: new Date(0) } });
    await db.$disconnect();
    await expect(restore(url, first)).rejects.toThrow('--replace');
    expect(await keysIn(url)).toEqual(['mine']);
    const kept = await restore(url, first, { replace: true, now: new Date('2027-03-08T10:00:00Z') });
    expect(kept).toContain('2027');
    expect(await keysIn(url)).toEqual(['first']);
    if (suite.provider === 'sqlite') expect(await keysIn(`file:${kept}`)).toEqual(['mine']);
  });

  it('that is damaged is refused before anything is touched', async () => {
    const url = await freshDatabase(suite.provider);
    const damaged = await backUp(suite.url, to('damaged'));
    truncateSync(damaged, 5000);
    await expect(restore(url, damaged, { replace: true })).rejects.toThrow(damaged);
    writeFileSync(to('words'), 'not a database at all, just some words that were written down here');
    await expect(restore(url, to('words'), { replace: true })).rejects.toThrow('words');
    await expect(restore(url, to('absent'))).rejects.toThrow('absent');
    expect(await keysIn(url)).toEqual([]);
  });

  it('is not put under a server that runs', async () => {
    await suite.db.installation.count();
    await expect(restore(suite.url, first, { replace: true })).rejects.toThrow('is being used');
    if (suite.provider === 'sqlite') expect(existsSync(`${suite.url.replace('file:', '')}`)).toBe(true);
    expect(await suite.db.installation.count()).toBeGreaterThan(1);
  });

  it('takes the place of a damaged database; the damaged files are set aside as they are', async () => {
    if (suite.provider === 'postgresql') return;
    const file = to('damaged-in-use.db');
    const now = new Date('2027-03-08T10:00:00Z');
    for (const [damaged, journal] of [
      ['no database at all', 'half a journal'],
      [brokenPages(first), ''],
    ]) {
      writeFileSync(file, damaged!);
      if (journal) writeFileSync(`${file}-wal`, journal);
      const kept = await restore(`file:${file}`, first, { replace: true, now });
      expect(readFileSync(kept!).equals(Buffer.from(damaged!))).toBe(true);
      if (journal) expect(readFileSync(`${kept!}-wal`, 'utf8')).toBe(journal);
      expect(await keysIn(`file:${file}`)).toEqual(['first']);
    }
  });
});

/** A database whose first page is whole and whose others hold nothing that makes sense. */
function brokenPages(file: string): Buffer {
  const bytes = readFileSync(file);
  bytes.fill(0xa5, 4096);
  return bytes;
}

/** A drill: everything is destroyed, a backup is brought back, and every row of every table is as it was. */
describeOnBothDatabases('a database that was destroyed', (suite) => {
  const rowsOf = async (url: string) => {
    const db = openDatabase(url);
    const rows: Record<string, unknown> = {};
    for (const { name } of schemaModels()) {
      const table = name.charAt(0).toLowerCase() + name.slice(1);
      const found = await (db as unknown as Record<string, { findMany(): Promise<unknown[]> }>)[table]!.findMany();
      rows[name] = found.map((row) => JSON.stringify(row)).sort();
    }
    await db.$disconnect();
    return rows;
  };

  it('comes back row by row', async () => {
    await fillWorld(suite.db, new Date('2027-03-08T10:00:00Z'));
    const before = await rowsOf(suite.url);
    expect(Object.values(before).flat()).not.toHaveLength(0);
    const file = await backUp(suite.url, path.join(folder, `${suite.provider}-drill`));
    await suite.db.$disconnect();
    if (suite.provider === 'sqlite') writeFileSync(suite.url.replace('file:', ''), 'gone');
    else {
      const db = openDatabase(suite.url);
      await db.$executeRawUnsafe('DROP TABLE "NoteEntry", "Release" CASCADE');
      await db.$disconnect();
    }
    expect(await restore(suite.url, file, { replace: true })).not.toBeNull();
    expect(await rowsOf(suite.url)).toEqual(before);
  });
});
