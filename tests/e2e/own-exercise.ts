import SQLite from 'better-sqlite3';
import { newId } from '@/lib/data/ids';
import { fileOf } from './demo-ids';

type Values = Record<string, unknown>;
export type OwnExercise = { exerciseId: string; roundId: string; specimenIds: string[]; proofIds: string[] };

const opened = (file: string) => {
  const db = new SQLite(file);
  db.pragma('busy_timeout = 10000');
  return db;
};

/**
 * An exercise of a test's own in the demo's course: the demo's lines and criteria, one round in marking, and one proof
 * of each of these students, set as in their first proof of the demo. A second marker may be asked for on every proof.
 * `putAway` removes it from every list again.
 */
export function ownExercise(
  baseURL: string,
  title: string,
  emails: readonly string[],
  { second = false } = {},
): OwnExercise & { putAway(): void } {
  const db = opened(fileOf(baseURL));
  const all = (sql: string, ...given: unknown[]) => db.prepare(sql).all(...given) as Values[];
  const insert = (table: string, row: Values) => {
    const names = Object.keys(row);
    db.prepare(
      `INSERT INTO "${table}" (${names.map((name) => `"${name}"`).join(', ')}) VALUES (${names.map(() => '?').join(', ')})`,
    ).run(...names.map((name) => row[name]));
  };
  const long = new Date('2026-01-05T09:00:00.000Z').toISOString();
  try {
    const demo = all('SELECT * FROM Exercise WHERE removedAt IS NULL ORDER BY createdAt LIMIT 1')[0]!;
    const exerciseId = newId();
    const roundId = newId();
    insert('Exercise', {
      ...demo,
      id: exerciseId,
      title,
      state: 'published',
      settings: '{}',
      position: 90,
      createdAt: new Date().toISOString(),
      version: 0,
    });
    const round = all('SELECT * FROM Round WHERE exerciseId = ? ORDER BY number LIMIT 1', demo.id)[0]!;
    insert('Round', {
      ...round,
      id: roundId,
      exerciseId,
      number: 1,
      title: '',
      state: 'marking',
      markingStartedAt: new Date().toISOString(),
      dueAt: null,
      dueLocal: null,
      opensAt: null,
      opensLocal: null,
      secondMarker: second ? '{"which":"all","percent":20}' : '{}',
      version: 0,
    });
    for (const criterion of all('SELECT * FROM Criterion WHERE exerciseId = ? AND retiredAt IS NULL', demo.id)) {
      const criterionId = newId();
      insert('Criterion', { ...criterion, id: criterionId, exerciseId });
      const version = all(
        'SELECT * FROM CriterionVersion WHERE criterionId = ? ORDER BY number DESC LIMIT 1',
        criterion.id,
      )[0]!;
      insert('CriterionVersion', { ...version, id: newId(), criterionId, number: 1 });
    }
    const versions = new Map<unknown, string>();
    const specimenIds: string[] = [];
    for (const specimen of all(
      'SELECT * FROM Specimen WHERE exerciseId = ? AND retiredAt IS NULL ORDER BY position LIMIT 2',
      demo.id,
    )) {
      const specimenId = newId();
      specimenIds.push(specimenId);
      insert('Specimen', { ...specimen, id: specimenId, exerciseId });
      const version = all(
        'SELECT * FROM SpecimenVersion WHERE specimenId = ? ORDER BY number LIMIT 1',
        specimen.id,
      )[0]!;
      versions.set(version.id, newId());
      insert('SpecimenVersion', {
        ...version,
        id: versions.get(version.id),
        specimenId,
        number: 1,
        previousId: null,
        pairMap: null,
      });
    }
    const proofIds = emails.map((email) => {
      const proof = all(
        'SELECT p.* FROM Proof p JOIN Member m ON m.id = p.memberId JOIN User u ON u.id = m.userId WHERE u.emailNorm = ? AND p.roundId = ? ORDER BY p.number LIMIT 1',
        email,
        round.id,
      )[0]!;
      const proofId = newId();
      // Long ago, so that a test which asks for a student's newest proof still gets the demo's.
      insert('Proof', { ...proof, id: proofId, roundId, number: 1, requestKey: newId(), receivedAt: long });
      for (const item of all('SELECT * FROM ProofItem WHERE proofId = ?', proof.id)) {
        const specimenVersionId = versions.get(item.specimenVersionId);
        if (!specimenVersionId) continue;
        const itemId = newId();
        insert('ProofItem', { ...item, id: itemId, proofId, specimenVersionId });
        for (const measured of all('SELECT * FROM Measurement WHERE proofItemId = ?', item.id))
          insert('Measurement', { ...measured, id: newId(), proofItemId: itemId });
      }
      return proofId;
    });
    return {
      exerciseId,
      roundId,
      specimenIds,
      proofIds,
      putAway: () => putAwayExercise(baseURL, exerciseId),
    };
  } finally {
    db.close();
  }
}

/** Removes an exercise from every list, so that the demo's course is for the next test as it was. */
export function putAwayExercise(baseURL: string, exerciseId: string): void {
  const db = opened(fileOf(baseURL));
  db.prepare('UPDATE Exercise SET removedAt = ? WHERE id = ?').run(new Date().toISOString(), exerciseId);
  db.close();
}
