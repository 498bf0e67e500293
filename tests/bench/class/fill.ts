import { encode } from 'next-auth/jwt';
import { hashToken, newToken } from '@/lib/account/token';
import { newId } from '@/lib/data/ids';
import { listNameOf } from '@/lib/data/list-name';
import type { Database } from '@/lib/data/open';
import { canonicalJson } from '@/shared/json/canonical';
import { measureLine } from '@/shared/measure';
import { compareLine } from '@/shared/scoring';
import { drawnPack } from '../../fixtures/drawn-pack';

export type Size = { students: number; specimens: number; rounds: number };
export type Filled = {
  courseId: string; exerciseId: string; specimenIds: string[]; versionIds: string[]; instructorCookie: string;
  students: { cookie: string; draftIds: string[] }[];
  /** Proofs of the last round, in the order in which they were sent. */
  proofIds: string[]; pairs: number;
};

const text = 'HOHOOHOHHOHO';
const pairs = text.length - 1;
const day = 86_400_000;

/** A class in the middle of a term: everybody has sent every round, everything is measured and compared. */
export async function fillClass(db: Database, size: Size, secret: string, now: Date): Promise<Filled> {
  // A machine that fails while the class is made up loses nothing of worth; the server opens the file with every commit flushed.
  await db.$executeRawUnsafe('PRAGMA synchronous = OFF');
  const at = new Date(now.getTime() - 30 * day);
  const [courseId, exerciseId, setId] = [newId(), newId(), newId()];
  await db.course.create({ data: { id: courseId, title: `A class of ${size.students}`, timeZone: 'Europe/Lisbon', state: 'active', createdAt: at } });
  await db.exercise.create({ data: { id: exerciseId, courseId, title: 'Many lines', brief: 'Space them.', state: 'published', createdAt: at, publishedAt: at } });
  const instructor = await addPerson(db, courseId, 'instructor', 0, secret, at);
  const roundIds = await addRounds(db, exerciseId, size.rounds, at);
  const specimens = await addSpecimens(db, exerciseId, size.specimens, at);
  const versionIds = specimens.map(({ id }) => id);
  await addCriterion(db, exerciseId, at);
  await db.referenceSet.create({ data: { id: setId, exerciseId, number: 1, createdAt: at } });
  const reference = { specimenVersionId: '', authorId: instructor.memberId, slot: 1, tracking: 0, offsets: canonicalJson(spacing(0).offsets), tolerances: canonicalJson(Array(pairs).fill(8)), reasons: canonicalJson(Array(pairs).fill(null)) };
  await db.reference.createMany({ data: versionIds.map((specimenVersionId) => ({ id: newId(), ...reference, specimenVersionId, updatedAt: at })) });
  await db.referenceSetItem.createMany({ data: versionIds.map((specimenVersionId) => ({ id: newId(), setId, ...reference, specimenVersionId })) });

  const students = [];
  const proofIds: string[] = [];
  for (let index = 0; index < size.students; index += 1) {
    const student = await addPerson(db, courseId, 'student', index + 1, secret, at);
    const draftIds = await addDrafts(db, student.memberId, versionIds, index, at);
    for (const [place, roundId] of roundIds.entries()) {
      const proofId = await addProof(db, roundId, student.memberId, versionIds, setId, index, at);
      if (place + 1 < roundIds.length) await db.release.create({ data: { id: newId(), roundId, memberId: student.memberId, number: 1, proofId, referenceSetId: setId, engine: 1, snapshot: '{}', releasedById: instructor.memberId, releasedAt: at } });
      else proofIds.push(proofId);
      await db.auditEvent.createMany({ data: [0, 1].map(() => ({ id: newId(), courseId, actorId: null, verb: 'proof marked', subject: `member:${student.memberId}`, at })) });
    }
    students.push({ cookie: student.cookie, draftIds });
  }
  return { courseId, exerciseId, specimenIds: specimens.map(({ specimenId }) => specimenId), versionIds, instructorCookie: instructor.cookie, students, proofIds, pairs };
}

async function addPerson(db: Database, courseId: string, role: string, index: number, secret: string, at: Date) {
  const [userId, memberId, token] = [newId(), newId(), newToken()];
  await db.user.create({ data: { id: userId, emailNorm: `${role}-${index}-${courseId}@bench.example`, name: `${role} ${index}`, mayCreateCourses: role === 'instructor', createdAt: at } });
  await db.member.create({ data: { id: memberId, courseId, userId, role, listName: listNameOf(`${role} ${index}`), joinedAt: at } });
  const far = new Date(at.getTime() + 365 * day);
  await db.authSession.create({ data: { id: newId(), userId, tokenHash: hashToken(token), createdAt: at, expiresAt: far, lastSeenAt: new Date() } });
  return { memberId, cookie: `next-auth.session-token=${await encode({ token: { sessionToken: token }, secret, maxAge: 365 * 86_400 })}` };
}

