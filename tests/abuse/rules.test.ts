import { strFromU8, unzipSync } from 'fflate';
import Papa from 'papaparse';
import { beforeEach, expect, it } from 'vitest';
import { exportOwnData } from '@/lib/account/records';
import { getClass } from '@/lib/class/class';
import { getOwnTerm, getTerm } from '@/lib/class/term';
import { listPeople } from '@/lib/course/people';
import { newId } from '@/lib/data/ids';
import { extendRound, getRound } from '@/lib/exercise/rounds';
import { exportMarks } from '@/lib/export/marks';
import { exportRoundNotes } from '@/lib/export/notes';
import { exportOneRoster } from '@/lib/export/oneroster';
import { getReleasePlan } from '@/lib/release/plan';
import { releaseRound } from '@/lib/release/release';
import { answerNote } from '@/lib/release/released';
import { claimProof, unclaimProof } from '@/lib/review/claim';
import { getProofLine } from '@/lib/review/desk';
import { giveMark } from '@/lib/review/marks';
import { setNoteState } from '@/lib/review/notes';
import { getQueue } from '@/lib/review/queue';
import { openBench } from '@/lib/work/bench';
import { saveDraft } from '@/lib/work/drafts';
import { getWork } from '@/lib/work/overview';
import { getProof, sendProof } from '@/lib/work/proofs';
import { afterLateRule } from '@/shared/marking/marks';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnSqlite } from '@/tests/fixtures/databases';
import { emptyAll } from '@/tests/fixtures/empty-all';
import { addMember, addPerson } from '@/tests/fixtures/people';
import { callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');
const days = (count: number) => new Date(now.getTime() + count * 86_400_000);

/** Rules that protect somebody's work or marks, each said once so that a condition that is lost fails here. */
describeOnSqlite('a rule of the course', (suite) => {
  let ids: Ids;
  beforeEach(async () => {
    await emptyAll(suite);
    await suite.db.externalRef.deleteMany();
    ids = await fillWorld(suite.db, now);
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const round = () => ({ exerciseId: ids.exercise, roundNumber: 2 });
  const send = (who: 'student' | 'otherStudent', at = now, more = {}) =>
    sendProof(
      as(who),
      { exerciseId: ids.exercise, requestKey: `by-${who}-${at.getTime()}`, reasoning: 'Even now.', ...more },
      { now: at },
    );
  const planned = async (at = now) =>
    (await getReleasePlan(as('instructor'), round(), { now: at })).rows.map(({ token, seen }) => ({
      proofId: token,
      seen,
    }));
  const mark = (proofId: string, level: number, version = -1, why = '') =>
    giveMark(as('assistant'), { proofId, criterionVersionId: ids.criterionVersion, level, version, why }, { now });
  const settings = (over: object) =>
    suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: JSON.stringify(over) } });
  const results = async (roundNumber: number) => {
    const { zip } = await exportOneRoster(as('instructor'), { exerciseId: ids.exercise, roundNumber }, { now });
    return Papa.parse<Record<string, string>>(strFromU8(unzipSync(zip)['results.csv']!), {
      header: true,
      delimiter: ',',
      skipEmptyLines: true,
    }).data;
  };

  it('own data holds one’s own drafts, proofs and releases and nobody else’s', async () => {
    await suite.db.draft.update({ where: { id: ids.drafts.otherStudent }, data: { offsets: '[-77]' } });
    const other = await exportOwnData(as('otherStudent'), {}, { now });
    expect([other.drafts.length, other.proofs.length, other.releases.length]).toEqual([1, 0, 0]);
    const own = await exportOwnData(as('student'), {}, { now });
    expect([own.drafts.length, own.proofs.length, own.releases.length]).toEqual([1, 2, 1]);
    expect(own.drafts.map(({ offsets }) => offsets)).toEqual([[0]]);
  });

  it('a withdrawn note does not go out with a release', async () => {
    await setNoteState(as('assistant'), { noteId: ids.nextNote, version: 0, to: 'removed' }, { now });
    await releaseRound(as('instructor'), { ...round(), to: await planned() }, { now });
    const { snapshot } = await suite.db.release.findFirstOrThrow({ where: { roundId: ids.nextRound } });
    expect(snapshot).not.toContain('Not released yet.');
  });

  it.each([
    ['a mark', () => mark(ids.nextProof, 2)],
    ['a due date', () => suite.db.round.update({ where: { id: ids.nextRound }, data: { dueAt: days(-4) } })],
    ['what is shown of references', () => settings({ referencesShown: 'never' })],
    ['a comparison', () => compareAgain()],
    ['a reply in a thread', () => replyTo(ids.nextNote)],
  ])('nothing goes out unseen: %s that changed after the preview stops the release', async (what, change) => {
    if (what === 'a due date') {
      await suite.db.roundExtension.deleteMany();
      const lateRule = JSON.stringify({ accept: 'always', deductPerDay: 10 });
      await suite.db.round.update({ where: { id: ids.nextRound }, data: { lateRule } });
    }
    const to = await planned();
    await change();
    await expect(releaseRound(as('instructor'), { ...round(), to }, { now })).rejects.toMatchObject({
      code: 'CONFLICT',
      userMessage: expect.stringContaining('Nothing was released'),
    });
    expect(await suite.db.release.count({ where: { roundId: ids.nextRound } })).toBe(0);
  });

  async function compareAgain() {
    const set = newId();
    await suite.db.referenceSet.create({ data: { id: set, exerciseId: ids.exercise, number: 2, createdAt: now } });
    const { id: _id, ...row } = await suite.db.comparison.findFirstOrThrow({
      where: { proofItemId: ids.nextProofItem },
    });
    await suite.db.comparison.create({ data: { ...row, id: newId(), referenceSetId: set } });
  }
  const replyTo = (noteId: string) =>
    suite.db.noteEntry.create({
      data: { id: newId(), noteId, seq: 2, authorId: ids.members.assistant, body: 'More.', at: now },
    });

  it('a closed exercise takes no proof', async () => {
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { state: 'closed' } });
    await expect(send('otherStudent')).rejects.toMatchObject({ code: 'CONFLICT' });
    expect(await suite.db.proof.count({ where: { memberId: ids.members.otherStudent } })).toBe(0);
  });

  it('a round whose rule takes no late proof takes none', async () => {
    await suite.db.round.update({
      where: { id: ids.nextRound },
      data: { dueAt: days(-1), lateRule: JSON.stringify({ accept: 'none' }) },
    });
    await expect(send('otherStudent')).rejects.toMatchObject({ code: 'CONFLICT' });
    expect(await suite.db.proof.count({ where: { memberId: ids.members.otherStudent } })).toBe(0);
  });

  it('an extension holds for its own round and its own student', async () => {
    // The student has an extension of round 2 by one day; of round 1 there is none.
    await suite.db.round.update({ where: { id: ids.nextRound }, data: { dueAt: days(-0.5) } });
    await suite.db.roundExtension.update({ where: { id: ids.extension }, data: { dueAt: days(1) } });
    expect((await send('student')).late).toBeNull();
    expect((await send('otherStudent')).late).toMatchObject({ days: 1 });
    await suite.db.round.update({ where: { id: ids.round }, data: { dueAt: days(-13) } });
    const first = await getProof(as('student'), { proofId: ids.proof }, { now });
    expect(first.late).toMatchObject({ days: 1 });
    const desk = await getProofLine(as('assistant'), { proof: ids.proof, specimenId: ids.specimen }, { now });
    expect(desk.marks.total.rule).toMatchObject({ startedDays: 1 });
  });

  it('an accommodation for more time is counted when a proof is sent and when it is marked', async () => {
    // Round 2 opened 5 days ago and was due half a day ago: 50% more of 4.5 days is 2.25 days.
    await suite.db.round.update({ where: { id: ids.nextRound }, data: { dueAt: days(-0.5) } });
    await suite.db.member.update({
      where: { id: ids.members.otherStudent },
      data: { accommodations: JSON.stringify({ moreTime: 50 }) },
    });
    const { late, proofId } = await send('otherStudent');
    expect(late).toBeNull();
    const desk = await getProofLine(as('assistant'), { proof: proofId, specimenId: ids.specimen }, { now });
    expect(desk.marks.total.rule).toBeNull();
  });

  it('no more than the whole mark is deducted, however late and whatever the rule has become', async () => {
    await suite.db.roundExtension.deleteMany();
    const lateRule = (over: object) =>
      suite.db.round.update({
        where: { id: ids.nextRound },
        data: { dueAt: days(-4.5), lateRule: JSON.stringify({ deductPerDay: 60, ...over }) },
      });
    const rule = async () =>
      (await getProofLine(as('assistant'), { proof: ids.nextProof, specimenId: ids.specimen }, { now })).marks.total
        .rule;
    await lateRule({ accept: 'always' });
    expect(await rule()).toEqual({ startedDays: 3, deduct: 100 });
    // It was taken when it came; the rule that would refuse it was set after.
    await lateRule({ accept: 'none' });
    expect(await rule()).toEqual({ startedDays: 3, deduct: 100 });
    expect(afterLateRule(80, { startedDays: 3, deduct: 100 }).percent).toBe(0);
  });

  it('a student’s term shows their own releases, the newest of each round', async () => {
    const other = await send('otherStudent');
    await releaseTo(ids.members.otherStudent, ids.nextRound, other.proofId, 1, 13);
    await releaseTo(ids.members.student, ids.round, ids.proof, 2, 91);
    const term = await getOwnTerm(as('student'), { courseId: ids.course }, { now });
    expect(term.rounds.map(({ released }) => released?.number ?? null)).toEqual([2, null]);
    expect(JSON.stringify(term)).not.toContain(other.proofId);
    const theirs = await getTerm(
      as('instructor'),
      { courseId: ids.course, memberId: ids.members.otherStudent },
      { now },
    );
    expect(theirs.rounds.map(({ released }) => released?.number ?? null)).toEqual([null, 1]);
  });

  async function releaseTo(memberId: string, roundId: string, proofId: string, number: number, percent: number | null) {
    const { id: _id, ...first } = await suite.db.release.findFirstOrThrow({ where: { id: ids.release } });
    const snapshot = JSON.parse(first.snapshot) as { proofId: string; total: object };
    snapshot.proofId = proofId;
    snapshot.total = { ...snapshot.total, before: percent, after: percent };
    await suite.db.release.create({
      data: { ...first, id: newId(), memberId, roundId, proofId, number, snapshot: JSON.stringify(snapshot) },
    });
  }

  it('marks for machines are the newest release, to two places, and say what is partly marked', async () => {
    await releaseTo(ids.members.student, ids.round, ids.proof, 2, 66.666666);
    expect(await results(1)).toMatchObject([{ score: '66.67', scoreStatus: 'fully graded', incomplete: 'false' }]);
    await releaseTo(ids.members.student, ids.round, ids.proof, 3, null);
    expect(await results(1)).toMatchObject([{ score: '', scoreStatus: 'partially graded', incomplete: 'true' }]);
    expect(await results(2)).toEqual([]);
  });

  it('a trial is never sent: the proof holds the work', async () => {
    await suite.db.draft.delete({ where: { id: ids.drafts.otherStudent } });
    const trial = await openBench(
      as('otherStudent'),
      { exerciseId: ids.exercise, specimenId: ids.specimen, trial: true },
      { now },
    );
    await saveDraft(
      as('otherStudent'),
      {
        draftId: trial.draft.id,
        baseVersion: 0,
        clientId: 'bench',
        seq: 1,
        spacing: { tracking: 0, offsets: [55] },
      },
      { now },
    );
    const { proofId } = await send('otherStudent');
    expect((await suite.db.proofItem.findFirstOrThrow({ where: { proofId } })).offsets).toBe('[0]');
  });

  it('a student does not come to the bench of a draft exercise, nor of one that was put aside', async () => {
    const bench = () => openBench(as('otherStudent'), { exerciseId: ids.exercise, specimenId: ids.specimen }, { now });
    const brief = () => getWork(as('otherStudent'), { exerciseId: ids.exercise }, { now });
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { state: 'draft' } });
    await expect(bench()).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(brief()).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { state: 'published', removedAt: now } });
    await expect(bench()).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(brief()).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { removedAt: null } });
    await bench();
  });

  it('what the bench tells is unlocked by a proof of this round, not of an earlier one', async () => {
    await settings({ benchTells: 'nothing', benchTellsAfterProof: 'everything' });
    await suite.db.proof.create({
      data: {
        id: newId(),
        roundId: ids.round,
        memberId: ids.members.otherStudent,
        number: 1,
        requestKey: 'in-round-one',
        reasoning: 'Early.',
        receivedAt: days(-12),
      },
    });
    const tells = async () =>
      (await openBench(as('otherStudent'), { exerciseId: ids.exercise, specimenId: ids.specimen }, { now })).tells;
    expect(await tells()).toBe('nothing');
    await send('otherStudent');
    expect(await tells()).toBe('everything');
  });

  it('hidden names are told neither by the order of rows, nor by an export of notes, nor by an answer', async () => {
    await settings({ namesHidden: true });
    for (const [index, name] of ['Zoe', 'Anna', 'Mia', 'Ben', 'Tom', 'Ida'].entries()) {
      const person = await addPerson(suite.db, { name });
      const memberId = await addMember(suite.db, ids.course, person.id, 'student');
      await suite.db.proof.create({
        data: {
          id: newId(),
          roundId: ids.nextRound,
          memberId,
          number: 1,
          requestKey: `crowd-${index}`,
          reasoning: name.toUpperCase().slice(0, 1),
          receivedAt: days(-1),
          items: {
            create: { id: newId(), specimenVersionId: ids.specimenVersion, tracking: 0, offsets: '[0]' },
          },
        },
      });
    }
    await answered();
    const queue = await getQueue(as('assistant'), round(), { now });
    const tokens = queue.queue.map(({ token }) => token);
    expect(tokens).toEqual(tokens.toSorted());
    const { csv } = await exportMarks(as('instructor'), round(), { now });
    const first = Papa.parse<string[]>(csv.slice(1), { delimiter: ',', skipEmptyLines: true }).data.map(([one]) => one);
    expect(first.slice(1)).toEqual(first.slice(1).toSorted());
    expect(first).not.toContain('The student');
    const notes = JSON.stringify(await exportRoundNotes(as('assistant'), round(), { now }));
    for (const secret of ['The student', ids.nextProof, ids.members.student, ids.users.student])
      expect(notes).not.toContain(secret);
    expect(notes).toContain('I did so.');
    const own = tokens.find((token) => token === 'plain-otter')!;
    const desk = await getProofLine(as('assistant'), { proof: own, specimenId: ids.specimen }, { now });
    const answer = desk.notes[0]!.entries.find(({ by }) => by === 'student');
    expect(answer).toMatchObject({ author: null, body: 'I did so.' });
  });

  /**
   * An answer of the student stands in a thread, as it does once a release was corrected and names are hidden again.
   */
  const answered = () =>
    suite.db.noteEntry.create({
      data: { id: newId(), noteId: ids.nextNote, seq: 2, authorId: ids.members.student, body: 'I did so.', at: now },
    });

  it('a private stock note is offered to its author alone', async () => {
    await suite.db.stockNote.update({ where: { id: ids.stockNote }, data: { shared: false } });
    const stock = async (who: 'assistant' | 'instructor') =>
      (await getProofLine(as(who), { proof: ids.nextProof, specimenId: ids.specimen }, { now })).stock.map(
        ({ id }) => id,
      );
    expect(await stock('assistant')).toContain(ids.stockNote);
    expect(await stock('instructor')).not.toContain(ids.stockNote);
  });

  it('an extension is given to a member of the same course who is still in it, and to nobody else', async () => {
    const extend = (memberId: string) =>
      extendRound(as('instructor'), { roundId: ids.nextRound, memberId, dueLocal: '2027-03-20T12:00' }, { now });
    await expect(extend(ids.members.outsider)).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(extend(ids.members.removed)).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await extend(ids.members.otherStudent);
    expect((await suite.db.roundExtension.findMany()).map(({ memberId }) => memberId).toSorted()).toEqual(
      [ids.members.student, ids.members.otherStudent].toSorted(),
    );
  });

  it('the desk shows the figures of the newest engine and the comparison with the newest references', async () => {
    const measured = await suite.db.measurement.findFirstOrThrow({ where: { proofItemId: ids.nextProofItem } });
    const old = { ...(JSON.parse(measured.payload) as object), engine: 1 };
    await suite.db.measurement.create({
      data: { ...measured, id: newId(), engine: 1, payload: JSON.stringify(old), measuredAt: days(1) },
    });
    const set = newId();
    await suite.db.referenceSet.create({ data: { id: set, exerciseId: ids.exercise, number: 2, createdAt: now } });
    const compared = await suite.db.comparison.findFirstOrThrow({ where: { proofItemId: ids.nextProofItem } });
    const newer = { ...(JSON.parse(compared.payload) as object), tightness: 17 };
    await suite.db.comparison.create({
      data: { ...compared, id: newId(), referenceSetId: set, payload: JSON.stringify(newer) },
    });
    const desk = await getProofLine(as('assistant'), { proof: ids.nextProof, specimenId: ids.specimen }, { now });
    expect(desk.measure!.engine).toBe(measured.engine);
    expect(desk.comparison!.tightness).toBe(17);
  });

  it('only the marker who holds a proof can give it back', async () => {
    await claimProof(as('assistant'), { proof: ids.nextProof }, { now });
    expect(await unclaimProof(as('instructor'), { proof: ids.nextProof }, { now })).toEqual({ givenBack: false });
    await expect(claimProof(as('instructor'), { proof: ids.nextProof }, { now })).rejects.toMatchObject({
      code: 'CONFLICT',
    });
    expect(await unclaimProof(as('assistant'), { proof: ids.nextProof }, { now })).toEqual({ givenBack: true });
    await claimProof(as('instructor'), { proof: ids.nextProof }, { now });
  });

  it('whoever was removed is listed nowhere: people, class, queue, marks for machines, extensions', async () => {
    await suite.db.member.update({ where: { id: ids.members.student }, data: { removedAt: days(-1) } });
    const people = await listPeople(as('assistant'), { courseId: ids.course }, { now });
    expect(people.students.map(({ name }) => name)).toEqual(['The otherStudent']);
    const shown = await getClass(as('assistant'), { exerciseId: ids.exercise, round: 2 }, { now });
    expect(JSON.stringify(shown)).not.toContain('The student');
    expect((await getQueue(as('assistant'), round(), { now })).queue).toEqual([]);
    expect(await results(1)).toEqual([]);
    const { extensions } = await getRound(as('instructor'), { roundId: ids.nextRound }, { now });
    expect(extensions).toEqual([]);
    const { csv } = await exportMarks(as('instructor'), round(), { now });
    expect(csv).not.toContain('The student');
  });

  it('an answer goes under a released note of one’s own proof and under no other', async () => {
    const answer = (who: 'student' | 'otherStudent', noteId: string) =>
      answerNote(as(who), { noteId, afterSeq: 1, body: 'Is it better?' }, { now });
    await expect(answer('otherStudent', ids.note)).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(answer('student', ids.nextNote)).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await answer('student', ids.note);
  });
});
