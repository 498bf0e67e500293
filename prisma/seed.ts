import { seedCourse } from './seed/course';

export { demoSignIns } from './seed/people';

/** Fills a new database with the demo: everything in it is invented, and made by the operations that people use. */
export default async function seedDemo(now: Date): Promise<void> {
  await seedCourse(now);
}
