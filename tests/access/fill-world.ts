import { hashPassword } from '@/lib/account/password';
import { hashToken } from '@/lib/account/token';
import { newId } from '@/lib/data/ids';
import type { Database } from '@/lib/data/open';
import { canonicalJson } from '@/shared/text/canonical-json';
import { compareLine, reportLine } from '@/shared/scoring';
import { lineKey, newWallSettings, storedWallSettings } from '@/lib/wall/walls';
import { drawnPack } from '../fixtures/drawn-pack';
import type { Who } from './row';

type Person = Exclude<Who, 'visitor'>;
const people: readonly Person[] = ['outsider', 'removed', 'student', 'otherStudent', 'assistant', 'instructor'];
const roleOf: Record<Person, string> = {
  outsider: 'instructor',
  removed: 'student',
  student: 'student',
  otherStudent: 'student',
  assistant: 'assistant',
  instructor: 'instructor',
};

/** Secrets of links that work, and the student's password. */
export const secrets = {
  join: 'j'.repeat(43),
  reset: 'r'.repeat(43),
  first: 'f'.repeat(43),
  calendar: 'c'.repeat(43),
  password: 'paper boats in rain',
};

/** The open wall of round 2. */
export const wallWorld = { code: 'BCDFGHJKMN', salt: 'grains of it' };

export type Ids = Awaited<ReturnType<typeof fillWorld>>;

/**
 * Fills an empty database with one course in which `student` has work of every kind, and another course that `outsider`
 * teaches.
 */
