import * as z from 'zod/mini';
import type { Actor } from './actor';
import { type Pack, packSchema } from '@/shared/schemas/pack';
import type { Db } from './client';
import { coursesOf, instructorRoles, specimenVersionsOf } from './scope';

const licenceSchema = z.object({
  name: z._default(z.string(), ''),
  url: z._default(z.string(), ''),
  attribution: z._default(z.string(), ''),
});

/** What a file that leaves the server must carry with it. */
export const exportData = (actor: Actor, db: Db) => ({
  /** The licence of the face that a pack was made from, in one line; for packs of the actor's own courses. */
  licenceOf: async (packSha: string): Promise<string> => {
    const pack = await db.pack.findFirst({
      where: { sha256: packSha, versions: { some: { specimen: { exercise: { course: coursesOf(actor) } } } } },
      select: { asset: { select: { licence: true } }, face: { select: { asset: { select: { licence: true } } } } },
    });
    const text = pack?.face?.asset.licence ?? pack?.asset?.licence;
    if (!text) return 'not recorded; ask the person who added the face to the course';
    const { name, url, attribution } = z.parse(licenceSchema, JSON.parse(text));
    return [name || 'not named', attribution, url].filter((part) => part !== '').join(', ');
  },

  /** The packs of specimen versions of the actor's own courses, by version. */
  linesOf: async (versionIds: readonly string[]): Promise<Map<string, { specimenId: string; pack: Pack }>> => {
    const rows = await db.specimenVersion.findMany({
      where: { AND: [{ id: { in: [...versionIds] } }, specimenVersionsOf(actor)] },
      select: { id: true, specimenId: true, pack: { select: { payload: true } } },
    });
    return new Map(
      rows.map(({ id, specimenId, pack }) => [id, { specimenId, pack: z.parse(packSchema, JSON.parse(pack.payload)) }]),
    );
  },

  /** All present members of a course, for an export that names them; the course must be its instructor's. */
  rosterOf: (courseId: string) =>
    db.member.findMany({
      where: { courseId, removedAt: null, userId: { not: null }, course: coursesOf(actor, instructorRoles) },
      orderBy: { id: 'asc' },
      select: { id: true, role: true, user: { select: { id: true, name: true, emailNorm: true } } },
    }),

  /** When the work of a course begins and ends: its making, the opening and due instants of its rounds. */
  spanOf: async (courseId: string): Promise<{ from: Date; to: Date | null }> => {
    const where = {
      exercise: { removedAt: null, course: { AND: [{ id: courseId }, coursesOf(actor, instructorRoles)] } },
    };
    const [course, rounds, sections] = await Promise.all([
      db.course.findFirstOrThrow({
        where: { AND: [{ id: courseId }, coursesOf(actor, instructorRoles)] },
        select: { createdAt: true },
      }),
      db.round.aggregate({ where, _min: { opensAt: true }, _max: { dueAt: true } }),
      db.roundSection.aggregate({ where: { round: where }, _min: { opensAt: true }, _max: { dueAt: true } }),
    ]);
    const opens = [course.createdAt, rounds._min.opensAt, sections._min.opensAt].filter((at) => at !== null);
    const due = [rounds._max.dueAt, sections._max.dueAt].filter((at) => at !== null);
    return {
      from: new Date(Math.min(...opens.map(Number))),
      to: due.length === 0 ? null : new Date(Math.max(...due.map(Number))),
    };
  },

  /** What went out last to each member of a round. */
  newestReleases: async (roundId: string) => {
    const rows = await db.release.findMany({
      where: { roundId, round: { exercise: { course: coursesOf(actor, instructorRoles) } } },
      orderBy: { number: 'asc' },
      select: { memberId: true, number: true, releasedAt: true, snapshot: true },
    });
    return [...new Map(rows.map((row) => [row.memberId, row])).values()];
  },

  /** What other systems call these rows of ours, by kind and id; where several do, the first that was written down. */
  externalIds: async (localIds: readonly string[]): Promise<Map<string, string>> => {
    // The ids in the request come from queries of the actor's own courses.
    const rows = await db.externalRef.findMany({
      where: { localId: { in: [...localIds] } },
      orderBy: { createdAt: 'desc' },
      select: { kind: true, localId: true, externalId: true },
    });
    return new Map(rows.map(({ kind, localId, externalId }) => [`${kind} ${localId}`, externalId]));
  },
});
