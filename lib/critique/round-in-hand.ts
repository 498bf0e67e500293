import { notFound } from '@/lib/access/errors';
import { settingsOf } from '@/lib/exercise/read-exercise';
import type { ScopedData } from '@/lib/data';

/** A round as staff have it before them, with what decides how its students are named. */
export async function roundInHand(data: ScopedData, exerciseId: string, number: number) {
  const round = await data.markTasks.round(exerciseId, number);
  if (!round) throw notFound();
  const me = await data.markTasks.marker(round.exercise.courseId);
  if (!me) throw notFound();
  return { round, exercise: round.exercise, course: round.exercise.course, settings: settingsOf(round.exercise), me };
}

export type RoundInHand = Awaited<ReturnType<typeof roundInHand>>;
