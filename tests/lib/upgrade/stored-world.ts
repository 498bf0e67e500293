import type { Caller } from '@/lib/access/caller';
import type { Database } from '@/lib/data/open';
import { lineKey, type WallSettings } from '@/lib/wall/walls';
import type { World } from '@/tests/access/world';

/** Shortly after the newest row of the stored database was made. */
const now = new Date('2026-11-27T14:00:00.000Z');

/**
 * The stored demo as the table of role × operation wants a world: `student` is Ines, who has sent, been marked and
 * answered; round 1 is released, round 2 under way.
 */
export async function storedWorld(db: Database): Promise<World> {
  const userOf = async (name: string) =>
    (await db.user.findFirstOrThrow({ where: { emailNorm: { startsWith: `${name}@` } } })).id;
  const [instructor, assistant, student, otherStudent] = await Promise.all(
    ['odile', 'tobin', 'ines', 'bram'].map(userOf),
  );
  const users = { instructor, assistant, student, otherStudent } as Record<string, string>;
  const exercise = await db.exercise.findFirstOrThrow({
    where: { title: 'Signs for a harbour' },
    orderBy: { createdAt: 'asc' },
  });
  const memberOf = async (userId: string) =>
    (await db.member.findFirstOrThrow({ where: { userId, courseId: exercise.courseId } })).id;
  const members: Record<string, string> = {};
  for (const [who, userId] of Object.entries(users)) members[who] = await memberOf(userId);
  members.removed = (
    await db.member.findFirstOrThrow({ where: { courseId: exercise.courseId, removedAt: { not: null } } })
  ).id;
  const round = await db.round.findFirstOrThrow({ where: { exerciseId: exercise.id, number: 1 } });
  const nextRound = await db.round.findFirstOrThrow({ where: { exerciseId: exercise.id, number: 2 } });
  const criterion = await db.criterion.findFirstOrThrow({
    where: { exerciseId: exercise.id },
    include: { versions: true },
  });
  const specimen = await db.specimen.findFirstOrThrow({
    where: { exerciseId: exercise.id, retiredAt: null },
    orderBy: { position: 'asc' },
    include: { versions: true },
  });
  const release = await db.release.findFirstOrThrow({ where: { memberId: members.student, roundId: round.id } });
  const note = await db.note.findFirstOrThrow({
    where: { removedAt: null, proofItem: { proofId: release.proofId }, entries: { some: { seq: 2 } } },
  });
  const nextTask = await db.markTask.findFirstOrThrow({ where: { roundId: nextRound.id, slot: 'first' } });
  const wall = await db.wall.findFirstOrThrow({ where: { closedAt: null } });
  const { salt } = JSON.parse(wall.settings) as WallSettings;
  const nextSender = await db.proof.findFirstOrThrow({ where: { roundId: nextRound.id } });
  const ids = {
    users,
    members,
    sessions: { student: (await db.authSession.findFirstOrThrow({ where: { userId: student } })).id },
    course: exercise.courseId,
    section: (await db.section.findFirstOrThrow({ where: { courseId: exercise.courseId } })).id,
    exercise: exercise.id,
    round: round.id,
    nextRound: nextRound.id,
    extension: (await db.roundExtension.findFirstOrThrow()).id,
    criterion: criterion.id,
    criterionVersion: criterion.versions.at(-1)!.id,
    specimen: specimen.id,
    specimenVersion: specimen.versions.at(-1)!.id,
    reference: (await db.reference.findFirstOrThrow({ where: { authorId: members.instructor } })).id,
    draft: (await db.draft.findFirstOrThrow({ where: { memberId: members.student, purpose: 'work' } })).id,
    proof: release.proofId,
    note: note.id,
    // Names are hidden while that round is marked: a proof goes by its alias.
    nextProof: nextTask.alias,
    nextNote: (await db.note.findFirstOrThrow({ where: { proofItem: { proof: { roundId: nextRound.id } } } })).id,
    joinLink: (await db.joinLink.findFirstOrThrow({ where: { courseId: exercise.courseId } })).id,
    stockNote: (await db.stockNote.findFirstOrThrow({ where: { shared: false, removedAt: null } })).id,
    demonstration: (await db.demonstration.findFirstOrThrow({ where: { shownAt: null, removedAt: null } })).id,
    wall: wall.id,
    wallCode: wall.code,
    wallLine: lineKey(salt, nextSender.memberId),
  };
  const callers = Object.fromEntries(
    Object.entries(users).map(([who, userId]): [string, Caller] => [
      who,
      { kind: 'person', userId, sessionId: 'stored', address: 'stored' },
    ]),
  );
  return { ids, callers, now } as unknown as World;
}
