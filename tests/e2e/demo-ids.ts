import { tmpdir } from 'node:os';
import path from 'node:path';
import SQLite from 'better-sqlite3';
import { hashPassword } from '@/lib/account/password';
import { newId } from '@/lib/data/ids';
import { newWallCode, newWallSettings, storedWallSettings } from '@/lib/wall/walls';

export const fileOf = (baseURL: string) => path.join(tmpdir(), `kerncrit-e2e-${new URL(baseURL).port}`, 'kerncrit.db');

export type DemoIds = Record<
  | 'courseId'
  | 'exerciseId'
  | 'specimenId'
  | 'specimenVersionId'
  | 'roundId'
  | 'sectionId'
  | 'criterionId'
  | 'criterionVersionId'
  | 'memberId'
  | 'proofId'
  | 'draftId'
  | 'noteId'
  | 'stockNoteId'
  | 'wallId'
  | 'wallCode'
  | 'demonstrationId',
  string
>;

/**
 * Real ids of the demo, those of work and critique being one student's: what another student might guess or have seen
 * over a shoulder.
 */
export function idsOf(baseURL: string, email: string): DemoIds {
  const db = new SQLite(fileOf(baseURL), { readonly: true });
  const id = (sql: string, ...given: string[]): string =>
    (db.prepare(`${sql} LIMIT 1`).get(...given) as { id: string } | undefined)?.id ?? missing(sql);
  try {
    const memberId = id('SELECT m.id FROM Member m JOIN User u ON u.id = m.userId WHERE u.emailNorm = ?', email);
    const exerciseId = id('SELECT id FROM Exercise WHERE removedAt IS NULL ORDER BY createdAt');
    const specimenId = id(
      'SELECT id FROM Specimen WHERE exerciseId = ? AND retiredAt IS NULL ORDER BY position',
      exerciseId,
    );
    const criterionId = id('SELECT id FROM Criterion WHERE exerciseId = ?', exerciseId);
    const proofId = id('SELECT p.id FROM Proof p WHERE p.memberId = ? ORDER BY p.receivedAt DESC', memberId);
    return {
      memberId,
      exerciseId,
      specimenId,
      criterionId,
      proofId,
      courseId: id('SELECT courseId AS id FROM Exercise WHERE id = ?', exerciseId),
      specimenVersionId: id('SELECT id FROM SpecimenVersion WHERE specimenId = ? ORDER BY number DESC', specimenId),
      roundId: id('SELECT id FROM Round WHERE exerciseId = ? ORDER BY number DESC', exerciseId),
      sectionId: id('SELECT s.id FROM Section s JOIN Exercise e ON e.courseId = s.courseId WHERE e.id = ?', exerciseId),
      criterionVersionId: id('SELECT id FROM CriterionVersion WHERE criterionId = ?', criterionId),
      draftId: id('SELECT id FROM Draft WHERE memberId = ?', memberId),
      noteId: id(
        'SELECT n.id FROM Note n JOIN ProofItem i ON i.id = n.proofItemId JOIN Proof p ON p.id = i.proofId WHERE p.memberId = ?',
        memberId,
      ),
      stockNoteId: newId(),
      ...wallOf(baseURL),
      demonstrationId: id('SELECT id FROM Demonstration WHERE shownAt IS NULL AND removedAt IS NULL'),
    };
  } finally {
    db.close();
  }
}

/** An open wall of the demo's second round, made once. */
function wallOf(baseURL: string): { wallId: string; wallCode: string } {
  const db = new SQLite(fileOf(baseURL));
  db.pragma('busy_timeout = 10000');
  try {
    // Opened for this test only: walls of other tests belong to them.
    const there = db
      .prepare('SELECT id AS wallId, code AS wallCode FROM Wall WHERE openedById IS NULL AND closedAt IS NULL')
      .get() as { wallId: string; wallCode: string } | undefined;
    if (there) return there;
    const at = db
      .prepare(
        'SELECT r.id AS roundId, s.id AS specimenId FROM Round r JOIN Specimen s ON s.exerciseId = r.exerciseId WHERE s.retiredAt IS NULL ORDER BY r.number DESC, s.position LIMIT 1',
      )
      .get() as { roundId: string; specimenId: string };
    const [wallId, wallCode] = [newId(), newWallCode()];
    db.prepare(
      'INSERT INTO Wall (id, roundId, specimenId, code, settings, openedAt, version) VALUES (?, ?, ?, ?, ?, ?, 0)',
    ).run(wallId, at.roundId, at.specimenId, wallCode, storedWallSettings(newWallSettings()), new Date().toISOString());
    return { wallId, wallCode };
  } finally {
    db.close();
  }
}

/** As closing it does, but for its points. */
export function closeWall(baseURL: string, wallId: string): void {
  const db = new SQLite(fileOf(baseURL));
  db.pragma('busy_timeout = 10000');
  db.prepare("UPDATE Wall SET closedAt = ?, settings = '{}' WHERE id = ?").run(new Date().toISOString(), wallId);
  db.close();
}

/** A person with an account and in no course. */
export async function addOutsider(baseURL: string) {
  const person = { email: `outsider.${Date.now()}@quayrow.example`, password: 'paper boats in rain' };
  const db = new SQLite(fileOf(baseURL));
  db.pragma('busy_timeout = 10000');
  db.prepare(
    "INSERT INTO User (id, emailNorm, name, passwordHash, mayCreateCourses, preferences, createdAt) VALUES (?, ?, 'An Outsider', ?, 0, '{}', ?)",
  ).run(newId(), person.email, await hashPassword(person.password), new Date().toISOString());
  db.close();
  return person;
}

/** Ids of the same form that don't exist. */
export const madeUp = (): DemoIds =>
  new Proxy<Record<string, string>>(
    {},
    { get: (known, name) => (known[String(name)] ??= name === 'wallCode' ? newWallCode() : newId()) },
  ) as DemoIds;

function missing(sql: string): never {
  throw new Error(`The demo has nothing for: ${sql}`);
}
