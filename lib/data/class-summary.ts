import { Prisma } from '@/prisma/generated/sqlite/client/client';
import type { Actor } from './actor';
import type { Db } from './client';
import { newId } from './ids';
import { coursesOf, proofsOfStaff, roundsOfStaff, staff, studentRoles } from './scope';

/**
 * What the class page reads: counts made by the database, one page of students, and a summary made once per state of
 * the round.
 */
export const classSummaryData = (actor: Actor, db: Db) => ({
  find: (roundId: string, kind: string) =>
    db.summary.findFirst({
      where: { roundId, kind, round: roundsOfStaff(actor) },
      select: { basis: true, payload: true },
    }),

  /**
   * Keeps a summary in place of the one before. @throws P2002 when another request keeps the first one at this moment.
   */
  save: async (roundId: string, kind: string, basis: string, payload: string, now: Date): Promise<void> => {
    const { count } = await db.summary.updateMany({
      where: { roundId, kind, round: roundsOfStaff(actor) },
      data: { basis, payload, madeAt: now, version: { increment: 1 } },
    });
    if (count === 0) await db.summary.create({ data: { id: newId(), roundId, kind, basis, payload, madeAt: now } });
  },

  /** Throws away what was worked out for an exercise's rounds: it was compared with another set of references. */
  forget: (exerciseId: string) =>
    db.summary.deleteMany({ where: { round: { AND: [{ exerciseId }, roundsOfStaff(actor)] } } }),

  /** What was set in these proofs, with the newest comparison of each line or, where it has none, its measures. */
  spacings: async (proofIds: readonly string[]) => {
    const items = await db.proofItem.findMany({
      where: { proofId: { in: [...proofIds] }, proof: { round: roundsOfStaff(actor) } },
      select: {
        specimenVersionId: true,
        tracking: true,
        offsets: true,
        proof: { select: { memberId: true } },
        id: true,
        comparisons: {
          orderBy: [{ referenceSet: { number: 'desc' } }, { engine: 'desc' }],
          take: 1,
          select: { payload: true },
        },
      },
    });
    // Most exercises have references, and a class of measures is several times as much to read.
    const alone = items.flatMap(({ id, comparisons }) => (comparisons.length === 0 ? [id] : []));
    const measured =
      alone.length === 0
        ? []
        : await db.measurement.findMany({
            where: { proofItemId: { in: alone } },
            orderBy: { engine: 'desc' },
            select: { proofItemId: true, payload: true },
          });
    const newest = new Map(measured.toReversed().map((row) => [row.proofItemId, row]));
    return items.map((item) => ({ ...item, measurements: [newest.get(item.id)].flatMap((row) => row ?? []) }));
  },

  /**
   * Of each specimen version that was sent in a round: its text, and one measurement, from which letters and sides are
   * read.
   */
  versions: async (roundId: string) => {
    const versions = await db.specimenVersion.findMany({
      where: { proofItems: { some: { proof: { roundId, round: roundsOfStaff(actor) } } } },
      select: { id: true, specimenId: true, text: true, details: true, specimen: { select: { position: true } } },
      orderBy: [{ specimen: { position: 'asc' } }, { number: 'asc' }],
    });
    return Promise.all(
      versions.map(async (version) => ({
        ...version,
        measured: await db.measurement.findFirst({
          where: { proofItem: { specimenVersionId: version.id, proof: { roundId, round: roundsOfStaff(actor) } } },
          orderBy: { engine: 'desc' },
          select: { payload: true },
        }),
      })),
    );
  },

  students: (courseId: string) =>
    db.member.count({
      where: { courseId, role: { in: [...studentRoles] }, removedAt: null, course: coursesOf(actor, staff) },
    }),

  /** One page of the course's students, by name, with what each sent in the round. */
  studentsWithProofs: (courseId: string, roundId: string, page: { skip: number; take: number }) =>
    db.member.findMany({
      where: { courseId, role: { in: [...studentRoles] }, removedAt: null, course: coursesOf(actor, staff) },
      orderBy: [{ listName: 'asc' }, { id: 'asc' }],
      ...page,
      select: {
        id: true,
        accommodations: true,
        sectionId: true,
        user: { select: { name: true } },
        section: { select: { name: true } },
        extensions: { where: { roundId } },
        proofs: {
          where: { roundId },
          orderBy: { number: 'asc' },
          select: { id: true, number: true, receivedAt: true, memberId: true },
        },
        choices: { where: { roundId }, select: { proofId: true, chosenById: true } },
      },
    }),

  /** Every round of every exercise of a course, in their order. */
  roundsOfCourse: (courseId: string) =>
    db.round.findMany({
      where: { AND: [{ exercise: { courseId } }, roundsOfStaff(actor)] },
      orderBy: [{ exercise: { position: 'asc' } }, { number: 'asc' }],
      select: {
        id: true,
        number: true,
        title: true,
        state: true,
        dueAt: true,
        sections: { select: { dueAt: true, section: { select: { name: true } } } },
        exercise: { select: { id: true, title: true, state: true } },
      },
    }),

  course: (courseId: string) =>
    db.course.findFirst({
      where: { AND: [{ id: courseId }, coursesOf(actor, staff)] },
      select: { id: true, title: true, timeZone: true },
    }),

  /** The rounds of an exercise with how many proofs each has; one plain statement, which counts in an index alone. */
  roundNumbers: async (exerciseId: string): Promise<{ number: number; title: string; proofs: number }[]> => {
    if (actor.kind !== 'person') return [];
    const rows = await db.$queryRaw<{ number: unknown; title: string; proofs: unknown }[]>`
      SELECT r."number", r."title", (SELECT COUNT(*) FROM "Proof" p WHERE p."roundId" = r."id") AS "proofs"
      FROM "Round" r JOIN "Exercise" e ON e."id" = r."exerciseId" JOIN "Member" m ON m."courseId" = e."courseId"
      WHERE e."id" = ${exerciseId} AND e."removedAt" IS NULL
        AND m."userId" = ${actor.userId} AND m."removedAt" IS NULL AND m."role" IN (${Prisma.join([...staff])})
      ORDER BY r."number"`;
    return rows.map(({ number, title, proofs }) => ({ number: Number(number), title, proofs: Number(proofs) }));
  },
});