export async function fillWorld(db: Database, now: Date) {
  const before = (days: number) => new Date(now.getTime() - days * 86_400_000);
  const after = (days: number) => before(-days);
  const id = () => newId();
  const users = {} as Record<Person, string>;
  const sessions = {} as Record<Person, string>;
  const members = {} as Record<Person, string>;
  const [course, otherCourse, section] = [id(), id(), id()];
  await db.course.createMany({
    data: [
      { id: course, title: 'Display type', timeZone: 'Europe/Vienna', state: 'active', createdAt: before(60) },
      { id: otherCourse, title: 'Another course', timeZone: 'Europe/Vienna', state: 'active', createdAt: before(60) },
    ],
  });
  await db.section.create({ data: { id: section, courseId: course, name: 'Monday', createdAt: before(60) } });
  for (const who of people) {
    [users[who], sessions[who], members[who]] = [id(), id(), id()];
    await db.user.create({
      data: {
        id: users[who],
        emailNorm: `${who.toLowerCase()}@school.example`,
        name: `The ${who}`,
        mayCreateCourses: who === 'instructor',
        createdAt: before(60),
      },
    });
    await db.authSession.create({
      data: {
        id: sessions[who],
        userId: users[who],
        tokenHash: `hash-${who}`,
        createdAt: before(1),
        expiresAt: after(30),
        lastSeenAt: before(1),
      },
    });
    await db.member.create({
      data: {
        id: members[who],
        courseId: who === 'outsider' ? otherCourse : course,
        userId: users[who],
        role: roleOf[who],
        sectionId: who === 'student' ? section : null,
        listName: `the ${who.toLowerCase()}`,
        joinedAt: before(60),
        removedAt: who === 'removed' ? before(3) : null,
      },
    });
  }
  const [exercise, round, nextRound, criterion, criterionVersion, specimen, specimenVersion] = [
    id(),
    id(),
    id(),
    id(),
    id(),
    id(),
    id(),
  ];
  await db.exercise.create({
    data: {
      id: exercise,
      courseId: course,
      title: 'First lines',
      brief: 'Space them evenly.',
      state: 'published',
      createdAt: before(40),
      publishedAt: before(30),
    },
  });
  await db.round.createMany({
    data: [
      {
        id: round,
        exerciseId: exercise,
        number: 1,
        state: 'released',
        opensLocal: null,
        opensAt: before(30),
        dueLocal: null,
        dueAt: before(10),
        markingStartedAt: before(9),
      },
      {
        id: nextRound,
        exerciseId: exercise,
        number: 2,
        state: 'open',
        opensLocal: null,
        opensAt: before(5),
        dueLocal: null,
        dueAt: after(5),
      },
    ],
  });
  const extension = id();
  await db.roundExtension.create({
    data: {
      id: extension,
      roundId: nextRound,
      memberId: members.student,
      dueLocal: '2027-03-14T11:00',
      dueAt: after(6),
      createdAt: before(2),
    },
  });
  await db.criterion.create({ data: { id: criterion, exerciseId: exercise, position: 1, createdAt: before(40) } });
  await db.criterionVersion.create({
    data: {
      id: criterionVersion,
      criterionId: criterion,
      number: 1,
      title: 'Evenness',
      weight: 1,
      levels: levels(),
      createdAt: before(40),
    },
  });
  const pack = drawnPack('HO');
  await db.pack.create({
    data: {
      sha256: 'a'.repeat(64),
      format: 'kerncrit-pack/1',
      kind: 'font',
      payload: canonicalJson(pack),
      createdAt: before(40),
    },
  });
  await db.specimen.create({ data: { id: specimen, exerciseId: exercise, position: 1, createdAt: before(40) } });
  await db.specimenVersion.create({
    data: {
      id: specimenVersion,
      specimenId: specimen,
      number: 1,
      text: 'HO',
      packSha: 'a'.repeat(64),
      size: 96,
      unit: 'px',
      ground: 'light',
      createdAt: before(40),
    },
  });
  const [reference, referenceSet] = [id(), id()];
  const set = {
    specimenVersionId: specimenVersion,
    authorId: members.instructor,
    slot: 1,
    tracking: 0,
    offsets: '[-10]',
    tolerances: '[8]',
    reasons: '[null]',
  };
  await db.reference.create({ data: { id: reference, ...set, updatedAt: before(35) } });
  await db.referenceSet.create({
    data: {
      id: referenceSet,
      exerciseId: exercise,
      number: 1,
      createdAt: before(30),
      items: { create: { id: id(), ...set } },
    },
  });

  const demonstration = id();
  await db.demonstration.create({
    data: {
      id: demonstration,
      specimenVersionId: specimenVersion,
      authorId: members.assistant,
      title: 'Not shown yet',
      createdAt: before(10),
      steps: canonicalJson({
        start: { tracking: 0, offsets: [0] },
        steps: [{ tracking: 0, moves: [[0, -12]], run: [0, 0], reason: 'Both are straight.' }],
      }),
    },
  });

  const drafts = { student: id(), otherStudent: id() };
  for (const who of ['student', 'otherStudent'] as const) {
    await db.draft.create({
      data: {
        id: drafts[who],
        memberId: members[who],
        specimenVersionId: specimenVersion,
        purpose: 'work',
        tracking: 0,
        offsets: '[0]',
        updatedAt: before(20),
      },
    });
  }
  const [
    proof,
    proofItem,
    task,
    mark,
    note,
    noteEntry,
    release,
    nextProof,
    nextProofItem,
    nextTask,
    nextNote,
    joinLink,
    stockNote,
  ] = Array.from({ length: 13 }, id) as [
    string,
    string,
    string,
    string,
    string,
    string,
    string,
    string,
    string,
    string,
    string,
    string,
    string,
  ];
  const measure = reportLine(
    pack,
    { tracking: 0, offsets: [-4] },
    { size: { value: 96, unit: 'px' }, ground: 'light' },
  );
  const comparison = compareLine(measure, [
    { author: members.instructor, tracking: 0, offsets: [-10], tolerances: [8], reasons: [null] },
  ]);
  const proofs = [
    { id: proof, item: proofItem, roundId: round, at: before(12) },
    { id: nextProof, item: nextProofItem, roundId: nextRound, at: before(2) },
  ];
  for (const { id: proofId, item, roundId, at } of proofs) {
    await db.proof.create({
      data: {
        id: proofId,
        roundId,
        memberId: members.student,
        number: 1,
        requestKey: `request-${roundId}`,
        reasoning: 'H and O looked open.',
        receivedAt: at,
      },
    });
    await db.proofItem.create({
      data: { id: item, proofId, specimenVersionId: specimenVersion, tracking: 0, offsets: '[-4]' },
    });
    await db.measurement.create({
      data: { id: id(), proofItemId: item, engine: measure.engine, payload: canonicalJson(measure), measuredAt: at },
    });
    await db.comparison.create({
      data: {
        id: id(),
        proofItemId: item,
        referenceSetId: referenceSet,
        engine: comparison.engine,
        payload: canonicalJson(comparison),
        comparedAt: at,
      },
    });
  }
  await db.markTask.createMany({
    data: [
      {
        id: task,
        proofId: proof,
        roundId: round,
        slot: 'first',
        markerId: members.assistant,
        alias: 'quiet-heron',
        state: 'done',
        doneAt: before(8),
        createdAt: before(9),
      },
      {
        id: nextTask,
        proofId: nextProof,
        roundId: nextRound,
        slot: 'first',
        markerId: members.assistant,
        alias: 'plain-otter',
        state: 'open',
        createdAt: before(1),
      },
    ],
  });
  await db.mark.create({
    data: { id: mark, taskId: task, criterionVersionId: criterionVersion, level: 1, updatedAt: before(8) },
  });
  await db.note.createMany({
    data: [
      {
        id: note,
        proofItemId: proofItem,
        requestKey: 'note-request-1',
        fromPair: 0,
        toPair: 0,
        taskId: task,
        authorId: members.assistant,
        suggestion: '[-10]',
        createdAt: before(8),
      },
      {
        id: nextNote,
        proofItemId: nextProofItem,
        requestKey: 'note-request-2',
        fromPair: 0,
        toPair: 0,
        taskId: nextTask,
        authorId: members.assistant,
        createdAt: before(1),
      },
    ],
  });
  await db.noteEntry.createMany({
    data: [
      { id: noteEntry, noteId: note, seq: 1, authorId: members.assistant, body: 'A little closer.', at: before(8) },
      { id: id(), noteId: nextNote, seq: 1, authorId: members.assistant, body: 'Not released yet.', at: before(1) },
    ],
  });
  await db.release.create({
    data: {
      id: release,
      roundId: round,
      memberId: members.student,
      number: 1,
      proofId: proof,
      referenceSetId: referenceSet,
      engine: measure.engine,
      snapshot: snapshotOf({ proof, specimenVersion, note, criterionVersion }, before(8)),
      releasedById: members.instructor,
      releasedAt: before(7),
    },
  });
  await db.joinLink.create({
    data: {
      id: joinLink,
      courseId: course,
      tokenHash: hashToken(secrets.join),
      role: 'student',
      createdAt: before(5),
      expiresAt: after(5),
    },
  });
  await db.user.update({ where: { id: users.student }, data: { passwordHash: await hashPassword(secrets.password) } });
  await db.calendarFeed.create({
    data: { id: id(), userId: users.student, tokenHash: hashToken(secrets.calendar), createdAt: before(2) },
  });
  await db.oneTimeLink.createMany({
    data: [
      {
        id: id(),
        purpose: 'reset-password',
        tokenHash: hashToken(secrets.reset),
        userId: users.student,
        createdAt: before(0),
        expiresAt: after(1),
      },
      {
        id: id(),
        purpose: 'first-instructor',
        tokenHash: hashToken(secrets.first),
        createdAt: before(0),
        expiresAt: after(1),
      },
    ],
  });
  await db.stockNote.create({
    data: {
      id: stockNote,
      courseId: course,
      authorId: members.assistant,
      shared: true,
      body: 'Look at it upside down.',
      createdAt: before(9),
    },
  });
  const wall = id();
  await db.wall.create({
    data: {
      id: wall,
      roundId: nextRound,
      specimenId: specimen,
      code: wallWorld.code,
      settings: storedWallSettings({ ...newWallSettings(), salt: wallWorld.salt }),
      openedById: members.instructor,
      openedAt: before(0),
    },
  });
  return {
    wall,
    wallLine: lineKey(wallWorld.salt, members.student),
    demonstration,
    users,
    sessions,
    members,
    course,
    otherCourse,
    section,
    exercise,
    round,
    nextRound,
    extension,
    criterion,
    criterionVersion,
    specimen,
    specimenVersion,
    reference,
    referenceSet,
    draft: drafts.student,
    drafts,
    proof,
    proofItem,
    task,
    mark,
    note,
    noteEntry,
    release,
    nextProof,
    nextProofItem,
    nextTask,
    nextNote,
    joinLink,
    stockNote,
  };
}

/** What `student` was shown of round 1: one line, one note, one mark. */
const snapshotOf = (
  ids: { proof: string; specimenVersion: string; note: string; criterionVersion: string },
  at: Date,
) =>
  canonicalJson({
    version: 1,
    proofId: ids.proof,
    lines: [
      {
        specimenVersionId: ids.specimenVersion,
        text: 'HO',
        deviations: null,
        notes: [
          {
            id: ids.note,
            fromPair: 0,
            toPair: 0,
            suggestion: [-10],
            settled: false,
            entries: [
              { seq: 1, by: 'staff', author: null, body: 'A little closer.', replaces: null, at: at.toISOString() },
            ],
          },
        ],
      },
    ],
    marks: [
      {
        criterionVersionId: ids.criterionVersion,
        title: 'Evenness',
        weight: 1,
        level: 1,
        levels: JSON.parse(levels()),
      },
    ],
    total: { before: 50, after: 50, arithmetic: ['Evenness: Mostly, 50 % of weight 1 = 0.5'], late: null },
  });

const levels = () =>
  canonicalJson([
    { title: 'Not yet', description: '', points: 0 },
    { title: 'Mostly', description: '', points: 50 },
    { title: 'Even', description: '', points: 100 },
  ]);
