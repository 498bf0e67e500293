import { encode } from 'next-auth/jwt';
import { hashToken, newToken } from '@/lib/account/token';
import { newId } from '@/lib/data/ids';
import { listNameOf } from '@/lib/data/members';
import type { Database } from '@/lib/data/open';
import { canonicalJson } from '@/shared/text/canonical-json';
import { compareLine, reportLine } from '@/shared/scoring';
import { drawnPack } from '../../fixtures/drawn-pack';

export type Size = { students: number; specimens: number; rounds: number };
export type Filled = {
  courseId: string;
  exerciseId: string;
  specimenIds: string[];
  versionIds: string[];
  instructorCookie: string;
  students: { cookie: string; draftIds: string[] }[];
  /** Proofs of the last round, in the order in which they were sent. */
  proofIds: string[];
  pairs: number;
};

const text = 'HOHOOHOHHOHO';
const pairs = text.length - 1;
const day = 86_400_000;

/** A class in the middle of a term: every student has sent in every round, everything is measured and compared. */
export async function fillClass(db: Database, size: Size, secret: string, now: Date): Promise<Filled> {
  // A machine that fails while the class is made up loses nothing of worth; the server opens the file with every commit
  // flushed. PostgreSQL knows no such word, and needs none.
  await db.$executeRawUnsafe('PRAGMA synchronous = OFF').catch(() => undefined);
  const at = new Date(now.getTime() - 30 * day);
  const [courseId, exerciseId, setId] = [newId(), newId(), newId()];
  await db.course.create({
    data: {
      id: courseId,
      title: `A class of ${size.students}`,
      timeZone: 'Europe/Lisbon',
      state: 'active',
      createdAt: at,
    },
  });
  await db.exercise.create({
    data: {
      id: exerciseId,
      courseId,
      title: 'Many lines',
      brief: 'Space them.',
      state: 'published',
      createdAt: at,
      publishedAt: at,
    },
  });
  const instructor = (await addPeople(db, courseId, 'instructor', [0], secret, at))[0]!;
  const roundIds = await addRounds(db, exerciseId, size.rounds, at);
  const specimens = await addSpecimens(db, exerciseId, size.specimens, at);
  const versionIds = specimens.map(({ id }) => id);
  await addCriterion(db, exerciseId, at);
  await db.referenceSet.create({ data: { id: setId, exerciseId, number: 1, createdAt: at } });
  const reference = {
    specimenVersionId: '',
    authorId: instructor.memberId,
    slot: 1,
    tracking: 0,
    offsets: canonicalJson(spacing(0).offsets),
    tolerances: canonicalJson(Array(pairs).fill(8)),
    reasons: canonicalJson(Array(pairs).fill(null)),
  };
  await db.reference.createMany({
    data: versionIds.map((specimenVersionId) => ({ id: newId(), ...reference, specimenVersionId, updatedAt: at })),
  });
  await db.referenceSetItem.createMany({
    data: versionIds.map((specimenVersionId) => ({ id: newId(), setId, ...reference, specimenVersionId })),
  });

  const students = [];
  const proofIds: string[] = [];
  for (let first = 0; first < size.students; first += atOnce) {
    const indices = Array.from({ length: Math.min(atOnce, size.students - first) }, (_, place) => first + place);
    const people = await addPeople(
      db,
      courseId,
      'student',
      indices.map((index) => index + 1),
      secret,
      at,
    );
    const drafts = people.flatMap(({ memberId }, place) =>
      versionIds.map((specimenVersionId) => ({
        id: newId(),
        memberId,
        specimenVersionId,
        purpose: 'work',
        tracking: 0,
        offsets: canonicalJson(spacing(indices[place]!).offsets),
        updatedAt: at,
      })),
    );
    await db.draft.createMany({ data: drafts });
    const proofs = people.flatMap(({ memberId }, place) =>
      roundIds.map((roundId, round) => ({
        id: newId(),
        roundId,
        memberId,
        index: indices[place]!,
        last: round + 1 === roundIds.length,
      })),
    );
    await addProofs(db, proofs, versionIds, setId, at);
    await db.release.createMany({
      data: proofs
        .filter(({ last }) => !last)
        .map(({ id, roundId, memberId }) => ({
          id: newId(),
          roundId,
          memberId,
          number: 1,
          proofId: id,
          referenceSetId: setId,
          engine: 1,
          snapshot: '{}',
          releasedById: instructor.memberId,
          releasedAt: at,
        })),
    });
    await db.auditEvent.createMany({
      data: proofs.flatMap(({ memberId }) =>
        ['proof marked', 'round released'].map((verb) => ({
          id: newId(),
          courseId,
          verb,
          subject: `member:${memberId}`,
          at,
        })),
      ),
    });
    proofIds.push(...proofs.filter(({ last }) => last).map(({ id }) => id));
    students.push(
      ...people.map(({ cookie, memberId }) => ({
        cookie,
        draftIds: drafts.filter((draft) => draft.memberId === memberId).map(({ id }) => id),
      })),
    );
  }
  return {
    courseId,
    exerciseId,
    specimenIds: specimens.map(({ specimenId }) => specimenId),
    versionIds,
    instructorCookie: instructor.cookie,
    students,
    proofIds,
    pairs,
  };
}

