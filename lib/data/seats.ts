import { teaches } from '@/shared/schemas/course';
import type { Actor } from './actor';
import type { Db } from './client';
import { coursesOf, membersOf } from './scope';

/**
 * A seat: the actor's own membership for one exercise, with the rounds as they apply to this member. Students get an
 * exercise only once it is published; staff get drafts too.
 */
export const seatData = (actor: Actor, db: Db) => ({
  atExercise: async (exerciseId: string) => {
    const exercise = await db.exercise.findFirst({
      where: { id: exerciseId, removedAt: null, course: coursesOf(actor) },
      include: {
        course: { select: { id: true, title: true, timeZone: true, settings: true } },
        rounds: { orderBy: { number: 'asc' }, include: { sections: true } },
      },
    });
    if (!exercise) return null;
    const member = await db.member.findFirst({
      where: { AND: [membersOf(actor), { courseId: exercise.courseId }] },
      select: {
        id: true,
        role: true,
        sectionId: true,
        accommodations: true,
        extensions: { where: { round: { exerciseId } } },
      },
    });
    if (!member || (!teaches(member.role) && exercise.state === 'draft')) return null;
    const releases = await db.release.findMany({
      where: { memberId: member.id, round: { exerciseId } },
      select: { roundId: true },
      distinct: ['roundId'],
    });
    const released = new Set(releases.map(({ roundId }) => roundId));
    const { extensions, ...seat } = member;
    const { rounds, course, ...rest } = exercise;
    return {
      member: seat,
      course,
      exercise: rest,
      rounds: rounds.map((round) => ({
        ...round,
        extendedTo: extensions.find(({ roundId }) => roundId === round.id)?.dueAt ?? null,
        releasedToMember: released.has(round.id),
      })),
    };
  },
});

export type Seat = NonNullable<Awaited<ReturnType<ReturnType<typeof seatData>['atExercise']>>>;
