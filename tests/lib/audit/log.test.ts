import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { scopedData } from '@/lib/data';
import { eraseAccount } from '@/lib/account/erase';
import { endExtension, extendRound } from '@/lib/exercise/rounds';
import { fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

describe('the log in the code', () => {
  const files = ['app', 'lib', 'shared', 'prisma/seed', 'prisma/seed.ts'].flatMap(sources);

  it('is written in one file, and nothing there or elsewhere changes or deletes an entry', () => {
    expect(files.length).toBeGreaterThan(300);
    expect(files.filter(({ text }) => /auditEvent/.test(text)).map(({ path }) => path)).toEqual(['lib/data/audit.ts']);
    for (const { path, text } of files) {
      expect(text, path).not.toMatch(
        /auditEvent\s*\.\s*(update|updateMany|updateManyAndReturn|upsert|delete|deleteMany)\b/,
      );
      expect(text, path).not.toMatch(/(UPDATE|DELETE FROM|TRUNCATE|DROP TABLE)\s+"?AuditEvent/i);
      // An entry goes when its course or person goes; neither is ever deleted.
      expect(text, path).not.toMatch(/\b(course|user)\s*\.\s*(delete|deleteMany)\b/);
    }
  });
});

/**
 * The one thing that may happen to an entry when people are erased: it no longer says who acted. Verb, subject, details
 * and time stay.
 */
const namesNobodyAnyMore = /db\.auditEvent\.updateMany\(\{\s*where: \{[^;]*\},\s*data: \{ actorId: null \},?\s*\}\);/g;

function sources(root: string): { path: string; text: string }[] {
  const read = (path: string) => ({
    path,
    text: readFileSync(path, 'utf8').replace(path === 'lib/data/records.ts' ? namesNobodyAnyMore : /$^/, ''),
  });
  if (root.endsWith('.ts')) return [read(root)];
  return readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|tsx|mjs)$/.test(name))
    .map((name) => read(`${root}/${name}`));
}

describeOnBothDatabases('the log in the database', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const log = () => suite.db.auditEvent.findMany({ orderBy: { id: 'asc' } });

  it('can only be written to and read through the data that operations are given', () => {
    const data = scopedData({ kind: 'system', reason: 'test' }, suite.db);
    expect(Object.keys(data.audit).filter((name) => !/^(record|recordAll|of)/.test(name))).toEqual([]);
  });

  it('tells who gave a student more time and who ended it', async () => {
    await endExtension(as('instructor'), { extensionId: ids.extension }, { now });
    await extendRound(
      as('instructor'),
      { roundId: ids.nextRound, memberId: ids.members.student, dueLocal: '2027-03-15T11:00' },
      { now },
    );
    expect((await log()).map(({ verb, subject, actorId }) => [verb, subject, actorId])).toEqual([
      ['extension ended', `member:${ids.members.student}`, ids.users.instructor],
      ['due date extended', `member:${ids.members.student}`, ids.users.instructor],
    ]);
  });

  it('stays as it was when a person in it is erased', async () => {
    await suite.db.auditEvent.create({
      data: {
        id: 'kept',
        courseId: ids.course,
        actorId: ids.users.student,
        verb: 'member joined',
        subject: `member:${ids.members.student}`,
        details: '{}',
        at: now,
      },
    });
    const before = await log();
    await eraseAccount(as('student'), { email: 'student@school.example', password: 'paper boats in rain' }, { now });
    const after = await log();
    expect(after.filter(({ id }) => before.some((entry) => entry.id === id))).toEqual(before);
    expect(after.length).toBeGreaterThanOrEqual(before.length);
  });
});
