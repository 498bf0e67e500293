import { beforeAll, expect, it } from 'vitest';
import { saveDraft } from '@/lib/work/drafts';
import { addRound } from '@/lib/exercise/rounds';
import { addSpecimens } from '@/lib/exercise/specimens';
import { changeSpecimen, previewSpecimenChange } from '@/lib/exercise/change-specimen';
import { createExercise } from '@/lib/exercise/exercises';
import { getPlan } from '@/lib/exercise/plan';
import { publishExercise } from '@/lib/exercise/publish';
import { listReferences, saveReference } from '@/lib/reference/references';
import { newId } from '@/lib/data/ids';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { caller, courseId, fillCourse, memberId } from '../../fixtures/demo-course';

const instructor = caller('instructor');
const size = { value: 72, unit: 'px' };
const now = new Date('2026-11-24T12:00:00Z');

describeOnBothDatabases('changing a published specimen', (suite) => {
  beforeAll(() => fillCourse(suite.db));

  /** A published exercise with the one line HAT (pairs HA and AT), a reference on it, and a draft of each student. */
  async function published() {
    const { exerciseId } = await createExercise(instructor, {
      courseId,
      title: 'One line',
      brief: '',
      safetySigns: false,
    });
    const {
      specimenIds: [specimenId],
    } = await addSpecimens(instructor, {
      exerciseId,
      lines: ['HAT'],
      faces: ['lato-700'],
      sizes: [size],
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
    const first = (await getPlan(instructor, { exerciseId })).specimens[0]!.versionId;
    await saveReference(instructor, {
      specimenVersionId: first,
      slot: 1,
      draftId: 'reference',
      clientId: 'bench',
      seq: 1,
      baseVersion: 0,
      spacing: { tracking: -5, offsets: [-8, -30] },
      tolerances: [6, null],
      reasons: ['', 'Under the bar.'],
    });
    await publishExercise(instructor, { exerciseId, version: 0 });
    const drafts = await Promise.all(
      (['student', 'other'] as const).map(async (who, index) => {
        const id = newId();
        await suite.db.draft.create({
          data: {
            id,
            memberId: memberId(who),
            specimenVersionId: first,
            purpose: 'work',
            tracking: index,
            offsets: '[-10,-20]',
            updatedAt: now,
            version: 3,
          },
        });
        return id;
      }),
    );
    return { exerciseId, specimenId: specimenId!, first, drafts };
  }
  const toChat = (specimenId: string) => ({
    specimenId,
    text: 'CHAT',
    face: 'lato-700',
    size,
    ground: 'light',
    remark: '',
  });

  it('says beforehand what it will do', async () => {
    const { specimenId } = await published();
    const preview = await previewSpecimenChange(instructor, toChat(specimenId));
    expect(preview).toMatchObject({
      same: false,
      number: 1,
      kept: 2,
      lost: [],
      fresh: 1,
      drafts: 2,
      proofs: 0,
      references: 1,
    });
    expect(await previewSpecimenChange(instructor, { ...toChat(specimenId), text: 'HOT' })).toMatchObject({
      kept: 0,
      lost: ['HA', 'AT'],
      fresh: 2,
    });
    expect(await previewSpecimenChange(instructor, { ...toChat(specimenId), text: 'HAT' })).toMatchObject({
      same: true,
    });
  });

  it('moves drafts pair by pair and keeps their history, and leaves the old version as it was', async () => {
    const { specimenId, first, drafts } = await published();
    expect(await changeSpecimen(instructor, { ...toChat(specimenId), number: 1 })).toMatchObject({
      number: 2,
      moved: 2,
    });
    const version = await suite.db.specimenVersion.findFirstOrThrow({ where: { specimenId, number: 2 } });
    expect(version).toMatchObject({ text: 'CHAT', previousId: first, pairMap: '[1,2]' });
    for (const id of drafts) {
      const draft = await suite.db.draft.findUniqueOrThrow({ where: { id }, include: { changes: true } });
      expect(draft).toMatchObject({ specimenVersionId: version.id, offsets: '[0,-10,-20]', version: 4 });
      expect(draft.changes.map(({ baseVersion, offsets }) => [baseVersion, offsets])).toEqual([[3, '[0,-10,-20]']]);
    }
    expect(await suite.db.specimenVersion.findUniqueOrThrow({ where: { id: first } })).toMatchObject({
      text: 'HAT',
      number: 1,
    });
  });

  it('copies references to the new version, as a start where pairs are new, and freezes no set from a start', async () => {
    const { exerciseId, specimenId, first } = await published();
    await changeSpecimen(instructor, { ...toChat(specimenId), number: 1 });
    const { specimens, sets, changed } = await listReferences(instructor, { exerciseId });
    expect(specimens[0]!.references).toMatchObject([
      {
        started: true,
        spacing: { tracking: -5, offsets: [0, -8, -30] },
        tolerances: [null, 6, null],
        reasons: [null, null, 'Under the bar.'],
      },
    ]);
    expect(sets.map(({ number }) => number)).toEqual([1]);
    expect(changed).toBe(false);
    expect(await suite.db.reference.count({ where: { specimenVersionId: first } })).toBe(1);
  });

  it('keeps a reference a reference when only the size changes, and puts it in force', async () => {
    const { exerciseId, specimenId } = await published();
    await changeSpecimen(instructor, {
      ...toChat(specimenId),
      text: 'HAT',
      size: { value: 24, unit: 'pt' },
      number: 1,
    });
    const { specimens, sets } = await listReferences(instructor, { exerciseId });
    expect(specimens[0]!.references).toMatchObject([{ started: false, spacing: { tracking: -5, offsets: [-8, -30] } }]);
    expect(sets.map(({ number, references }) => [number, references])).toEqual([
      [2, 2],
      [1, 1],
    ]);
  });

  it('makes one version when two instructors change it at once, and tells the other', async () => {
    const { specimenId } = await published();
    const change = (who: 'instructor' | 'second', text: string) =>
      changeSpecimen(caller(who), { ...toChat(specimenId), text, number: 1 }).then(
        () => 'ok',
        (error: { code: string }) => error.code,
      );
    expect((await Promise.all([change('instructor', 'CHAT'), change('second', 'THAT')])).sort()).toEqual([
      'CONFLICT',
      'ok',
    ]);
    expect(await suite.db.specimenVersion.count({ where: { specimenId } })).toBe(2);
  });

  it('loses no change that a student makes at the same moment', async () => {
    for (let round = 0; round < 5; round += 1) {
      const {
        specimenId,
        drafts: [draftId],
      } = await published();
      const save = saveDraft(caller('student'), {
        draftId: draftId!,
        baseVersion: 3,
        clientId: 'bench',
        seq: 1,
        spacing: { tracking: 9, offsets: [-11, -21] },
      }).then(
        (answer) => ('version' in answer ? 'kept' : 'conflict'),
        (error: { code: string }) => error.code,
      );
      const [, answer] = await Promise.all([changeSpecimen(instructor, { ...toChat(specimenId), number: 1 }), save]);
      const draft = await suite.db.draft.findUniqueOrThrow({ where: { id: draftId! } });
      // Either the student was first and the change was moved with the draft, or the student was refused and still has
      // it.
      expect([answer, draft.offsets]).toEqual(
        answer === 'kept' ? ['kept', '[0,-11,-21]'] : [expect.stringMatching(/conflict|INVALID/), '[0,-10,-20]'],
      );
    }
  });
});
