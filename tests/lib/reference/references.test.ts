import { beforeAll, expect, it } from 'vitest';
import { operation } from '@/lib/access/operation';
import { addRound } from '@/lib/exercise/rounds';
import { addSpecimens } from '@/lib/exercise/specimens';
import { changeExercise, createExercise } from '@/lib/exercise/exercises';
import { getPlan } from '@/lib/exercise/plan';
import { publishExercise } from '@/lib/exercise/publish';
import {
  acceptReference,
  applyReferences,
  listReferences,
  removeReference,
  saveReference,
} from '@/lib/reference/references';
import { carryReference } from '@/lib/reference/carry';
import { visibleReferences } from '@/lib/reference/sets';
import { exerciseOnly } from '@/shared/schemas/exercise';
import { newId } from '@/lib/data/ids';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { caller, courseId, fillCourse, memberId, type Who } from '../../fixtures/demo-course';

const instructor = caller('instructor');

/**
 * What an operation of any kind would be shown. Made here and not in lib, so that it is not in the table of operations.
 */
const look = operation({
  name: 'look-at-visible-references',
  allow: 'exercise:see',
  input: exerciseOnly,
  run: async (context, { exerciseId }) => [...(await visibleReferences(context, exerciseId)).values()].flat(),
});

describeOnBothDatabases('references', (suite) => {
  beforeAll(() => fillCourse(suite.db));

  async function exercise(faces = ['lato-700']) {
    const { exerciseId } = await createExercise(instructor, {
      courseId,
      title: 'Lines',
      brief: '',
      safetySigns: false,
    });
    await addSpecimens(instructor, {
      exerciseId,
      lines: ['HAT'],
      faces,
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
    return { exerciseId, specimens: (await getPlan(instructor, { exerciseId })).specimens };
  }
  const take = (specimenVersionId: string, baseVersion: number, offsets: number[], slot = 1) => ({
    specimenVersionId,
    slot,
    baseVersion,
    draftId: 'take',
    clientId: 'bench',
    seq: 1,
    spacing: { tracking: 0, offsets },
  });

  it('keep each author’s own, by compare and swap, and answer the same change the same', async () => {
    const {
      exerciseId,
      specimens: [line],
    } = await exercise();
    const id = line!.versionId;
    expect(await saveReference(instructor, take(id, 0, [-8, -30]))).toEqual({ version: 1 });
    expect(await saveReference(instructor, take(id, 0, [-8, -30]))).toEqual({ version: 1 });
    expect(await saveReference(instructor, take(id, 0, [-9, -30]))).toEqual({
      conflict: {
        version: 1,
        spacing: { tracking: 0, offsets: [-8, -30] },
        tolerances: [null, null],
        reasons: ['', ''],
      },
    });
    expect(await saveReference(caller('assistant'), take(id, 0, [-5, -22]))).toEqual({ version: 1 });
    const { specimens } = await listReferences(instructor, { exerciseId });
    expect(specimens[0]!.references.map(({ author, spacing }) => [author, spacing.offsets])).toEqual([
      ['The instructor', [-8, -30]],
      ['The assistant', [-5, -22]],
    ]);
  });

  it('are made once when twenty windows send the first change at once', async () => {
    const {
      specimens: [line],
    } = await exercise();
    const answers = await Promise.all(
      Array.from({ length: 20 }, (_, index) => saveReference(instructor, take(line!.versionId, 0, [index, 0]))),
    );
    expect(answers.filter((answer) => 'version' in answer)).toEqual([{ version: 1 }]);
    expect(await suite.db.reference.count({ where: { specimenVersionId: line!.versionId } })).toBe(1);
  });

  it('refuse another number of gaps, and quote it', async () => {
    const {
      specimens: [line],
    } = await exercise();
    await expect(saveReference(instructor, take(line!.versionId, 0, [1]))).rejects.toThrow(
      'This line has 2 gaps, and 1 offsets were sent',
    );
  });

  it('are carried to another weight as a start, and count only when their author has looked', async () => {
    const {
      exerciseId,
      specimens: [light, bold],
    } = await exercise(['lato-400', 'lato-900']);
    await saveReference(instructor, take(light!.versionId, 0, [-20, -40]));
    const [from] = await suite.db.reference.findMany({ where: { specimenVersionId: light!.versionId } });
    expect(
      await carryReference(instructor, { referenceId: from!.id, specimenIds: [bold!.id], replace: false }),
    ).toMatchObject({ carried: [expect.stringContaining('Lato Black')], left: [] });
    await publishExercise(instructor, { exerciseId, version: 0 });
    const numbers = async () =>
      (await listReferences(instructor, { exerciseId })).sets.map(({ number, references }) => [number, references]);
    expect(await numbers()).toEqual([[1, 1]]);
    const started = (await listReferences(instructor, { exerciseId })).specimens[1]!.references[0]!;
    expect(started.started).toBe(true);
    await acceptReference(instructor, { referenceId: started.id });
    expect(await applyReferences(instructor, { exerciseId })).toMatchObject({ number: 2, fresh: true });
    expect(await applyReferences(instructor, { exerciseId })).toMatchObject({ number: 2, fresh: false });
    expect(await numbers()).toEqual([
      [2, 2],
      [1, 1],
    ]);
    // A second carrying leaves what was accepted alone unless it is asked to replace it.
    expect(
      await carryReference(instructor, { referenceId: from!.id, specimenIds: [bold!.id], replace: false }),
    ).toMatchObject({ carried: [], left: [expect.any(String)] });
  });

  it('make one set a number when they are put in force twice at once', async () => {
    const {
      exerciseId,
      specimens: [line],
    } = await exercise();
    await publishExercise(instructor, { exerciseId, version: 0 });
    await saveReference(instructor, take(line!.versionId, 0, [1, 2]));
    await Promise.all([
      applyReferences(instructor, { exerciseId }),
      applyReferences(caller('second'), { exerciseId }),
      applyReferences(caller('assistant'), { exerciseId }),
    ]);
    expect((await listReferences(instructor, { exerciseId })).sets.map(({ number }) => number)).toEqual([1]);
  });

  it('stay in their set when they are removed, and are removed by nobody but their author', async () => {
    const {
      exerciseId,
      specimens: [line],
    } = await exercise();
    await saveReference(instructor, take(line!.versionId, 0, [1, 2]));
    await publishExercise(instructor, { exerciseId, version: 0 });
    const [row] = await suite.db.reference.findMany({ where: { specimenVersionId: line!.versionId } });
    await expect(removeReference(caller('second'), { referenceId: row!.id })).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
    await removeReference(instructor, { referenceId: row!.id });
    expect(await suite.db.referenceSetItem.count({ where: { specimenVersionId: line!.versionId } })).toBe(1);
  });

  it('are shown to students only as the exercise says, and after a release exactly as they were released', async () => {
    const {
      exerciseId,
      specimens: [line],
    } = await exercise();
    await saveReference(instructor, take(line!.versionId, 0, [-8, -30]));
    await publishExercise(instructor, { exerciseId, version: 0 });
    const seen = async (who: Who) => (await look(caller(who), { exerciseId })).map(({ offsets }) => offsets);
    const show = (referencesShown: string, version: number) =>
      changeExercise(instructor, {
        exerciseId,
        version,
        title: 'Lines',
        brief: '',
        settings: {
          benchTells: 'nothing',
          benchTellsAfterProof: 'evenness',
          referencesShown,
          tolerance: 10,
          namesHidden: false,
          safetySigns: false,
        },
      });
    expect([await seen('assistant'), await seen('student'), await seen('outsider')]).toEqual([[[-8, -30]], [], []]);
    const round = await suite.db.round.findFirstOrThrow({ where: { exerciseId } });
    const set = await suite.db.referenceSet.findFirstOrThrow({ where: { exerciseId } });
    const proof = await suite.db.proof.create({
      data: {
        id: newId(),
        roundId: round.id,
        memberId: memberId('student'),
        number: 1,
        requestKey: newId(),
        reasoning: 'x',
        receivedAt: new Date(),
      },
    });
    await suite.db.release.create({
      data: {
        id: newId(),
        roundId: round.id,
        memberId: memberId('student'),
        number: 1,
        proofId: proof.id,
        referenceSetId: set.id,
        engine: 1,
        snapshot: '{}',
        releasedById: memberId('instructor'),
        releasedAt: new Date(),
      },
    });
    await saveReference(instructor, take(line!.versionId, 1, [-9, -31]));
    await applyReferences(instructor, { exerciseId });
    expect([await seen('student'), await seen('other'), await seen('assistant')]).toEqual([
      [[-8, -30]],
      [],
      [[-9, -31]],
    ]);
    await show('never', 1);
    expect([await seen('student'), await seen('other')]).toEqual([[], []]);
    await show('always', 2);
    expect([await seen('student'), await seen('other')]).toEqual([[[-8, -30]], [[-9, -31]]]);
  });
});
