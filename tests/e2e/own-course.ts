import SQLite from 'better-sqlite3';
import { newId } from '@/lib/data/ids';
import { listNameOf } from '@/lib/data/members';
import { fileOf } from './demo-ids';
import { ownExercise } from './own-exercise';

type Person = { name: string; email: string; role: string };
const day = 86_400_000;

/**
 * A course of a test's own with some of the demo's people, a section, and one exercise of two lines: its round has been
 * open for ten days and is due in ten, the bench tells nothing, and each student has sent a proof. `putAway` removes
 * all courses of that test from every list.
 */
export function ownCourse(baseURL: string, title: string, people: readonly Person[]) {
  const students = people.filter(({ role }) => role === 'student');
  const own = ownExercise(
    baseURL,
    `Lines of ${title}`,
    students.map(({ email }) => email),
  );
  const inDatabase = <Result>(work: (db: SQLite.Database) => Result): Result => {
    const db = new SQLite(fileOf(baseURL));
    db.pragma('busy_timeout = 10000');
    try {
      return db.transaction(() => work(db))();
    } finally {
      db.close();
    }
  };
  const from = new Date(Date.now() - 10 * day).toISOString();
  const dueAt = new Date(Date.now() + 10 * day).toISOString();
  const courseId = newId();
  const members = inDatabase((db) => {
    const sectionId = newId();
    db.prepare(
      "INSERT INTO Course (id, title, timeZone, state, settings, createdAt, version) VALUES (?, ?, 'UTC', 'active', '{}', ?, 0)",
    ).run(courseId, title, from);
    db.prepare("INSERT INTO Section (id, courseId, name, createdAt) VALUES (?, ?, 'Early', ?)").run(
      sectionId,
      courseId,
      from,
    );
    const ids = people.map(({ name, email, role }) => {
      const { id: userId } = db.prepare('SELECT id FROM User WHERE emailNorm = ?').get(email) as { id: string };
      const memberId = newId();
      db.prepare(
        "INSERT INTO Member (id, courseId, userId, role, sectionId, accommodations, listName, joinedAt, version) VALUES (?, ?, ?, ?, ?, '{}', ?, ?, 0)",
      ).run(memberId, courseId, userId, role, role === 'student' ? sectionId : null, listNameOf(name), from);
      return [email, memberId] as const;
    });
    const memberOf = new Map(ids);
    db.prepare(`UPDATE Exercise SET courseId = ?, settings = '{"benchTellsAfterProof":"nothing"}' WHERE id = ?`).run(
      courseId,
      own.exerciseId,
    );
    db.prepare(
      "UPDATE Round SET state = 'open', markingStartedAt = NULL, opensAt = ?, opensLocal = ?, dueAt = ?, dueLocal = ? WHERE id = ?",
    ).run(from, from.slice(0, 16), dueAt, dueAt.slice(0, 16), own.roundId);
    students.forEach(({ email }, place) =>
      db
        .prepare("UPDATE Proof SET memberId = ?, reasoning = 'A sentence that goes when retention ends.' WHERE id = ?")
        .run(memberOf.get(email), own.proofIds[place]),
    );
    return memberOf;
  });
  return {
    ...own,
    courseId,
    members,
    dueAt,
    /** What a round's length of twenty days becomes with so many per cent more. */
    dueWithMore: (percent: number) => new Date(Date.parse(dueAt) + (20 * day * percent) / 100).toISOString(),
    /** A statement to the test's own database, for what people would need weeks to bring about. */
    run: (sql: string, ...given: unknown[]) => inDatabase((db) => db.prepare(sql).run(...given)),
    putAway: (others: readonly string[] = []) =>
      inDatabase((db) => {
        for (const course of [courseId, ...others]) {
          db.prepare('UPDATE Exercise SET removedAt = ? WHERE courseId = ?').run(new Date().toISOString(), course);
          db.prepare('UPDATE Member SET removedAt = ? WHERE courseId = ?').run(new Date().toISOString(), course);
        }
      }),
  };
}
