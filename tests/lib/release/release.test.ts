import { exportOwnData } from '@/lib/account/records';
import { beforeAll, expect, it } from 'vitest';
import { answerInThread, editNote, writeNote } from '@/lib/review/notes';
import { giveMark } from '@/lib/review/marks';
import { answerNote, getRelease } from '@/lib/release/released';
import { previewRelease, releaseRound } from '@/lib/release/release';
import { getReleasePlan } from '@/lib/release/plan';
import { fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { allAtOnce, callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

// The tests of this suite follow one another: a round is prepared, released, answered and corrected.
describeOnBothDatabases('a release', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const round = () => ({ exerciseId: ids.exercise, roundNumber: 2 });
  const planned = async () =>
    (await getReleasePlan(as('instructor'), round(), { now })).rows.map(({ token, seen }) => ({
      proofId: token,
      seen,
    }));
  const seenByStudent = () => getRelease(as('student'), { proofId: ids.nextProof }, { now });

  it('is nothing to the student before it is made: not a note, not a mark, not a count', async () => {
    await giveMark(
      as('assistant'),
      { proofId: ids.nextProof, criterionVersionId: ids.criterionVersion, level: 1, version: -1, why: '' },
      { now },
    );
    expect(await seenByStudent()).toEqual({ release: null, elsewhere: null });
    await expect(
      answerNote(as('student'), { noteId: ids.nextNote, afterSeq: 1, body: 'What note?' }, { now }),
    ).rejects.toMatchObject({ code: 'NOT_FOUND' });
  });

  it('does not go out when anything changed since its page was made', async () => {
    const to = await planned();
    await writeNote(
      as('assistant'),
      {
        proofId: ids.nextProof,
        specimenVersionId: ids.specimenVersion,
        requestKey: 'a-later-note',
        fromPair: null,
        toPair: null,
        body: 'Good line.',
        suggestion: null,
      },
      { now },
    );
    await expect(releaseRound(as('instructor'), { ...round(), to }, { now })).rejects.toMatchObject({
      code: 'CONFLICT',
      userMessage: expect.stringContaining('The student'),
    });
    expect(await suite.db.release.count({ where: { roundId: ids.nextRound } })).toBe(0);
  });

  it('goes out once, whoever presses at the same moment, exactly as previewed', async () => {
    const to = await planned();
    const { snapshot } = await previewRelease(as('instructor'), { ...round(), proof: ids.nextProof }, { now });
    const { done, refused } = await allAtOnce(
      Array.from({ length: 3 }, () => () => releaseRound(as('instructor'), { ...round(), to }, { now })),
    );
    expect(done).toBeGreaterThanOrEqual(1);
    expect(refused.every((code) => code === 'CONFLICT')).toBe(true);
    const rows = await suite.db.release.findMany({ where: { roundId: ids.nextRound }, orderBy: { number: 'asc' } });
    expect(rows.map(({ number }) => number)).toEqual(Array.from({ length: done }, (_, index) => index + 1));
    expect(rows[0]).toMatchObject({
      proofId: ids.nextProof,
      referenceSetId: ids.referenceSet,
      memberId: ids.members.student,
    });
    // The stored release names no instructor; the preview and the page add the name.
    expect(rows[0]!.snapshot).not.toContain('The instructor');
    expect(
      JSON.parse(rows[0]!.snapshot, (_, value: unknown) =>
        value === ids.members.instructor ? 'The instructor' : value,
      ),
    ).toEqual(JSON.parse(JSON.stringify(snapshot)));
    expect(await suite.db.auditEvent.count({ where: { verb: 'round released' } })).toBe(1);
    expect((await suite.db.round.findUniqueOrThrow({ where: { id: ids.nextRound } })).state).toBe('released');
  });

  it('shows notes at their pairs, marks with their arithmetic, and how each pair has changed since', async () => {
    await suite.db.draft.updateMany({ where: { id: ids.drafts.student }, data: { offsets: '[-9]' } });
    const { release } = await seenByStudent();
    expect(
      release!.snapshot.lines[0]!.notes.map(({ fromPair, entries }) => [
        fromPair,
        entries[0]!.body,
        entries[0]!.author,
      ]),
    ).toEqual([
      [0, 'Not released yet.', 'The assistant'],
      [null, 'Good line.', 'The assistant'],
    ]);
    expect(release!.snapshot.total).toMatchObject({ before: 50, after: 50, late: null });
    expect(release!.since).toEqual([
      {
        specimenVersionId: ids.specimenVersion,
        notes: { [ids.nextNote]: [{ pair: 0, then: -4, now: -9, moved: -5, toward: null }] },
      },
    ]);
  });

  it('never changes: edits and new notes wait for a correction, answers are read at once by both sides', async () => {
    await editNote(
      as('assistant'),
      { noteId: ids.nextNote, version: 0, body: 'Quite other words.', suggestion: [-30] },
      { now },
    );
    await writeNote(
      as('assistant'),
      {
        proofId: ids.nextProof,
        specimenVersionId: ids.specimenVersion,
        requestKey: 'a-secret-note',
        fromPair: 0,
        toPair: 0,
        body: 'Nobody reads this yet.',
        suggestion: null,
      },
      { now },
    );
    await answerNote(as('student'), { noteId: ids.nextNote, afterSeq: 2, body: 'Closer than that?' }, { now });
    await answerInThread(as('assistant'), { noteId: ids.nextNote, afterSeq: 3, body: 'A little.' }, { now });
    const { release } = await seenByStudent();
    const text = JSON.stringify(release);
    expect(text).not.toContain('Quite other words.');
    expect(text).not.toContain('Nobody reads this yet.');
    expect(release!.snapshot.lines[0]!.notes).toHaveLength(2);
    expect(release!.answers[ids.nextNote]!.map(({ by, body }) => [by, body])).toEqual([
      ['student', 'Closer than that?'],
      ['staff', 'A little.'],
    ]);
  });

  it('is corrected by the next one, which holds what was said since', async () => {
    const before = await suite.db.release.count({ where: { roundId: ids.nextRound } });
    const told = await releaseRound(as('instructor'), { ...round(), to: await planned() }, { now });
    expect(told).toEqual({ released: 1, corrected: 1 });
    const { release } = await seenByStudent();
    expect(release!.number).toBe(before + 1);
    expect(JSON.stringify(release)).toContain('Quite other words.');
    expect(await suite.db.release.count({ where: { roundId: ids.nextRound } })).toBe(before + 1);
  });

  it('shows no measured figure while the course hides them, keeps what went out, and shows it again after', async () => {
    const hide = (figuresHidden: boolean) =>
      suite.db.course.update({ where: { id: ids.course }, data: { settings: JSON.stringify({ figuresHidden }) } });
    const kept = () => suite.db.release.findMany({ where: { roundId: ids.nextRound }, select: { snapshot: true } });
    const downloaded = async () => {
      const { releases } = await exportOwnData(as('student'), {}, { now });
      return releases.map(({ seen }) => (seen as { lines: { deviations: unknown }[] }).lines[0]!.deviations !== null);
    };
    const before = await kept();
    const shown = (await seenByStudent()).release!.snapshot;
    expect(shown.lines[0]!.deviations).not.toBeNull();
    expect(await downloaded()).toContain(true);
    await hide(true);
    expect(await downloaded()).not.toContain(true);
    const hidden = (await seenByStudent()).release!.snapshot;
    expect(hidden).toEqual({ ...shown, lines: shown.lines.map((line) => ({ ...line, deviations: null })) });
    expect((await getRelease(as('instructor'), { proofId: ids.nextProof }, { now })).release!.snapshot).toEqual(hidden);
    const preview = await previewRelease(as('instructor'), { ...round(), proof: ids.nextProof }, { now });
    expect(preview.snapshot.lines.map(({ deviations }) => deviations)).toEqual([null]);
    expect(await kept()).toEqual(before);
    await hide(false);
    expect((await seenByStudent()).release!.snapshot).toEqual(shown);
  });

  it('keeps sentences as they were sent', async () => {
    const [row] = await suite.db.release.findMany({ where: { roundId: ids.nextRound }, take: 1 });
    const { lines } = JSON.parse(row!.snapshot) as { lines: { deviations: { findings: { sentence: string }[] } }[] };
    expect(lines[0]!.deviations.findings.map(({ sentence }) => sentence)).toEqual([
      expect.stringMatching(
        /^Every gap is within the tolerance of the reference by .*, overall tracking discounted\.$/,
      ),
    ]);
  });

  it('names nobody in what is kept', async () => {
    const rows = await suite.db.release.findMany({ where: { roundId: ids.nextRound } });
    for (const { snapshot } of rows)
      for (const name of ['The assistant', 'The student']) expect(snapshot).not.toContain(name);
  });

  it('has no deviations where the exercise never shows references', async () => {
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{"referencesShown":"never"}' } });
    const { snapshot } = await previewRelease(as('instructor'), { ...round(), proof: ids.nextProof }, { now });
    expect(snapshot.lines.map(({ deviations }) => deviations)).toEqual([null]);
  });

  it('says of a line without a reference which gap is unlike what designers usually do, unless figures are hidden', async () => {
    const item = await suite.db.proofItem.findFirstOrThrow({ where: { proofId: ids.nextProof } });
    const { id, payload } = await suite.db.measurement.findFirstOrThrow({ where: { proofItemId: item.id } });
    const usual = {
      kind: 'usual',
      weight: 'remark',
      from: 0,
      to: 0,
      letters: ['H', 'O'],
      surprise: 2,
      own: 40,
      half: [-5, 0],
      leftAlone: 0.6,
      lineTightness: 0,
      size: { value: 48, unit: 'px' },
      value: 42,
      unit: 'per-mille',
      direction: 'wide',
      beside: null,
    };
    const measure = JSON.parse(payload) as { findings: unknown[] };
    await suite.db.measurement.update({
      where: { id },
      data: { payload: JSON.stringify({ ...measure, findings: [...measure.findings, usual] }) },
    });
    const told = async () => {
      const { snapshot } = await previewRelease(as('instructor'), { ...round(), proof: ids.nextProof }, { now });
      return snapshot.lines[0]!.usual.map(({ sentence }) => sentence);
    };
    // With a reference its tolerance alone decides.
    expect(await told()).toEqual([]);
    await suite.db.comparison.deleteMany({ where: { proofItemId: item.id } });
    expect(await told()).toEqual(['HO is wider than designers usually set it.']);
    await suite.db.course.update({ where: { id: ids.course }, data: { settings: '{"figuresHidden":true}' } });
    expect(await told()).toEqual([]);
  });
});
