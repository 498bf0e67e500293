import { beforeAll, expect, it } from 'vitest';
import { AppError } from '@/lib/access/errors';
import { addCriterion, changeCriterion, retireCriterion } from '@/lib/exercise/criteria';
import { addRound, changeRound } from '@/lib/exercise/rounds';
import { addSpecimens } from '@/lib/exercise/specimens';
import {
  changeExercise,
  closeExercise,
  createExercise,
  listExercises,
  removeExercise,
  restoreExercise,
} from '@/lib/exercise/exercises';
import { getPlan } from '@/lib/exercise/plan';
import { publishExercise } from '@/lib/exercise/publish';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { caller, courseId, fillCourse } from '../../fixtures/demo-course';

const instructor = caller('instructor');
const second = caller('second');
const settings = {
  benchTells: 'nothing',
  benchTellsAfterProof: 'evenness',
  referencesShown: 'never',
  tolerance: 10,
  namesHidden: false,
  safetySigns: false,
};
const round = {
  title: '',
  opensLocal: '',
  dueLocal: '2026-12-01T18:00',
  accept: 'always',
  untilLocal: '',
  deductPerDay: 0,
};
const levels = [
  { title: 'Not yet', description: '', points: 0 },
  { title: 'Fully', description: '', points: 100 },
];
const byEye = { title: 'Evenness', description: '', basis: 'judgement', weight: 1, levels };
const byDistance = { ...byEye, title: 'Nearness', basis: 'distance' };
const two = { lines: ['TO'], faces: ['lato-700'], sizes: [{ value: 72, unit: 'px' }], grounds: ['light', 'dark'] };

const draft = async () =>
  (await createExercise(instructor, { courseId, title: 'A name over a gate', brief: '', safetySigns: false }))
    .exerciseId;
const planOf = (exerciseId: string) => getPlan(instructor, { exerciseId });
const codeOf = async (attempt: Promise<unknown>): Promise<string> => {
  try {
    await attempt;
    return 'ok';
  } catch (error) {
    return error instanceof AppError ? error.code : String(error);
  }
};