async function addRounds(db: Database, exerciseId: string, count: number, at: Date): Promise<string[]> {
  const rounds = Array.from({ length: count }, (_, index) => ({
    id: newId(), exerciseId, number: index + 1, state: index + 1 < count ? 'released' : 'open', opensAt: at, dueAt: new Date(at.getTime() + (index + 1) * 20 * day),
  }));
  await db.round.createMany({ data: rounds });
  return rounds.map(({ id }) => id);
}

async function addSpecimens(db: Database, exerciseId: string, count: number, at: Date): Promise<{ specimenId: string; id: string }[]> {
  const packSha = newId().padEnd(64, '0');
  await db.pack.create({ data: { sha256: packSha, format: 'kerncrit-pack/1', kind: 'font', payload: canonicalJson(drawnPack(text)), createdAt: at } });
  const rows = Array.from({ length: count }, (_, index) => ({ specimenId: newId(), id: newId(), position: index + 1 }));
  await db.specimen.createMany({ data: rows.map(({ specimenId, position }) => ({ id: specimenId, exerciseId, position, createdAt: at })) });
  await db.specimenVersion.createMany({ data: rows.map(({ id, specimenId }) => ({ id, specimenId, number: 1, text, packSha, size: 96, unit: 'px', ground: 'light', createdAt: at })) });
  return rows;
}

async function addCriterion(db: Database, exerciseId: string, at: Date) {
  const levels = canonicalJson([{ title: 'Not yet', description: '', points: 0 }, { title: 'Even', description: '', points: 100 }]);
  await db.criterion.create({ data: { id: newId(), exerciseId, position: 1, createdAt: at, versions: { create: { id: newId(), number: 1, title: 'Evenness', basis: 'evenness', weight: 1, levels, createdAt: at } } } });
}

async function addDrafts(db: Database, memberId: string, versionIds: readonly string[], index: number, at: Date): Promise<string[]> {
  const rows = versionIds.map((specimenVersionId) => ({ id: newId(), memberId, specimenVersionId, purpose: 'work', tracking: 0, offsets: canonicalJson(spacing(index).offsets), updatedAt: at }));
  await db.draft.createMany({ data: rows });
  return rows.map(({ id }) => id);
}

async function addProof(db: Database, roundId: string, memberId: string, versionIds: readonly string[], referenceSetId: string, index: number, at: Date): Promise<string> {
  const proofId = newId();
  const { tracking, offsets, measure, comparison, engine } = measured(index);
  await db.proof.create({ data: { id: proofId, roundId, memberId, number: 1, requestKey: newId(), reasoning: 'H and O stood too far apart.', receivedAt: at } });
  const items = versionIds.map((specimenVersionId) => ({ id: newId(), proofId, specimenVersionId, tracking, offsets }));
  await db.proofItem.createMany({ data: items });
  await db.measurement.createMany({ data: items.map(({ id }) => ({ id: newId(), proofItemId: id, engine, payload: measure, measuredAt: at })) });
  await db.comparison.createMany({ data: items.map(({ id }) => ({ id: newId(), proofItemId: id, referenceSetId, engine, payload: comparison, comparedAt: at })) });
  await db.markTask.create({ data: { id: newId(), proofId, roundId, slot: 'first', alias: newId().slice(-12), state: index % 3 === 0 ? 'done' : 'open', createdAt: at } });
  return proofId;
}

/** Invented, and different for neighbours in the list. */
function spacing(index: number) {
  return { tracking: (index % 5) - 2, offsets: Array.from({ length: pairs }, (_, pair) => ((index * (7 + pair) + pair * 5 + Math.floor(index / 41)) % 41) - 20) };
}

const kept = new Map<number, { tracking: number; offsets: string; measure: string; comparison: string; engine: number }>();

function measured(index: number) {
  const known = kept.get(index);
  if (known) return known;
  const set = spacing(index);
  const measure = measureLine(drawnPack(text), set, { size: { value: 96, unit: 'px' }, ground: 'light' });
  const comparison = compareLine(measure, [{ author: 'instructor 0', ...spacing(0), tolerances: Array(pairs).fill(8), reasons: Array(pairs).fill(null) }]);
  const made = { tracking: set.tracking, offsets: canonicalJson(set.offsets), measure: canonicalJson(measure), comparison: canonicalJson(comparison), engine: measure.engine };
  kept.set(index, made);
  return made;
}
