import type { Caller } from '@/lib/access/caller';
import { getPlan } from '@/lib/exercise/plan';
import { publishExercise } from '@/lib/exercise/publish';
import { seedDemonstrations } from './demonstrations';
import { brief, criteria, lines } from './exercise-words';
import { daysAgo, localTime } from './local-instant';
import { planExercise } from './plan';
import { seedReferences } from './references';

type People = { courseId: string; timeZone: string; instructorId: string; assistantId: string };

/**
 * The demo's exercise, made by the same operations that people use: ten lines, two rounds, three criteria, and
 * references by an instructor and an assistant. Planned when the course begins, published three weeks before `now`;
 * round 1 was due five days ago, round 2 is open.
 */
export async function seedExercise(
  { courseId, timeZone, instructorId, assistantId }: People,
  now: Date,
): Promise<{ exerciseId: string }> {
  const [instructor, assistant] = [person(instructorId), person(assistantId)];
  const local = (days: number, clock: string) => localTime(now, timeZone, days, clock);
  const rounds = [
    {
      title: 'First look',
      opensLocal: local(-20, '09:00'),
      dueLocal: local(-5, '18:00'),
      untilLocal: '',
      deductPerDay: 5,
    },
    {
      title: 'After critique',
      opensLocal: local(-4, '09:00'),
      dueLocal: local(9, '18:00'),
      untilLocal: local(11, '18:00'),
      deductPerDay: 10,
    },
  ];
  const plan = { title: 'Signs for a harbour', brief, lines, rounds, criteria };
  const exerciseId = await planExercise(instructor, courseId, plan, daysAgo(now, 48));
  const published = daysAgo(now, 21);
  await seedReferences({ exerciseId, instructor, assistant }, published.now);
  await publishExercise(instructor, { exerciseId, version: 1 }, published);
  const { specimens } = await getPlan(instructor, { exerciseId });
  await seedDemonstrations(
    { instructor, assistant },
    specimens.map(({ id }) => id),
    published.now,
  );
  return { exerciseId };
}

const person = (userId: string): Caller => ({ kind: 'person', userId, sessionId: 'seed', address: 'seed' });
