import { beforeAll, expect, it } from 'vitest';
import { getClass, getCourseClass, getPairTotals } from '@/lib/class/class';
import { getMap, getMapPage } from '@/lib/class/map';
import { getProgress } from '@/lib/class/progress';
import { getTerm } from '@/lib/class/term';
import { listAuditEvents } from '@/lib/course/audit-events';
import { listPeople } from '@/lib/course/people';
import { newId } from '@/lib/data/ids';
import { changeExercise } from '@/lib/exercise/exercises';
import { getRound } from '@/lib/exercise/rounds';
import { exportMap } from '@/lib/export/class-tables';
import { exportMarks } from '@/lib/export/marks';
import { exportRoundNotes } from '@/lib/export/notes';
import { exportOneRoster } from '@/lib/export/oneroster';
import { previewRelease, releaseRound } from '@/lib/release/release';
import { getReleasePlan } from '@/lib/release/plan';
import { getSpecimenAcross } from '@/lib/review/across';
import { getAgreement } from '@/lib/review/agreement';
import { getProofLine } from '@/lib/review/desk';
import { getQueue } from '@/lib/review/queue';
import { getSecondQueue } from '@/lib/review/second-marker';
import { exerciseSettingsSchema } from '@/shared/schemas/exercise';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { addMember, addPerson } from '@/tests/fixtures/people';
import { callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');
const hours = (count: number) => new Date(now.getTime() + count * 3_600_000);

/** Who a student is, and what could give them away: each differs from everybody else's in all of it. */
type Student = { name: string; memberId: string; userId: string; email: string; marks: string[] };

/**
 * An exercise of two rounds that hides names. Everybody sent to both, at a time, in a number of proofs and with a
 * spacing of their own; round 1 is released to all, round 2 to nobody.
 */
describeOnBothDatabases('hidden names can’t be told', (suite) => {
  let ids: Ids;
  const students: Student[] = [];
  const as = (who: 'assistant' | 'instructor') => callerIn(ids)(who);
  const round = (roundNumber: number) => ({ exerciseId: ids.exercise, roundNumber });
  const hide = (namesHidden: boolean) =>
    suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: JSON.stringify({ namesHidden }) } });
  const tokens = async (number: number) =>
    (await getQueue(as('assistant'), round(number), { now })).queue.map(({ token }) => token);
  const releaseAll = async (number: number) =>
    releaseRound(
      as('instructor'),
      {
        ...round(number),
        to: (await getReleasePlan(as('instructor'), round(number), { now })).rows.map(({ token, seen }) => ({
          proofId: token,
          seen,
        })),
      },
      { now },
    );

  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
    // The world's own student is left out: their work is told apart by nothing.
    await suite.db.member.update({ where: { id: ids.members.student }, data: { removedAt: hours(-1) } });
    for (const [index, name] of ['Zoe Arend', 'Abel Czerny', 'Mia Dorn', 'Ben Ek', 'Tom Falk', 'Ida Gerl'].entries()) {
      const { id: userId, email } = await addPerson(suite.db, { name });
      const memberId = await addMember(suite.db, ids.course, userId, 'student');
      const marks = [`Reasoning of ${index}.`];
      for (const [roundId, from] of [
        [ids.round, -300],
        [ids.nextRound, -50],
      ] as const)
        for (let number = 1; number <= index + 1; number += 1) {
          const receivedAt = new Date(hours(from + index * 3 + number / 4).getTime() + index * 1111);
          const [proof, item] = [newId(), newId()];
          await suite.db.proof.create({
            data: {
              id: proof,
              roundId,
              memberId,
              number,
              requestKey: `sent-${index}-${number}-${roundId}`,
              reasoning: `Reasoning of ${index}.`,
              receivedAt,
              items: {
                create: {
                  id: item,
                  specimenVersionId: ids.specimenVersion,
                  tracking: 0,
                  offsets: JSON.stringify([-211 - index * 7]),
                },
              },
            },
          });
          marks.push(proof, item, receivedAt.toISOString());
        }
      marks.push(`[${-211 - index * 7}]`);
      students.push({ name, memberId, userId, email, marks });
    }
    await hide(true);
    await releaseAll(1);
  }, 120_000);

  /** Every page, count, order, address and file that those who teach can ask for about the exercise. */
  async function everything(): Promise<[string, unknown][]> {
    const [course, exerciseId] = [{ courseId: ids.course }, ids.exercise];
    const answers: [string, unknown][] = [
      ['people', await listPeople(as('instructor'), course, { now })],
      ['log', await listAuditEvents(as('instructor'), course, { now })],
      ['course', await getCourseClass(as('assistant'), course, { now })],
      ['progress', await getProgress(as('assistant'), { exerciseId }, { now })],
      ['round', await getRound(as('instructor'), { roundId: ids.nextRound }, { now })],
    ];
    for (const { memberId } of students)
      answers.push(['term', await getTerm(as('assistant'), { ...course, memberId }, { now })]);
    for (const number of [1, 2]) {
      const of = round(number);
      answers.push(
        ['class', await getClass(as('instructor'), { exerciseId, round: number }, { now })],
        ['queue', await getQueue(as('assistant'), of, { now })],
        ['second queue', await getSecondQueue(as('assistant'), of, { now })],
        ['agreement', await getAgreement(as('instructor'), of, { now })],
        ['plan of the release', await getReleasePlan(as('instructor'), of, { now })],
        ['map', await getMap(as('assistant'), { ...of, line: null }, { now })],
        [
          'map page',
          await getMapPage(as('assistant'), { exerciseId, round: number, line: null, tablePage: 1 }, { now }),
        ],
        ['totals', await getPairTotals(as('assistant'), { ...of, line: ids.specimenVersion }, { now })],
        [
          'across',
          await getSpecimenAcross(as('assistant'), { ...of, specimenId: ids.specimen, fault: null, page: 1 }, { now }),
        ],
        ['marks', await exportMarks(as('instructor'), of, { now })],
        ['map file', await exportMap(as('assistant'), { ...of, line: ids.specimenVersion }, { now })],
        ['notes', await exportRoundNotes(as('assistant'), of, { now })],
      );
      for (const token of await tokens(number)) {
        answers.push(
          ['desk', await getProofLine(as('instructor'), { proof: token, specimenId: ids.specimen }, { now })],
          ['preview', await previewRelease(as('instructor'), { ...of, proof: token }, { now })],
        );
      }
    }
    return answers;
  }

  it('no answer holds a name beside anything that tells the student’s work from other work', async () => {
    const aliases = (await suite.db.markTask.findMany()).map(({ alias }) => alias);
    const told: string[] = [];
    for (const [what, answer] of await everything()) {
      const text = JSON.stringify(answer);
      const names = students.filter(({ name, email, userId, memberId }) =>
        [name, email, userId, memberId].some((one) => text.includes(one)),
      );
      const work = [...students.flatMap(({ marks }) => marks), ...aliases].filter((one) => text.includes(one));
      if (names.length > 0 && work.length > 0) told.push(`${what}: ${names[0]!.name} beside ${work.join(', ')}`);
    }
    expect(told).toEqual([]);
  });

  it('pages about people show of the exercise who has sent, and no count, date, lateness, mark or release', async () => {
    const { students: rows = [] } = await getClass(as('instructor'), { exerciseId: ids.exercise, round: 2 }, { now });
    const shown = new Set(
      rows
        .filter(({ memberId }) => students.some((one) => one.memberId === memberId))
        .map(({ memberId: _id, name: _name, section: _section, ...row }) => JSON.stringify(row)),
    );
    expect([...shown]).toEqual([
      JSON.stringify({
        sent: 1,
        counts: null,
        late: null,
        marked: null,
        percent: null,
        levels: [],
        released: null,
        hidden: true,
      }),
    ]);
    for (const { memberId } of students) {
      const term = await getTerm(as('assistant'), { courseId: ids.course, memberId }, { now });
      expect(term.rounds.map(({ silent, sent, receivedAt, released }) => [silent, sent, receivedAt, released])).toEqual(
        [
          ['hidden', 1, null, null],
          ['hidden', 1, null, null],
        ],
      );
    }
    await expect(exportOneRoster(as('instructor'), round(1), { now })).rejects.toMatchObject({ code: 'CONFLICT' });
  });

  it('a student has one alias in all rounds, at the desk, in the queue and in files, for every marker', async () => {
    const called = new Map<string, Set<string>>();
    for (const number of [1, 2])
      for (const token of await tokens(number))
        for (const who of ['assistant', 'instructor'] as const) {
          const { proof } = await getProofLine(as(who), { proof: token, specimenId: ids.specimen }, { now });
          called.set(proof.reasoning, (called.get(proof.reasoning) ?? new Set()).add(proof.shownAs));
        }
    expect([...called.values()].map(({ size }) => size)).toEqual(students.map(() => 1));
    const names = (rows: readonly { shownAs: string }[]) => rows.map(({ shownAs }) => shownAs).toSorted();
    const [one, two] = [
      await getQueue(as('assistant'), round(1), { now }),
      await getQueue(as('instructor'), round(2), { now }),
    ];
    expect(names(one.queue)).toEqual(names(two.queue));
    const { csv } = await exportMarks(as('instructor'), round(2), { now });
    for (const alias of names(two.queue)) expect(csv).toContain(alias);
  });

  it('the order of the queue is that of its addresses, which are drawn by lot', async () => {
    for (const number of [1, 2]) expect(await tokens(number)).toEqual((await tokens(number)).toSorted());
  });

  it('an instructor shows the names in one act, which is logged once', async () => {
    const row = await suite.db.exercise.findUniqueOrThrow({ where: { id: ids.exercise } });
    const settings = exerciseSettingsSchema.parse(JSON.parse(row.settings));
    await changeExercise(
      as('instructor'),
      {
        exerciseId: row.id,
        version: row.version,
        title: row.title,
        brief: row.brief,
        settings: { ...settings, namesHidden: false },
      },
      { now },
    );
    const { queue } = await getQueue(as('assistant'), round(2), { now });
    expect(queue.map(({ shownAs }) => shownAs).toSorted()).toEqual(students.map(({ name }) => name).toSorted());
    expect(await suite.db.auditEvent.count({ where: { verb: 'names shown', actorId: ids.users.instructor } })).toBe(1);
    await hide(true);
    expect((await getQueue(as('assistant'), round(2), { now })).namesHidden).toBe(true);
  });

  it('names are shown when all that was sent is released, and a correction does not hide them again', async () => {
    await releaseAll(2);
    const named = async () =>
      (await getQueue(as('assistant'), round(2), { now })).queue.map(({ shownAs }) => shownAs).toSorted();
    expect(await named()).toEqual(students.map(({ name }) => name).toSorted());
    await releaseAll(2);
    expect(await named()).toEqual(students.map(({ name }) => name).toSorted());
  });
});
