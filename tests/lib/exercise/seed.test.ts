import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getPlan } from '@/lib/exercise/get-plan';
import { listReferences } from '@/lib/reference/list-references';
import { seedExercise } from '@/prisma/seed/exercise';
import { demoCourse, type DemoCourse } from '../../fixtures/demo-course';

let course: DemoCourse;
let exerciseId: string;
const now = new Date('2026-11-24T12:00:00Z');

beforeAll(async () => {
  course = await demoCourse();
  ({ exerciseId } = await seedExercise({ courseId: course.courseId, timeZone: 'Europe/Vienna', instructorId: 'instructor', assistantId: 'assistant' }, now));
}, 60_000);
afterAll(() => course.close());

describe('the demo’s exercise', () => {
  it('is published, with lines light and dark, in px and pt, two rounds and three criteria', async () => {
    const plan = await getPlan(course.caller('instructor'), { exerciseId });
    expect(plan.exercise.state).toBe('published');
    expect(plan.specimens).toHaveLength(9);
    expect(new Set(plan.specimens.map(({ ground }) => ground))).toEqual(new Set(['light', 'dark']));
    expect(new Set(plan.specimens.map(({ size }) => size.unit))).toEqual(new Set(['px', 'pt']));
    expect(plan.rounds.map(({ number, dueLocal }) => [number, dueLocal])).toEqual([[1, '2026-11-19T18:00'], [2, '2026-12-03T18:00']]);
    // Vienna is UTC+1 on both days (IANA time zone database).
    expect(plan.rounds[0]!.dueAt).toEqual(new Date('2026-11-19T17:00:00Z'));
    expect(plan.criteria.map(({ basis }) => basis)).toEqual(['judgement', 'judgement', 'distance']);
  });

  it('has references by two authors on some lines, in one frozen set', async () => {
    const { specimens, sets, changed } = await listReferences(course.caller('assistant'), { exerciseId });
    expect(specimens.map(({ references }) => references.length)).toEqual([2, 1, 2, 1, 1, 1, 0, 1, 0]);
    expect(specimens[0]!.references.find(({ author }) => author.startsWith('Instructor'))!.repeatability).not.toBeNull();
    expect(sets.map(({ number, references }) => [number, references])).toEqual([[1, 10]]);
    expect(changed).toBe(false);
  });
});