/** Students written in one go. */
const atOnce = 25;

async function addPeople(
  db: Database,
  courseId: string,
  role: string,
  numbers: readonly number[],
  secret: string,
  at: Date,
) {
  const far = new Date(at.getTime() + 365 * day);
  const people = numbers.map((number) => ({
    userId: newId(),
    memberId: newId(),
    token: newToken(),
    name: `${role} ${number}`,
    number,
  }));
  await db.user.createMany({
    data: people.map(({ userId, name, number }) => ({
      id: userId,
      emailNorm: `${role}-${number}-${courseId}@bench.example`,
      name,
      mayCreateCourses: role === 'instructor',
      createdAt: at,
    })),
  });
  await db.member.createMany({
    data: people.map(({ memberId, userId, name }) => ({
      id: memberId,
      courseId,
      userId,
      role,
      listName: listNameOf(name),
      joinedAt: at,
    })),
  });
  await db.authSession.createMany({
    data: people.map(({ userId, token }) => ({
      id: newId(),
      userId,
      tokenHash: hashToken(token),
      createdAt: at,
      expiresAt: far,
      lastSeenAt: new Date(),
    })),
  });
  return Promise.all(
    people.map(async ({ memberId, token }) => ({
      memberId,
      cookie: `next-auth.session-token=${await encode({ token: { sessionToken: token }, secret, maxAge: 365 * 86_400 })}`,
    })),
  );
}

async function addRounds(db: Database, exerciseId: string, count: number, at: Date): Promise<string[]> {
  const rounds = Array.from({ length: count }, (_, index) => ({
    id: newId(),
    exerciseId,
    number: index + 1,
    state: index + 1 < count ? 'released' : 'open',
    opensAt: at,
    dueAt: new Date(at.getTime() + (index + 1) * 20 * day),
  }));
  await db.round.createMany({ data: rounds });
  return rounds.map(({ id }) => id);
}

async function addSpecimens(
  db: Database,
  exerciseId: string,
  count: number,
  at: Date,
): Promise<{ specimenId: string; id: string }[]> {
  const packSha = newId().padEnd(64, '0');
  await db.pack.create({
    data: {
      sha256: packSha,
      format: 'kerncrit-pack/1',
      kind: 'font',
      payload: canonicalJson(drawnPack(text)),
      createdAt: at,
    },
  });
  const rows = Array.from({ length: count }, (_, index) => ({ specimenId: newId(), id: newId(), position: index + 1 }));
  await db.specimen.createMany({
    data: rows.map(({ specimenId, position }) => ({ id: specimenId, exerciseId, position, createdAt: at })),
  });
  await db.specimenVersion.createMany({
    data: rows.map(({ id, specimenId }) => ({
      id,
      specimenId,
      number: 1,
      text,
      packSha,
      size: 96,
      unit: 'px',
      ground: 'light',
      createdAt: at,
    })),
  });
  return rows;
}