/** What a map of the class is made from. For staff only. */
export const classMapData = (actor: Actor, db: Db) => ({
  /** How one line was set in these proofs, with what was measured and compared last. */
  spacings: (specimenVersionId: string, proofIds: readonly string[]) =>
    db.proofItem.findMany({
      where: { specimenVersionId, proofId: { in: [...proofIds] }, proof: proofsOfStaff(actor) },
      select: {
        proofId: true,
        tracking: true,
        offsets: true,
        proof: { select: { memberId: true } },
        measurements: { orderBy: { engine: 'desc' }, take: 1, select: { payload: true } },
        comparisons: {
          orderBy: [{ referenceSet: { number: 'desc' } }, { engine: 'desc' }],
          take: 1,
          select: { payload: true, referenceSetId: true },
        },
      },
    }),

  /** Packs and grounds of specimen versions that were sent in rounds the actor teaches. */
  versions: (ids: readonly string[]) =>
    db.specimenVersion.findMany({
      where: { id: { in: [...ids] }, proofItems: { some: { proof: { round: roundsOfStaff(actor) } } } },
      select: { id: true, size: true, unit: true, ground: true, pack: { select: { payload: true } } },
    }),

  /** The references of these lines in frozen sets, each author’s first of a line. */
  references: async (setIds: readonly string[], specimenVersionIds: readonly string[]) => {
    if (setIds.length === 0) return [];
    const items = await db.referenceSetItem.findMany({
      where: {
        setId: { in: [...setIds] },
        specimenVersionId: { in: [...specimenVersionIds] },
        set: { exercise: { rounds: { some: roundsOfStaff(actor) } } },
      },
      select: {
        setId: true,
        specimenVersionId: true,
        authorId: true,
        slot: true,
        tracking: true,
        offsets: true,
        author: { select: { user: { select: { name: true } } } },
      },
      orderBy: [{ authorId: 'asc' }, { slot: 'asc' }],
    });
    const firsts = new Map(
      items.toReversed().map((item) => [`${item.setId} ${item.specimenVersionId} ${item.authorId}`, item]),
    );
    return items.filter((item) => firsts.get(`${item.setId} ${item.specimenVersionId} ${item.authorId}`) === item);
  },
});
