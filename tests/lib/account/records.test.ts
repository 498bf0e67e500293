import { beforeAll, describe, expect, it } from 'vitest';
import { systemCaller } from '@/lib/access/caller';
import { erasePerson } from '@/lib/account/erase';
import { exportOwnData, exportPersonData } from '@/lib/account/records';
import { newId } from '@/lib/data/ids';
import type { Database } from '@/lib/data/open';
import { fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { placesOfPeople, schemaModels } from '../../fixtures/schema-models';
import { callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

/** For each place of the schema that refers to a person: where it appears in the document of that person's data. */
const whereExported: Record<string, string> = {
  'PracticeResult.user': 'practice',
  'Identity.user': 'signIns.identities',
  'AuthSession.user': 'signIns.sessions',
  'CalendarFeed.user': 'signIns.calendarAddresses',
  'OneTimeLink.user': 'signIns.passwordLinks',
  'OneTimeLink.createdBy': 'made.passwordLinksHandedOver',
  'JoinLink.createdBy': 'made.joinLinks',
  'CourseFace.addedBy': 'made.faces',
  'AuditEvent.actor': 'acts',
  'Member.user': 'courses',
  'RoundExtension.member': 'courses.0.extensions',
  'RoundChoice.member': 'courses.0.choices',
  'Draft.member': 'drafts',
  'Proof.member': 'proofs',
  'Release.member': 'releases',
  'Reference.author': 'taught.0.references',
  'ReferenceSet.madeBy': 'taught.0.referenceSets',
  'ReferenceSetItem.author': 'taught.0.referenceSetItems',
  'Demonstration.author': 'demonstrations',
  'StockNote.author': 'taught.0.stockNotes',
  'Note.author': 'taught.0.notes',
  'NoteEntry.author': 'written',
  'MarkTask.marker': 'taught.0.markTasks',
  'MarkSkip.member': 'taught.0.markSkips',
  'MarkEvent.who': 'taught.0.markEvents',
  'RoundChoice.chosenBy': 'taught.0.choicesMade',
  'Release.releasedBy': 'taught.0.releasesMade',
  'Wall.openedBy': 'taught.0.walls',
};

describe('a person’s data', () => {
  it('is looked for in every place of the schema that refers to a person: a new one has to be given its place here, in the export and in erasing', () => {
    expect(Object.keys(whereExported).sort()).toEqual(placesOfPeople().sort());
  });
});

/** One more row in every place, all of one person who is student and instructor at once. */
async function fillEveryPlace(db: Database, ids: Ids): Promise<void> {
  const id = newId,
    userId = ids.users.student,
    memberId = ids.members.student;
  const mark = { id: id(), markId: ids.mark, whoId: memberId, why: 'Looked again.', before: null, after: 1, at: now };
  await db.practiceResult.create({
    data: {
      id: id(),
      userId,
      requestKey: 'practice-1',
      kind: '',
      size: 48,
      threshold: 12,
      payload: JSON.stringify({ task: 'gap off', trials: 20, turns: [12, 10] }),
      at: now,
    },
  });
  await db.identity.create({
    data: { id: id(), userId, issuer: 'https://issuer.example', subject: 'sub', createdAt: now },
  });
  await db.oneTimeLink.create({
    data: {
      id: id(),
      purpose: 'reset-password',
      tokenHash: 'handed',
      userId: ids.users.otherStudent,
      createdById: userId,
      createdAt: now,
      expiresAt: now,
    },
  });
  await db.joinLink.create({
    data: {
      id: id(),
      courseId: ids.course,
      tokenHash: 'join-2',
      role: 'student',
      createdById: userId,
      createdAt: now,
      expiresAt: now,
    },
  });
  await db.asset.create({
    data: { sha256: 'b'.repeat(64), bytes: new Uint8Array([1]), mime: 'font/ttf', licence: '{}', createdAt: now },
  });
  const faceId = id();
  await db.face.create({
    data: {
      id: faceId,
      assetSha: 'b'.repeat(64),
      index: 0,
      axes: '{}',
      family: 'Quay',
      style: 'Regular',
      weight: 400,
      createdAt: now,
    },
  });
  await db.courseFace.create({
    data: { id: id(), courseId: ids.course, faceId, addedById: userId, licenceNote: 'Ours.', createdAt: now },
  });
  await db.auditEvent.create({
    data: {
      id: id(),
      courseId: ids.course,
      actorId: userId,
      verb: 'member joined',
      subject: `member:${memberId}`,
      at: now,
    },
  });
  await db.roundChoice.create({
    data: { id: id(), roundId: ids.round, memberId, proofId: ids.proof, chosenById: memberId, chosenAt: now },
  });
  const own = {
    specimenVersionId: ids.specimenVersion,
    authorId: memberId,
    tracking: 0,
    offsets: '[1]',
    tolerances: '[8]',
    reasons: '["Because."]',
  };
  await db.reference.create({ data: { id: id(), ...own, slot: 1, updatedAt: now } });
  await db.referenceSet.create({
    data: {
      id: id(),
      exerciseId: ids.exercise,
      number: 2,
      madeById: memberId,
      createdAt: now,
      items: { create: { id: id(), ...own, slot: 1 } },
    },
  });
  await db.demonstration.create({
    data: {
      id: id(),
      specimenVersionId: ids.specimenVersion,
      authorId: memberId,
      title: 'Watch',
      steps: '{"steps":[]}',
      createdAt: now,
    },
  });
  await db.stockNote.create({
    data: { id: id(), courseId: ids.course, authorId: memberId, body: 'My own words.', createdAt: now },
  });
  await db.note.create({
    data: {
      id: id(),
      proofItemId: ids.proofItem,
      requestKey: 'own-note-1',
      authorId: memberId,
      createdAt: now,
      entries: { create: { id: id(), seq: 1, authorId: memberId, body: 'An answer.', at: now } },
    },
  });
  await db.markTask.create({
    data: {
      id: id(),
      proofId: ids.proof,
      slot: 'second',
      markerId: memberId,
      alias: 'slow-plover',
      state: 'open',
      createdAt: now,
    },
  });
  await db.markSkip.create({ data: { id: id(), proofId: ids.proof, memberId, at: now } });
  await db.markEvent.create({ data: mark });
  await db.release.create({
    data: {
      id: id(),
      roundId: ids.round,
      memberId: ids.members.otherStudent,
      number: 1,
      proofId: ids.proof,
      engine: 1,
      snapshot: '{}',
      releasedById: memberId,
      releasedAt: now,
    },
  });
  await db.wall.create({
    data: { id: id(), roundId: ids.round, specimenId: ids.specimen, code: 'quay', openedById: memberId, openedAt: now },
  });
}

describeOnBothDatabases('all of a person’s data', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
    await fillEveryPlace(suite.db, ids);
  });

  it('stands in the document, from every place', async () => {
    const records = await exportOwnData(callerIn(ids)('student'), {}, { now });
    const empty = Object.entries(whereExported).filter(([, path]) => {
      const found = path
        .split('.')
        .reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], records);
      return !(Array.isArray(found) && found.length > 0);
    });
    expect(empty).toEqual([]);
    const text = JSON.stringify(records);
    for (const secret of ['argon2id', 'hash-student', 'handed', 'Not released yet.', 'The other'])
      expect(text).not.toContain(secret);
  });

  it('is handed over by whoever runs the server, which is written down', async () => {
    const handed = await exportPersonData(systemCaller('test'), { email: 'Student@school.example ' }, { now });
    expect(handed).toEqual(await exportOwnData(callerIn(ids)('student'), {}, { now }));
    expect(
      await suite.db.auditEvent.count({ where: { verb: 'records handed over', subject: `user:${ids.users.student}` } }),
    ).toBe(1);
    await expect(
      exportPersonData(systemCaller('test'), { email: 'nobody@school.example' }, { now }),
    ).rejects.toMatchObject({ code: 'NOT_FOUND', userMessage: expect.stringContaining('nobody@school.example') });
  });

  it('is erased only when the address is written twice, and then names the person in no table', async () => {
    await expect(
      erasePerson(systemCaller('test'), { email: 'student@school.example', yes: 'other@school.example' }, { now }),
    ).rejects.toMatchObject({ code: 'INVALID' });
    const marks = async () => [
      await suite.db.mark.count(),
      await suite.db.proofItem.count(),
      await suite.db.measurement.count(),
    ];
    const before = await marks();
    await erasePerson(
      systemCaller('test'),
      { email: 'student@school.example', yes: 'student@school.example' },
      { now },
    );
    expect(await marks()).toEqual(before);
    for (const { name } of schemaModels()) {
      const rows = JSON.stringify(await suite.db.$queryRawUnsafe(`SELECT * FROM "${name}"`), (_, value: unknown) =>
        typeof value === 'bigint' ? String(value) : value,
      );
      for (const words of [
        '"student@school.example"',
        '"The student"',
        '"the student"',
        'H and O looked open.',
        'An answer.',
        'My own words.',
        'https://issuer.example',
      ])
        expect(rows.includes(words), `${name}: ${words}`).toBe(false);
    }
    expect(await suite.db.member.findUniqueOrThrow({ where: { id: ids.members.student } })).toMatchObject({
      userId: null,
      listName: '',
    });
  });
});
