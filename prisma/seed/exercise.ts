import { Temporal } from 'temporal-polyfill';
import type { Caller } from '@/lib/access/caller';
import { addCriterion } from '@/lib/exercise/criteria';
import { addRound } from '@/lib/exercise/rounds';
import { addSpecimens } from '@/lib/exercise/specimens';
import { changeExercise, createExercise } from '@/lib/exercise/exercises';
import { getPlan } from '@/lib/exercise/plan';
import { publishExercise } from '@/lib/exercise/publish';
import { brief, criteria, lines } from './exercise-words';
import { seedDemonstrations } from './demonstrations';
import { seedReferences } from './references';

type People = { courseId: string; timeZone: string; instructorId: string; assistantId: string };

/**
 * The demo's exercise, made by the same operations that people use: ten specimens, two rounds, three criteria, and
 * references by two teachers. Published three weeks before `now`; round 1 was due five days ago, round 2 is open.
 */
export async function seedExercise(
  { courseId, timeZone, instructorId, assistantId }: People,
  now: Date,
): Promise<{ exerciseId: string }> {
  const instructor = person(instructorId);
  const begun = { now: new Date(now.getTime() - 21 * day) };
  const { exerciseId } = await createExercise(
    instructor,
    { courseId, title: 'Signs for a harbour', brief, safetySigns: false },
    begun,
  );
  await changeExercise(
    instructor,
    {
      exerciseId,
      version: 0,
      title: 'Signs for a harbour',
      brief,
      settings: {
        benchTells: 'contact',
        benchTellsAfterProof: 'evenness',
        referencesShown: 'after-release',
        tolerance: 10,
        smallestSize: { value: 24, unit: 'px' },
        namesHidden: true,
        safetySigns: false,
      },
    },
    begun,
  );
  for (const { text, face, size, ground } of lines) {
    await addSpecimens(
      instructor,
      { exerciseId, lines: [text], faces: [face], sizes: [size], grounds: [ground] },
      begun,
    );
  }
  const local = (days: number, hour: string) =>
    `${Temporal.Instant.fromEpochMilliseconds(now.getTime() + days * day)
      .toZonedDateTimeISO(timeZone)
      .toPlainDate()
      .toString()}T${hour}`;
  await addRound(
    instructor,
    {
      exerciseId,
      title: 'First look',
      opensLocal: local(-20, '09:00'),
      dueLocal: local(-5, '18:00'),
      accept: 'always',
      untilLocal: '',
      deductPerDay: 5,
    },
    begun,
  );
  await addRound(
    instructor,
    {
      exerciseId,
      title: 'After critique',
      opensLocal: local(-4, '09:00'),
      dueLocal: local(9, '18:00'),
      accept: 'until',
      untilLocal: local(11, '18:00'),
      deductPerDay: 10,
    },
    begun,
  );
  for (const criterion of criteria) await addCriterion(instructor, { exerciseId, ...criterion }, begun);
  await seedReferences({ exerciseId, instructor, assistant: person(assistantId) }, begun.now);
  await publishExercise(instructor, { exerciseId, version: 1 }, begun);
  const { specimens } = await getPlan(instructor, { exerciseId });
  await seedDemonstrations(
    { instructor, assistant: person(assistantId) },
    specimens.map(({ id }) => id),
    begun.now,
  );
  return { exerciseId };
}

const day = 86_400_000;

const person = (userId: string): Caller => ({ kind: 'person', userId, sessionId: 'seed', address: 'seed' });
