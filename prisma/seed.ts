import { seedCourse } from './seed/course';
import { seedCritique, seedSecondCritique } from './seed/critique';
import { seedExercise } from './seed/exercise';
import { seedClosedExercise, seedPlannedExercise } from './seed/other-exercises';
import { seedPractice } from './seed/practice';
import { seedFirstRound, seedSecondRound } from './seed/work';

export { demoSignIns } from './seed/people';

/**
 * Fills a new database with the demo: everything in it is invented, and made by the operations that people use.
 * A course with three exercises: one closed, one with round 1 sent, critiqued, marked and released and round 2 under
 * way, and one in preparation; and what two students saw in practice.
 */
export default async function seedDemo(now: Date): Promise<void> {
  const people = await seedCourse(now);
  const seats = { ...people, ...(await seedExercise(people, now)) };
  await seedClosedExercise(seats, now);
  await seedFirstRound(seats, now);
  await seedCritique(seats, now);
  await seedSecondRound(seats, now);
  await seedSecondCritique(seats, now);
  await seedPlannedExercise(seats, now);
  await seedPractice(seats.studentIds, now);
}
