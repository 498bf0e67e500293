import { beforeEach, expect, it } from 'vitest';
import { getClass } from '@/lib/class/class';
import { changeSpecimen } from '@/lib/exercise/change-specimen';
import { setLineStart } from '@/lib/exercise/line-start';
import { getProofLine } from '@/lib/review/desk';
import { openBench } from '@/lib/work/bench';
import { saveDraft } from '@/lib/work/drafts';
import { listNextSteps } from '@/lib/work/next-steps';
import { getWork } from '@/lib/work/overview';
import { getProof, sendProof } from '@/lib/work/proofs';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { emptyAll } from '@/tests/fixtures/empty-all';
import { allAtOnce, callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

/** The line is HO with its one gap; both students have a draft in which nothing was moved. */
describeOnBothDatabases('a line that begins wrong on purpose', (suite) => {
  let ids: Ids;
  beforeEach(async () => {
    await emptyAll(suite);
    ids = await fillWorld(suite.db, now);
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const start = (asked: object, number = 1) =>
    setLineStart(as('instructor'), { specimenId: ids.specimen, number, start: asked }, { now });
  const bench = (who: Parameters<typeof as>[0]) =>
    openBench(as(who), { exerciseId: ids.exercise, specimenId: ids.specimen }, { now });
  const set = async (who: Parameters<typeof as>[0], offset: number, seq = 1) => {
    const { draft } = await bench(who);
    return saveDraft(
      as(who),
      {
        draftId: draft.id,
        baseVersion: draft.version,
        clientId: `bench-${who}`,
        seq,
        spacing: { tracking: 0, offsets: [offset] },
      },
      { now },
    );
  };
  const send = (who: 'student' | 'otherStudent') =>
    sendProof(as(who), { exerciseId: ids.exercise, requestKey: `proof-of-${who}`, reasoning: 'As it is.' }, { now });
  const oneGapOff = { kind: 'one-gap', gap: 0, by: 40 };
  const offBy40 = { tracking: 0, offsets: [40] };

  it('is where students begin: those without a draft, and those who had moved nothing; others keep what they set', async () => {
    await set('student', -12);
    const { number, moved } = await start(oneGapOff);
    expect([number, moved]).toEqual([2, 2]);
    expect((await bench('otherStudent')).draft.spacing).toEqual(offBy40);
    expect((await bench('student')).draft.spacing.offsets).toEqual([-12]);
    await suite.db.draftChange.deleteMany();
    await suite.db.draft.deleteMany();
    const fresh = await bench('student');
    expect(fresh.draft).toMatchObject({ version: 0, spacing: offBy40 });
    expect(fresh.line.began).toEqual({ made: 'one-gap', spacing: offBy40 });
    expect(fresh.overlays[0]).toMatchObject({ label: 'As the line began', spacing: offBy40 });
  });

  it('is not the student’s work: untouched until it differs from the start, and again when it is set back', async () => {
    await start(oneGapOff);
    const state = async () => {
      const { lines } = await getWork(as('otherStudent'), { exerciseId: ids.exercise }, { now });
      const { student } = await listNextSteps(as('otherStudent'), {}, { now });
      return [lines[0]!.untouched, student[0]!.touched, lines[0]!.spacing.offsets];
    };
    expect(await state()).toEqual([true, 0, [40]]);
    await set('otherStudent', 0);
    expect(await state()).toEqual([false, 1, [0]]);
    await set('otherStudent', 40, 2);
    expect(await state()).toEqual([true, 0, [40]]);
  });

  it('two who sent it as it began are not shown as alike, and two who set the same are', async () => {
    await start(oneGapOff);
    await send('student');
    await send('otherStudent');
    const alike = async () => {
      const shown = await getClass(as('assistant'), { exerciseId: ids.exercise, round: 2, page: 1 }, { now });
      return (shown as { identical: object[] }).identical.length;
    };
    expect(await alike()).toBe(0);
    await suite.db.proofItem.updateMany({ where: { proof: { roundId: ids.nextRound } }, data: { offsets: '[7]' } });
    await suite.db.summary.deleteMany();
    expect(await alike()).toBe(1);
  });

  it('a proof shows from what it was set, to its sender and at the desk, and keeps it when the start changes', async () => {
    await start(oneGapOff);
    await set('otherStudent', 3);
    const { proofId } = await send('otherStudent');
    await start({ kind: 'tight', by: 30 }, 2);
    expect((await getProof(as('otherStudent'), { proofId }, { now })).lines[0]).toMatchObject({
      began: offBy40,
      spacing: { offsets: [3] },
    });
    const desk = await getProofLine(as('assistant'), { proof: proofId, specimenId: ids.specimen }, { now });
    expect(desk.began).toEqual(offBy40);
    const older = await getProofLine(as('assistant'), { proof: ids.proof, specimenId: ids.specimen }, { now });
    expect(older.began).toBeNull();
  });

  it('is taken from the instructor’s own trial on the bench', async () => {
    await expect(start({ kind: 'by-hand' })).rejects.toMatchObject({ code: 'INVALID' });
    await set('assistant', 99);
    await expect(start({ kind: 'by-hand' })).rejects.toMatchObject({ code: 'INVALID' });
    await set('instructor', -35);
    await start({ kind: 'by-hand' });
    expect((await bench('otherStudent')).draft.spacing.offsets).toEqual([-35]);
    await start({ kind: 'built-in' }, 2);
    expect((await bench('otherStudent')).draft.spacing.offsets).toEqual([0]);
    expect((await bench('otherStudent')).line.began).toBeNull();
  });

  it('belongs to the version: who looked at another one is told, and of several at once one does it', async () => {
    await start(oneGapOff);
    await expect(start({ kind: 'tight', by: 20 })).rejects.toMatchObject({ code: 'CONFLICT' });
    const tries = await allAtOnce([1, 2, 3].map((by) => () => start({ kind: 'tight', by }, 2)));
    expect(tries).toEqual({ done: 1, refused: ['CONFLICT', 'CONFLICT'] });
    expect(await suite.db.specimenVersion.count({ where: { specimenId: ids.specimen } })).toBe(3);
    await expect(start({ kind: 'one-gap', gap: 1, by: 10 }, 3)).rejects.toMatchObject({ code: 'INVALID' });
    await expect(start({ kind: 'one-gap', gap: 0, by: 0 }, 3)).rejects.toMatchObject({ code: 'INVALID' });
  });

  it('goes along when the line is changed, pair by pair', async () => {
    await start(oneGapOff);
    await changeSpecimen(
      as('instructor'),
      {
        specimenId: ids.specimen,
        number: 2,
        text: 'HOH',
        face: 'lato-700',
        size: { value: 96, unit: 'px' },
        ground: 'light',
        remark: '',
      },
      { now },
    );
    expect((await bench('otherStudent')).draft.spacing).toEqual({ tracking: 0, offsets: [40, 0] });
  });
});
