import { beforeAll, expect, it } from 'vitest';
import { getQueue } from '@/lib/review/queue';
import { getSpecimenAcross } from '@/lib/review/across';
import { writeNote } from '@/lib/review/notes';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { addCrowd } from '@/tests/fixtures/crowd';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { allAtOnce, callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

describeOnBothDatabases('one specimen across a round', (suite) => {
  let ids: Ids;
  let crowd: Awaited<ReturnType<typeof addCrowd>>;
  const ask = (change: object = {}) =>
    getSpecimenAcross(
      callerIn(ids)('assistant'),
      { exerciseId: ids.exercise, roundNumber: 2, specimenId: crowd.specimen, fault: null, ...change },
      { now },
    );

  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{"namesHidden":true}' } });
    // Third pair 60 too wide in three of them, two of whom are the same in every number; fifth pair too tight in two;
    // twenty-two as the reference has it.
    const even = [0, 0, 0, 0, 0];
    crowd = await addCrowd(
      suite.db,
      ids,
      [
        [0, 0, 60, 0, 0],
        [0, 0, 60, 0, 0],
        [0, 0, 60, 0, -60],
        [0, 0, 0, 0, -60],
        ...Array.from({ length: 22 }, () => even),
      ],
      now,
    );
  });

  it('gathers those who share a fault, most first, and leaves out what one alone has', async () => {
    const { faults, count } = await ask();
    expect(count).toBe(26);
    expect(faults.map(({ key, letters, count: of }) => [key, letters, of])).toEqual([
      ['v1-wide-2', 'HH', 3],
      ['v1-tight-4', 'OH', 2],
    ]);
  });

  it('gives a page at a time, in the order of the queue', async () => {
    const [one, two, queue] = [
      await ask(),
      await ask({ page: 2 }),
      await getQueue(callerIn(ids)('assistant'), { exerciseId: ids.exercise, roundNumber: 2 }, { now }),
    ];
    expect([one.lines.length, two.lines.length, one.pages]).toEqual([24, 2, 2]);
    const shown = [...one.lines, ...two.lines].map(({ token }) => token);
    expect(shown).toEqual(shown.toSorted());
    expect(queue.queue.map(({ token }) => token).filter((token) => shown.includes(token))).toEqual(shown);
    expect((await ask({ page: 99 })).page).toBe(2);
  });

  it('with a fault chosen shows those who have it, with what the measure would suggest for each', async () => {
    const { lines, chosen, pages } = await ask({ fault: 'v1-wide-2' });
    expect(chosen).toMatchObject({ first: 2, last: 2, fault: 'wide', letters: 'HH' });
    expect([lines.length, pages]).toEqual([3, 1]);
    // The reference has 0 there; what is left of 60 once the line's tightness is taken out is at most the whole of it.
    for (const { suggestion, spacing } of lines) expect(suggestion![0]! - spacing.offsets[2]!).toBeLessThan(-8);
    expect((await ask({ fault: 'wide-of-nothing' })).lines).toHaveLength(24);
  });

  it('tells equal settings by alias, and a setting that nobody touched is none of them', async () => {
    const { identical, lines } = await ask({ fault: 'v1-wide-2' });
    expect(identical).toHaveLength(1);
    expect(lines.map(({ token }) => token)).toEqual(expect.arrayContaining(identical[0]!));
  });

  it('has no name, no id of a proof or member in it while names are hidden', async () => {
    const sent = JSON.stringify([await ask(), await ask({ page: 2 }), await ask({ fault: 'v1-wide-2' })]);
    for (const { user, member, proof } of crowd.students)
      for (const secret of [user, member, proof]) expect(sent).not.toContain(secret);
    expect(sent).not.toContain('Surname');
    expect(sent).not.toContain('2027-03-06');
  });

  it('one remark, sent twice and at once to all who share the fault, stands on each of them once', async () => {
    const { lines } = await ask({ fault: 'v1-wide-2' });
    const send =
      ({ token, suggestion }: (typeof lines)[number]) =>
      () =>
        writeNote(
          callerIn(ids)('assistant'),
          {
            proofId: token,
            specimenVersionId: crowd.version,
            requestKey: `0123456789abcdef-${token}`,
            fromPair: 2,
            toPair: 2,
            body: 'HH stands open.',
            suggestion,
          },
          { now },
        );
    const { refused } = await allAtOnce([...lines, ...lines].map(send));
    expect(refused).toEqual([]);
    expect(await suite.db.note.count({ where: { proofItem: { specimenVersionId: crowd.version } } })).toBe(3);
    expect((await ask({ fault: 'v1-wide-2' })).lines.map(({ notes }) => notes)).toEqual(
      lines.map(() => [{ fromPair: 2, toPair: 2, body: 'HH stands open.' }]),
    );
  });

  it('sees a proof that comes later, and leaves out who was removed', async () => {
    await suite.db.member.update({ where: { id: crowd.students[0]!.member }, data: { removedAt: now } });
    expect((await ask()).faults.map(({ key, count }) => [key, count])).toEqual([
      ['v1-wide-2', 2],
      ['v1-tight-4', 2],
    ]);
    await addCrowd(suite.db, ids, [[0, 0, 0, 0, 0]], now);
    expect((await ask()).count).toBe(25);
  });
});