async function addCriterion(db: Database, exerciseId: string, at: Date) {
  const levels = canonicalJson([
    { title: 'Not yet', description: '', points: 0 },
    { title: 'Even', description: '', points: 100 },
  ]);
  await db.criterion.create({
    data: {
      id: newId(),
      exerciseId,
      position: 1,
      createdAt: at,
      versions: {
        create: { id: newId(), number: 1, title: 'Evenness', basis: 'evenness', weight: 1, levels, createdAt: at },
      },
    },
  });
}

type NewProof = { id: string; roundId: string; memberId: string; index: number };

/**
 * Proofs with their lines measured and compared. What was measured is the same for all lines of a student, so it is
 * sent once and spread by the database.
 */
async function addProofs(
  db: Database,
  proofs: readonly NewProof[],
  versionIds: readonly string[],
  referenceSetId: string,
  at: Date,
) {
  await db.proof.createMany({
    data: proofs.map(({ id, roundId, memberId }) => ({
      id,
      roundId,
      memberId,
      number: 1,
      requestKey: newId(),
      reasoning: 'H and O stood too far apart.',
      receivedAt: at,
    })),
  });
  await db.proofItem.createMany({
    data: proofs.flatMap(({ id: proofId, index }) =>
      versionIds.map((specimenVersionId) => ({
        id: newId(),
        proofId,
        specimenVersionId,
        tracking: measured(index).tracking,
        offsets: measured(index).offsets,
      })),
    ),
  });
  await db.markTask.createMany({
    data: proofs.map(({ id, roundId, index }) => ({
      id: newId(),
      proofId: id,
      roundId,
      slot: 'first',
      alias: newId().slice(-12),
      state: index % 3 === 0 ? 'done' : 'open',
      createdAt: at,
    })),
  });
  for (const { id, index } of proofs) {
    const { measure, comparison, engine } = measured(index);
    await db.$executeRaw`INSERT INTO "Measurement" ("id", "proofItemId", "engine", "payload", "measuredAt") SELECT 'm' || "id", "id", ${engine}, ${measure}, ${at} FROM "ProofItem" WHERE "proofId" = ${id}`;
    await db.$executeRaw`INSERT INTO "Comparison" ("id", "proofItemId", "referenceSetId", "engine", "payload", "comparedAt") SELECT 'c' || "id", "id", ${referenceSetId}, ${engine}, ${comparison}, ${at} FROM "ProofItem" WHERE "proofId" = ${id}`;
  }
}

/** Invented, and different for neighbours in the list. */
function spacing(index: number) {
  return {
    tracking: (index % 5) - 2,
    offsets: Array.from(
      { length: pairs },
      (_, pair) => ((index * (7 + pair) + pair * 5 + Math.floor(index / 41)) % 41) - 20,
    ),
  };
}

const kept = new Map<
  number,
  { tracking: number; offsets: string; measure: string; comparison: string; engine: number }
>();

function measured(index: number) {
  const known = kept.get(index);
  if (known) return known;
  const set = spacing(index);
  const measure = reportLine(drawnPack(text), set, { size: { value: 96, unit: 'px' }, ground: 'light' });
  const comparison = compareLine(measure, [
    { author: 'instructor 0', ...spacing(0), tolerances: Array(pairs).fill(8), reasons: Array(pairs).fill(null) },
  ]);
  const made = {
    tracking: set.tracking,
    offsets: canonicalJson(set.offsets),
    measure: canonicalJson(measure),
    comparison: canonicalJson(comparison),
    engine: measure.engine,
  };
  kept.set(index, made);
  return made;
}
