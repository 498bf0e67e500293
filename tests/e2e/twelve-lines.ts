import SQLite from 'better-sqlite3';
import { newId } from '@/lib/data/ids';
import { parsePack } from '@/shared/schemas/pack';
import { reportLine } from '@/shared/scoring';
import { canonicalJson } from '@/shared/text/canonical-json';
import { fileOf } from './demo-ids';

type Row = Record<string, unknown>;

/**
 * An exercise of the tests' own beside the demo's: twelve lines, one open round, sent by so many of the demo's
 * students. Faces, settings and what was measured are those of the demo's first round; there are no references and no
 * criteria.
 */
export function addTwelveLines(baseURL: string, students: number) {
  const db = new SQLite(fileOf(baseURL));
  db.pragma('busy_timeout = 10000');
  const one = (sql: string, ...given: unknown[]) => db.prepare(sql).get(...given) as Row;
  const all = (sql: string, ...given: unknown[]) => db.prepare(sql).all(...given) as Row[];
  const insert = (table: string, row: Row) => {
    const names = Object.keys(row);
    db.prepare(
      `INSERT INTO "${table}" (${names.map((name) => `"${name}"`).join()}) VALUES (${names.map(() => '?').join()})`,
    ).run(...names.map((name) => row[name]));
    return String(row.id);
  };
  const copy = (table: string, row: Row, change: Row) => insert(table, { ...row, id: newId(), ...change });
  const withWideGap = (item: Row, version: Row): { row: Row; payload: string } => {
    const pack = parsePack(
      JSON.parse(String(one('SELECT payload FROM Pack WHERE sha256 = ?', version.packSha).payload)),
    );
    const offsets = JSON.parse(String(item.offsets)) as number[];
    const middle = Math.floor(offsets.length / 2);
    offsets[middle] = Math.min(2000, offsets[middle]! + 150);
    const at = { size: { value: Number(version.size), unit: version.unit }, ground: version.ground };
    const report = reportLine(
      pack,
      { tracking: Number(item.tracking), offsets },
      at as Parameters<typeof reportLine>[2],
    );
    return { row: { ...item, offsets: JSON.stringify(offsets) }, payload: canonicalJson(report) };
  };
  try {
    return db.transaction(() => {
      const exercise = one('SELECT * FROM Exercise WHERE removedAt IS NULL ORDER BY createdAt');
      const exerciseId = copy('Exercise', exercise, {
        title: 'Twelve lines',
        position: 99,
        createdAt: new Date().toISOString(),
      });
      const round = one('SELECT * FROM Round WHERE exerciseId = ? AND number = 1', exercise.id);
      const roundId = copy('Round', round, {
        exerciseId,
        state: 'open',
        markingStartedAt: null,
        secondMarker: '{}',
        version: 0,
      });
      const versions = all(
        'SELECT v.* FROM SpecimenVersion v JOIN Specimen s ON s.id = v.specimenId WHERE s.exerciseId = ? AND s.retiredAt IS NULL ORDER BY s.position',
        exercise.id,
      );
      const specimen = one('SELECT * FROM Specimen WHERE exerciseId = ?', exercise.id);
      const lines = Array.from({ length: 12 }, (_, place) => {
        const from = versions[place % versions.length]!;
        const specimenId = copy('Specimen', specimen, { exerciseId, position: place + 1, retiredAt: null });
        return {
          specimenId,
          from: from.id,
          versionId: copy('SpecimenVersion', from, { specimenId, number: 1, previousId: null, pairMap: null }),
        };
      });
      const proofs = all(
        'SELECT p.* FROM Proof p WHERE p.roundId = ? GROUP BY p.memberId ORDER BY p.id LIMIT ?',
        round.id,
        students,
      ).map((proof) => {
        const proofId = copy('Proof', proof, { roundId, number: 1, requestKey: newId() });
        for (const { from, versionId } of lines) {
          const item = one('SELECT * FROM ProofItem WHERE proofId = ? AND specimenVersionId = ?', proof.id, from);
          // Every student leaves the same gap in the middle far too wide: a shared fault.
          const { row, payload } = withWideGap(item, one('SELECT * FROM SpecimenVersion WHERE id = ?', from));
          const itemId = copy('ProofItem', row, { proofId, specimenVersionId: versionId });
          const measured = one('SELECT * FROM Measurement WHERE proofItemId = ? ORDER BY engine DESC', item.id);
          copy('Measurement', measured, { proofItemId: itemId, payload });
        }
        return proofId;
      });
      return { exerciseId, roundId, specimenIds: lines.map(({ specimenId }) => specimenId), proofs };
    })();
  } finally {
    db.close();
  }
}

/**
 * How many notes there are in an exercise: on how many lines of proofs, and their texts, in the order they were
 * written.
 */
export function notesIn(baseURL: string, exerciseId: string) {
  const db = new SQLite(fileOf(baseURL), { readonly: true });
  try {
    return db
      .prepare(
        `SELECT n.proofItemId AS line, n.suggestion, e.body FROM Note n JOIN ProofItem i ON i.id = n.proofItemId JOIN Proof p ON p.id = i.proofId
      JOIN Round r ON r.id = p.roundId JOIN NoteEntry e ON e.noteId = n.id AND e.seq = 1 WHERE r.exerciseId = ? AND n.removedAt IS NULL ORDER BY n.createdAt, n.id`,
      )
      .all(exerciseId) as { line: string; suggestion: string | null; body: string }[];
  } finally {
    db.close();
  }
}

/** Removes the exercise from every list again. */
export function removeTwelveLines(baseURL: string, exerciseId: string): void {
  const db = new SQLite(fileOf(baseURL));
  db.pragma('busy_timeout = 10000');
  db.prepare('UPDATE Exercise SET removedAt = ? WHERE id = ?').run(new Date().toISOString(), exerciseId);
  db.close();
}
