import { beforeAll, expect, it } from 'vitest';
import { listNextSteps } from '@/lib/work/next-steps';
import { fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

describeOnBothDatabases('what is to be done now', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
  });
  const steps = (who: Parameters<ReturnType<typeof callerIn>>[0]) => listNextSteps(callerIn(ids)(who), {}, { now });

  it('offers the release of a round to an instructor alone', async () => {
    const [instructor, assistant] = [await steps('instructor'), await steps('assistant')];
    expect(instructor.staff.length).toBeGreaterThan(0);
    expect(assistant.staff.length).toBe(instructor.staff.length);
    expect(instructor.staff.map(({ mayRelease }) => mayRelease)).toEqual(instructor.staff.map(() => true));
    expect(assistant.staff.map(({ mayRelease }) => mayRelease)).toEqual(assistant.staff.map(() => false));
  });

  it('shows staff no step of a student, and a student none of staff', async () => {
    expect((await steps('instructor')).student).toEqual([]);
    const own = await steps('student');
    expect(own.staff).toEqual([]);
    expect(own.student).toMatchObject([{ exercise: { id: ids.exercise } }]);
  });
});
