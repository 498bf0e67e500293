import SQLite from 'better-sqlite3';
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { ReleasedView } from '@/app/_released/released-view';
import { AppError } from '@/lib/access/errors';
import { allOperations, type Operation } from '@/lib/access/operation';
import { exchangeDatabase } from '@/lib/data/client';
import { applyMigrations } from '@/lib/data/migrate/apply';
import { openDatabase, type Database, type Provider } from '@/lib/data/open';
import { getProof } from '@/lib/work/proofs';
import { getRelease } from '@/lib/release/released';
import type { Row, Rows, Who } from '@/tests/access/row';
import type { World } from '@/tests/access/world';
import { emptyDatabase } from '@/tests/fixtures/databases';
import { fillPostgresql } from '@/tests/fixtures/stored/postgresql';
import { releasedPages, storedForms, unpackStored } from '@/tests/fixtures/stored/stored';
import { storedWorld } from './stored-world';

// Not what runs in a process of its own: loading it is running it.
await Promise.all(
  Object.values(
    import.meta.glob(['/lib/**/*.ts', '!/lib/{bin,face,http,chores}/**', '!/lib/word-finder/list-process.ts']),
  ).map((load) => load()),
);
const rows = new Map<string, Row>(
  Object.values(import.meta.glob<Record<string, Rows>>('/tests/access/rows/*.ts', { eager: true }))
    .flatMap((file) => Object.values(file))
    .flatMap((table) => Object.entries(table)),
);

/** What only reads, by its name; links are asked for by secrets that no copy of a database holds. */
const reads = allOperations().filter(
  ({ operationName: name }) => /^(get|list|export|preview|open-bench)\b/.test(name) && !/link|pointing/.test(name),
);
const roles = ['instructor', 'assistant', 'student'] as const satisfies readonly Who[];

/** Columns that no upgrade may change: what was measured, written and released. */
const untouchable = {
  Release: 'snapshot',
  Measurement: 'payload',
  Comparison: 'payload',
  NoteEntry: 'body',
  ProofItem: 'offsets',
  Pack: 'payload',
  MarkEvent: 'why',
  Demonstration: 'steps',
} as const;

/**
 * Its names are hidden until the second round is released: a set of marks for another program, which names people, waits
 * for that.
 */
const answer = (name: string, usual: string) => (name === 'export-oneroster' && usual === 'ok' ? 'CONFLICT' : usual);

for (const form of storedForms) {
  describe.each<Provider>(['sqlite', 'postgresql'])(`what version ${form} stored, upgraded (%s)`, (provider) => {
    let db: Database;
    let world: World;
    let stored: string;
    beforeAll(async () => {
      const folder = inject('databases');
      stored = unpackStored(form, folder);
      const url = provider === 'sqlite' ? `file:${unpackStored(form, folder)}` : await emptyDatabase('postgresql');
      if (provider === 'postgresql') await fillPostgresql(url, stored, folder);
      await applyMigrations(url);
      db = openDatabase(url);
      exchangeDatabase(db);
      world = await storedWorld(db);
    }, 120_000);
    afterAll(async () => {
      exchangeDatabase(undefined);
      await db?.$disconnect();
    });

    it('has a row of every kind', () => {
      const file = new SQLite(stored, { readonly: true });
      const tables = file.prepare("SELECT name FROM sqlite_master WHERE type = 'table'").all() as { name: string }[];
      const empty = tables.filter(({ name }) => !file.prepare(`SELECT 1 FROM "${name}" LIMIT 1`).get());
      file.close();
      expect(empty).toEqual([]);
    });

    it('keeps every word that was measured, said or released, byte for byte', async () => {
      const file = new SQLite(stored, { readonly: true });
      for (const [table, column] of Object.entries(untouchable)) {
        const key = table === 'Pack' ? 'sha256' : 'id';
        const sql = `SELECT "${key}" AS id, "${column}" AS text FROM "${table}" ORDER BY 1`;
        const after = await db.$queryRawUnsafe<{ id: string; text: string }[]>(sql);
        expect(new Map(after.map(({ id, text }) => [id, text])), table).toEqual(
          new Map((file.prepare(sql).all() as { id: string; text: string }[]).map(({ id, text }) => [id, text])),
        );
      }
      file.close();
    });

    it('calls a trial a trial, and each draft keeps its spacing', async () => {
      const file = new SQLite(stored, { readonly: true });
      const before = file.prepare('SELECT id, purpose, offsets FROM "Draft" ORDER BY id').all();
      file.close();
      const after = await db.draft.findMany({
        select: { id: true, purpose: true, offsets: true },
        orderBy: { id: 'asc' },
      });
      const renamed = (before as typeof after).map((draft) => ({
        ...draft,
        purpose: draft.purpose === 'practice' ? 'trial' : draft.purpose,
      }));
      expect(renamed.some(({ purpose }) => purpose === 'trial')).toBe(true);
      expect(after).toEqual(renamed);
    });

    it.each(reads.map((operation) => [operation.operationName, operation] as const))(
      'opens for each role: %s',
      async (name, operation) => {
        const row = rows.get(name)!;
        for (const who of roles) expect(await ask(operation, row, who), who).toBe(answer(name, row.answers[who]));
      },
    );

    it.each(releasedPages(form).map((page) => [`${page.as}: ${page.proofId}`, page] as const))(
      'says of a release what it said, %s',
      async (_, { as, proofId, words }) => {
        const caller = world.callers[as.startsWith('odile') ? 'instructor' : 'student'];
        const [proof, { release }] = await Promise.all([
          getProof(caller, { proofId }, { now: world.now }),
          getRelease(caller, { proofId }, { now: world.now }),
        ]);
        const { snapshot, answers } = release!;
        const view = { snapshot, drawn: proof.lines, answers };
        const said = bare(asReleased(renderToStaticMarkup(createElement(ReleasedView, view))));
        let at = 0;
        for (const word of words) {
          const found = said.indexOf(bare(word), at);
          expect(found, `${word} … in ${said.slice(at, at + 400)}`).toBeGreaterThanOrEqual(at);
          at = found + bare(word).length;
        }
      },
    );

    async function ask(operation: Operation, row: Row, who: Who): Promise<string> {
      try {
        await operation(world.callers[who], row.input(world, who), { now: world.now });
        return 'ok';
      } catch (error) {
        if (error instanceof AppError) return error.code;
        throw error;
      }
    }
  });
}

/**
 * The parts of the page in the order of the release: the marks and what else is of the whole proof, then the lines by
 * their number in the exercise. The page itself has the lines with notes first, and what is said of each stays with it.
 */
function asReleased(html: string): string {
  const line = /<article .*?<\/article>/gs;
  const lines = [...html.matchAll(line)].map(([article]) => ({
    article,
    place: Number(/>(\d+)(?:<!-- -->)?\. /.exec(article)![1]),
  }));
  const inOrder = lines.toSorted((one, other) => one.place - other.place).map(({ article }) => article);
  return html.replaceAll(line, '') + inOrder.join('');
}

/** The text of the page, without markup and white space, so that neither decides. */
const bare = (html: string): string =>
  html
    .replace(/<[^>]*>/g, '')
    .replaceAll('&amp;', '&')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#x27;', "'")
    .replace(/\s/g, '');
