import { seedCourse } from './seed/course';
import { seedCritique, seedSecondCritique } from './seed/critique';
import { seedExercise } from './seed/exercise';
import { seedFirstRound, seedSecondRound } from './seed/work';

export { demoSignIns } from './seed/people';

/**
 * Fills a new database with the demo: everything in it is invented, and made by the operations that people use.
 * A course, an exercise, round 1 sent, critiqued, marked and released, round 2 under way.
 */
export default async function seedDemo(now: Date): Promise<void> {
  const people = await seedCourse(now);
  const seats = { ...people, ...(await seedExercise(people, now)) };
  await seedFirstRound(seats, now);
  await seedCritique(seats, now);
  await seedSecondRound(seats, now);
  await seedSecondCritique(seats, now);
}