describeOnBothDatabases('planning an exercise', (suite) => {
  beforeAll(() => fillCourse(suite.db));

  it('lets one of two instructors save, and tells the other', async () => {
    const exerciseId = await draft();
    const save = (who: typeof instructor, title: string) =>
      codeOf(changeExercise(who, { exerciseId, version: 0, title, brief: '', settings }));
    const answers = await Promise.all([save(instructor, 'One'), save(second, 'Two'), save(instructor, 'Three')]);
    expect([...answers].sort()).toEqual(['CONFLICT', 'CONFLICT', 'ok']);
    const { exercise } = await planOf(exerciseId);
    expect(exercise.version).toBe(1);
    expect(exercise.title).toBe(['One', 'Two', 'Three'][answers.indexOf('ok')]);
  });

  it('numbers rounds without a hole when several are added at once', async () => {
    const exerciseId = await draft();
    await Promise.all(Array.from({ length: 5 }, () => addRound(instructor, { exerciseId, ...round })));
    expect((await planOf(exerciseId)).rounds.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5]);
  });

  it('makes one new version of a criterion when two people change it at once', async () => {
    const exerciseId = await draft();
    await addCriterion(instructor, { exerciseId, ...byEye });
    const { criteria } = await planOf(exerciseId);
    const change = (weight: number) =>
      codeOf(changeCriterion(instructor, { criterionId: criteria[0]!.id, number: 1, ...byEye, weight }));
    expect((await Promise.all([change(2), change(3)])).sort()).toEqual(['CONFLICT', 'ok']);
    expect((await planOf(exerciseId)).criteria[0]!.number).toBe(2);
  });

  it('says what is out of order about dates, under the field', async () => {
    const exerciseId = await draft();
    const wrong = addRound(instructor, { exerciseId, ...round, opensLocal: '2026-12-02T09:00' });
    await expect(wrong).rejects.toMatchObject({
      code: 'INVALID',
      fields: { dueLocal: expect.stringContaining('2026-12-01 18:00') },
    });
    await expect(addRound(instructor, { exerciseId, ...round, accept: 'until' })).rejects.toMatchObject({
      fields: { untilLocal: expect.stringContaining('last date') },
    });
    await expect(addRound(instructor, { exerciseId, ...round, dueLocal: '2026-02-30T10:00' })).rejects.toMatchObject({
      fields: { dueLocal: expect.stringContaining('2026-02-30T10:00') },
    });
    const { remarks, roundId } = await addRound(instructor, { exerciseId, ...round, dueLocal: '2027-03-28T02:30' });
    expect(remarks[0]).toContain('does not happen in Europe/Vienna');
    expect(await codeOf(changeRound(instructor, { roundId, version: 7, ...round }))).toBe('CONFLICT');
  });

  it('is published only when there is something to do, and never by distance from the references alone', async () => {
    const exerciseId = await draft();
    await expect(publishExercise(instructor, { exerciseId, version: 0 })).rejects.toThrow('nothing to space yet');
    await addSpecimens(instructor, { exerciseId, ...two });
    await addRound(instructor, { exerciseId, ...round });
    await addCriterion(instructor, { exerciseId, ...byDistance });
    await expect(publishExercise(instructor, { exerciseId, version: 0 })).rejects.toThrow(
      'Two spacings can both be right',
    );
    await addCriterion(instructor, { exerciseId, ...byEye });
    await publishExercise(instructor, { exerciseId, version: 0 });
    const { criteria } = await planOf(exerciseId);
    const judged = criteria.find(({ basis }) => basis === 'judgement')!;
    expect(await codeOf(retireCriterion(instructor, { criterionId: judged.id }))).toBe('INVALID');
    expect(await codeOf(changeCriterion(instructor, { criterionId: judged.id, number: 1, ...byDistance }))).toBe(
      'INVALID',
    );
  });

  it('keeps one criterion by eye when two people take two of them out at once', async () => {
    for (let attempt = 0; attempt < 4; attempt += 1) {
      const exerciseId = await draft();
      await addSpecimens(instructor, { exerciseId, ...two });
      await addRound(instructor, { exerciseId, ...round });
      for (const criterion of [byEye, { ...byEye, title: 'Fit' }, byDistance])
        await addCriterion(instructor, { exerciseId, ...criterion });
      await publishExercise(instructor, { exerciseId, version: 0 });
      const byEyes = (await planOf(exerciseId)).criteria.filter(({ basis }) => basis === 'judgement');
      const answers = await Promise.all(
        byEyes.map(({ id }, index) => codeOf(retireCriterion(index === 0 ? instructor : second, { criterionId: id }))),
      );
      expect([...answers].sort()).toEqual(['INVALID', 'ok']);
    }
  });

  it('is published once when several press the button, and can then be closed and not removed', async () => {
    const exerciseId = await draft();
    await addSpecimens(instructor, { exerciseId, ...two });
    await addRound(instructor, { exerciseId, ...round });
    const publish = () => codeOf(publishExercise(instructor, { exerciseId, version: 0 }));
    expect((await Promise.all([publish(), publish(), publish()])).filter((code) => code === 'ok')).toHaveLength(1);
    expect(await codeOf(removeExercise(instructor, { exerciseId, version: 1 }))).toBe('CONFLICT');
    await closeExercise(instructor, { exerciseId, version: 1 });
    expect((await planOf(exerciseId)).exercise.state).toBe('closed');
  });

  it('shows students what is published, and a removed draft to nobody until it is taken back', async () => {
    const exerciseId = await draft();
    const seen = async (who: Parameters<typeof caller>[0]) =>
      (await listExercises(caller(who), { courseId })).some(({ id }) => id === exerciseId);
    expect([await seen('instructor'), await seen('assistant'), await seen('student')]).toEqual([true, true, false]);
    await expect(seen('outsider')).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await removeExercise(instructor, { exerciseId, version: 0 });
    expect([await seen('instructor'), await seen('student')]).toEqual([false, false]);
    await restoreExercise(instructor, { exerciseId, version: 1 });
    expect(await seen('instructor')).toBe(true);
  });
});
