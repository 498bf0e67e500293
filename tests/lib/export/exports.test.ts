import Papa from 'papaparse';
import { beforeAll, expect, it } from 'vitest';
import { getClass, type ShownClass } from '@/lib/class/class';
import { createExercise } from '@/lib/exercise/exercises';
import { exportClass } from '@/lib/export/class-tables';
import { exportMarks } from '@/lib/export/marks';
import { exportSpacing } from '@/lib/export/spacing';
import { fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

describeOnBothDatabases('exports and the class page', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const records = (csv: string) =>
    Papa.parse<Record<string, string>>(csv.slice(1), { delimiter: ',', header: true, skipEmptyLines: true }).data;

  it('give the marks of a round, a row a student, and write it in the log', async () => {
    await suite.db.user.update({ where: { id: ids.users.otherStudent }, data: { name: '=HYPERLINK("x")' } });
    const { csv, name } = await exportMarks(as('instructor'), { exerciseId: ids.exercise, roundNumber: 1 }, { now });
    const rows = records(csv);
    expect(name).toBe('marks-round-1.csv');
    expect(rows.find(({ Student }) => Student === 'The student')).toMatchObject({
      Section: 'Monday',
      Proof: '1',
      Evenness: 'Mostly',
      'Evenness, points in %': '50',
      'Total in %': '50',
      'Released as number': '1',
    });
    expect(rows.map(({ Student }) => Student)).toContain('\'=HYPERLINK("x")');
    expect(await suite.db.auditEvent.count({ where: { verb: 'marks exported', actorId: ids.users.instructor } })).toBe(
      1,
    );
  });

  it('name a hidden student by the alias, without section or time', async () => {
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{"namesHidden":true}' } });
    const { csv } = await exportMarks(as('instructor'), { exerciseId: ids.exercise, roundNumber: 2 }, { now });
    for (const secret of ['The student', 'Monday', '2027-03-06']) expect(csv).not.toContain(secret);
    expect(csv).toContain('quiet-heron');
    const shown = (await getClass(as('assistant'), { exerciseId: ids.exercise, round: 2 }, { now })) as ShownClass;
    expect(shown.students.find(({ memberId }) => memberId === ids.members.student)).toMatchObject({
      hidden: true,
      percent: null,
      marked: null,
      levels: [],
    });
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{}' } });
  });

  it('sum the class up once, and again only when something has changed', async () => {
    const first = (await getClass(as('instructor'), { exerciseId: ids.exercise, round: 1 }, { now })) as ShownClass;
    const kept = await suite.db.summary.findMany({ where: { roundId: ids.round } });
    expect(kept).toHaveLength(1);
    // One student, one pair: sent −4 where the reference says −10; one pair's own miss is not the line's tightness.
    expect(first.summary.lines[0]).toMatchObject({
      text: 'HO',
      sent: 1,
      judged: 1,
      yardstick: 'reference',
      tightness: { median: 0 },
    });
    await getClass(as('assistant'), { exerciseId: ids.exercise, round: 1 }, { now });
    expect(await suite.db.summary.findMany({ where: { roundId: ids.round } })).toEqual(kept);
    const { csv } = await exportClass(as('assistant'), { exerciseId: ids.exercise, roundNumber: 1 }, { now });
    expect(records(csv)).toMatchObject([{ Line: 'HO', Pair: 'HO', Compared: '1' }]);
  });

  it('have no class yet while an exercise has no round, and it is not found for others', async () => {
    const course = { courseId: ids.course, title: 'To come', brief: '', safetySigns: false };
    const { exerciseId } = await createExercise(as('instructor'), course, { now });
    expect(await getClass(as('assistant'), { exerciseId, round: null, page: 1 }, { now })).toMatchObject({
      exercise: { title: 'To come' },
      round: null,
    });
    await expect(getClass(as('student'), { exerciseId, round: null, page: 1 }, { now })).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
  });

  it('let outlines go only after the licence has been seen', async () => {
    const line = { proofId: ids.proof, specimenId: ids.specimen };
    await expect(exportSpacing(as('student'), { ...line, as: 'svg' }, { now })).rejects.toMatchObject({
      code: 'INVALID',
      userMessage: expect.stringContaining('licence'),
    });
    expect((await exportSpacing(as('student'), { ...line, as: 'svg', licence: true }, { now })).text).toContain('<svg');
    expect((await exportSpacing(as('student'), { ...line, as: 'json' }, { now })).name).toBe(
      'line-1-round-1-proof-1.json',
    );
  });
});
