import SQLite from 'better-sqlite3';
import { newId } from '@/lib/data/ids';
import { fileOf } from './demo-ids';

/** An exercise of its own in the demo's course: one line of the demo's, one open round, nothing sent. */
export function addExercise(baseURL: string): { path: string; remove: () => void } {
  const [exerciseId, specimenId, at] = [newId(), newId(), new Date(Date.now() - 3_600_000).toISOString()];
  inDatabase(baseURL, (db) => {
    const { courseId } = db
      .prepare('SELECT courseId FROM Exercise WHERE removedAt IS NULL ORDER BY createdAt LIMIT 1')
      .get() as { courseId: string };
    const line = db
      .prepare(
        "SELECT text, packSha, size, unit FROM SpecimenVersion WHERE ground = 'light' ORDER BY createdAt LIMIT 1",
      )
      .get() as { text: string; packSha: string; size: number; unit: string };
    db.prepare(
      "INSERT INTO Exercise (id, courseId, position, title, brief, state, settings, createdAt, publishedAt, version) VALUES (?, ?, 90, 'A line for the wall', 'Space it, and look at it together.', 'published', '{}', ?, ?, 0)",
    ).run(exerciseId, courseId, at, at);
    db.prepare(
      "INSERT INTO Round (id, exerciseId, number, title, state, opensAt, version) VALUES (?, ?, 1, '', 'open', ?, 0)",
    ).run(newId(), exerciseId, at);
    db.prepare('INSERT INTO Specimen (id, exerciseId, position, createdAt) VALUES (?, ?, 1, ?)').run(
      specimenId,
      exerciseId,
      at,
    );
    db.prepare(
      "INSERT INTO SpecimenVersion (id, specimenId, number, text, packSha, size, unit, ground, details, createdAt) VALUES (?, ?, 1, ?, ?, ?, ?, 'light', '{}', ?)",
    ).run(newId(), specimenId, line.text, line.packSha, line.size, line.unit, at);
  });
  return {
    path: `/exercises/${exerciseId}`,
    remove: () =>
      inDatabase(baseURL, (db) =>
        db.prepare('UPDATE Exercise SET removedAt = ? WHERE id = ?').run(new Date().toISOString(), exerciseId),
      ),
  };
}

function inDatabase(baseURL: string, work: (db: SQLite.Database) => void): void {
  const db = new SQLite(fileOf(baseURL));
  try {
    db.pragma('busy_timeout = 10000');
    work(db);
  } finally {
    db.close();
  }
}
