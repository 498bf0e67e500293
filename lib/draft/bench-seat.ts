import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import type { Context } from '@/lib/access/operation';
import { accommodationsOf, roundsAt } from '@/lib/proof/member-rounds';
import { whatTheBenchTells } from '@/shared/exercise/what-the-bench-tells';
import { exerciseSettingsSchema } from '@/shared/schemas/exercise';

/**
 * The actor in front of an exercise's benches: the seat, the round, and how much a bench may tell them now.
 * Staff are told everything. @throws NOT_FOUND, also for a student before any round has opened.
 */
export async function benchSeat({ data, now, actor }: Context, exerciseId: string) {
  const seat = await data.seats.atExercise(exerciseId);
  if (!seat || actor.kind !== 'person') throw notFound();
  const { current } = roundsAt(seat, now);
  const student = seat.member.role === 'student';
  if (student && !current) throw notFound();
  const settings = z.parse(exerciseSettingsSchema, JSON.parse(seat.exercise.settings));
  const accommodations = accommodationsOf(seat.member);
  const proofs = await data.proofs.ofSeat(seat.member.id, exerciseId);
  const sent = current !== null && proofs.some(({ roundId }) => roundId === current.id);
  return {
    seat,
    current,
    student,
    settings,
    accommodations,
    personKey: actor.userId,
    tells: student ? whatTheBenchTells(settings, accommodations, sent).level : ('everything' as const),
    exercise: { id: exerciseId, title: seat.exercise.title, state: seat.exercise.state },
    course: { id: seat.course.id, title: seat.course.title, timeZone: seat.course.timeZone },
  };
}
