import { beforeAll, expect, it } from 'vitest';
import { exportOwnData } from '@/lib/account/records';
import { newId } from '@/lib/data/ids';
import {
  saveDemonstration,
  listDemonstrations,
  removeDemonstration,
  renameDemonstration,
  getDemonstration,
  setDemonstrationShown,
} from '@/lib/work/demonstrations';
import { addRound } from '@/lib/exercise/rounds';
import { addSpecimens } from '@/lib/exercise/specimens';
import { createExercise } from '@/lib/exercise/exercises';
import { getPlan } from '@/lib/exercise/plan';
import { publishExercise } from '@/lib/exercise/publish';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { caller, courseId, fillCourse, type Who } from '@/tests/fixtures/demo-course';

const instructor = caller('instructor');
const assistant = caller('assistant');
const recorded = {
  start: { tracking: 0, offsets: [0, 0] },
  steps: [
    {
      tracking: 0,
      moves: [[1, -30]] as [number, number][],
      run: [1, 1] as [number, number],
      reason: 'The A leans away under the bar.',
    },
    { tracking: -5, moves: [], run: null, reason: '' },
  ],
};

describeOnBothDatabases('demonstrations', (suite) => {
  let exerciseId: string;
  let specimenVersionId: string;
  beforeAll(async () => {
    await fillCourse(suite.db);
    ({ exerciseId } = await createExercise(instructor, { courseId, title: 'Lines', brief: '', safetySigns: false }));
    await addSpecimens(instructor, {
      exerciseId,
      lines: ['HAT'],
      faces: ['lato-700'],
      sizes: [{ value: 64, unit: 'px' }],
      grounds: ['light'],
    });
    await addRound(instructor, {
      exerciseId,
      title: '',
      opensLocal: '',
      dueLocal: '',
      accept: 'always',
      untilLocal: '',
      deductPerDay: 0,
    });
    specimenVersionId = (await getPlan(instructor, { exerciseId })).specimens[0]!.versionId;
  });

  const keep = (by = assistant, demonstrationId = newId(), title = 'From the bar to the stem') =>
    saveDemonstration(by, { demonstrationId, specimenVersionId, title, recorded }).then(({ id }) => id);
  const seen = (who: Who, demonstrationId: string) =>
    getDemonstration(caller(who), { exerciseId, demonstrationId }).then(
      ({ demonstration }) => demonstration.title,
      (error: { code: string }) => error.code,
    );
  const titles = async (who: Who) =>
    (await listDemonstrations(caller(who), { exerciseId })).demonstrations.map(({ id }) => id);

  it('are kept once, however often they are sent, and end as they were set', async () => {
    const id = newId();
    await Promise.all(Array.from({ length: 10 }, () => keep(assistant, id)));
    expect(await suite.db.demonstration.count({ where: { id } })).toBe(1);
    const { demonstration, mayChange } = await getDemonstration(instructor, { exerciseId, demonstrationId: id });
    expect([demonstration.last, demonstration.reasons, demonstration.author, mayChange]).toEqual([
      { tracking: -5, offsets: [0, -30] },
      1,
      'The assistant',
      true,
    ]);
    expect(JSON.stringify((await exportOwnData(assistant, {})).demonstrations)).toContain('The A leans away');
  });

  it('are not there for students before they are shown, nor after they are taken back or put aside', async () => {
    const id = await keep();
    // Only staff see a draft's; after publishing, one that is not shown is still theirs alone.
    expect([await seen('assistant', id), await seen('student', id)]).toEqual(['From the bar to the stem', 'NOT_FOUND']);
    await setDemonstrationShown(assistant, { demonstrationId: id, version: 0, shown: true });
    expect(await seen('student', id)).toBe('NOT_FOUND');
    await publishExercise(instructor, { exerciseId, version: 0 });
    expect([await seen('student', id), await titles('student'), await seen('outsider', id)]).toEqual([
      'From the bar to the stem',
      [id],
      'NOT_FOUND',
    ]);
    await removeDemonstration(instructor, { demonstrationId: id, version: 1, removed: true });
    expect([await seen('student', id), await titles('student')]).toEqual(['NOT_FOUND', []]);
    await removeDemonstration(instructor, { demonstrationId: id, version: 2, removed: false });
    expect(await seen('student', id)).toBe('From the bar to the stem');
    await setDemonstrationShown(instructor, { demonstrationId: id, version: 3, shown: false });
    expect(await seen('student', id)).toBe('NOT_FOUND');
    expect(
      (await suite.db.auditEvent.findMany({ where: { subject: `demonstration:${id}` }, orderBy: { at: 'asc' } })).map(
        ({ verb }) => verb,
      ),
    ).toEqual(['demonstration shown', 'demonstration hidden']);
  });

  it('are changed by their author and by instructors, by one of two at once', async () => {
    const id = await keep(instructor);
    await expect(
      setDemonstrationShown(assistant, { demonstrationId: id, version: 0, shown: true }),
    ).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
    const both = await Promise.allSettled(
      [instructor, caller('second')].map((who, index) =>
        renameDemonstration(who, { demonstrationId: id, version: 0, title: `Title ${index}` }),
      ),
    );
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(both.find((one) => one.status === 'rejected')).toMatchObject({ reason: { code: 'CONFLICT' } });
  });

  it('that do not fit the line are refused with what is wrong', async () => {
    await expect(
      saveDemonstration(instructor, {
        demonstrationId: newId(),
        specimenVersionId,
        title: 'x',
        recorded: { ...recorded, start: { tracking: 0, offsets: [0] } },
      }),
    ).rejects.toThrow('This line has 2 gaps');
    await expect(
      saveDemonstration(instructor, { demonstrationId: newId(), specimenVersionId, title: ' ', recorded }),
    ).rejects.toMatchObject({ fields: { title: expect.stringContaining('Give the demonstration a title.') } });
  });

  it('take nobody else’s place', async () => {
    const id = await keep(assistant);
    // Answered as not found, so that an id read over a shoulder reveals nothing.
    for (const again of [1, 2])
      await expect(keep(instructor, id, `Mine now, ${again}`)).rejects.toMatchObject({ code: 'NOT_FOUND' });
    expect(await seen('assistant', id)).toBe('From the bar to the stem');
  });
});
