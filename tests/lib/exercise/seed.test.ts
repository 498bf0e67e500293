import { beforeAll, expect, it } from 'vitest';
import { getPlan } from '@/lib/exercise/plan';
import { listReferences } from '@/lib/reference/references';
import { seedExercise } from '@/prisma/seed/exercise';
import { describeOnSqlite } from '../../fixtures/databases';
import { caller, courseId, fillCourse } from '../../fixtures/demo-course';

describeOnSqlite('the demo’s exercise', (suite) => {
  let exerciseId: string;
  beforeAll(async () => {
    await fillCourse(suite.db);
    const people = { courseId, timeZone: 'Europe/Vienna', instructorId: 'instructor', assistantId: 'assistant' };
    ({ exerciseId } = await seedExercise(people, new Date('2026-11-24T12:00:00Z')));
  }, 120_000);

  it('is published, with lines light and dark, in px and pt, two rounds and three criteria', async () => {
    const plan = await getPlan(caller('instructor'), { exerciseId });
    expect(plan.exercise.state).toBe('published');
    expect(plan.specimens).toHaveLength(10);
    expect(new Set(plan.specimens.map(({ ground }) => ground))).toEqual(new Set(['light', 'dark']));
    expect(new Set(plan.specimens.map(({ size }) => size.unit))).toEqual(new Set(['px', 'pt']));
    expect(plan.rounds.map(({ number, dueLocal }) => [number, dueLocal])).toEqual([
      [1, '2026-11-19T18:00'],
      [2, '2026-12-03T18:00'],
    ]);
    // Vienna is UTC+1 on that day (IANA time zone database).
    expect(plan.rounds[0]!.dueAt).toEqual(new Date('2026-11-19T17:00:00Z'));
    expect(plan.criteria.map(({ basis }) => basis)).toEqual(['judgement', 'judgement', 'distance']);
  });

  it('has references by two authors on some lines, in one frozen set', async () => {
    const { specimens, sets, changed } = await listReferences(caller('assistant'), { exerciseId });
    const counts = specimens.map(({ references }) => references.length);
    expect(Math.max(...counts)).toBe(2);
    expect(counts).toContain(0);
    expect(specimens[0]!.references.find(({ author }) => author === 'The instructor')!.repeatability).not.toBeNull();
    expect(sets.map(({ number }) => number)).toEqual([1]);
    expect(changed).toBe(false);
  });
});
