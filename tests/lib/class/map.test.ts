import Papa from 'papaparse';
import { beforeAll, expect, it } from 'vitest';
import { getMap, getMapPage } from '@/lib/class/map';
import { getClass, getPairTotals, type ShownClass } from '@/lib/class/class';
import { getProgress } from '@/lib/class/progress';
import { exportMap } from '@/lib/export/class-tables';
import { packSchema } from '@/shared/schemas/pack';
import { reportLine } from '@/shared/scoring';
import { fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

// Expected values by hand: one line, one pair, sent at −4 where the reference has −10 with a tolerance of 8; the
// tightness of a line of one pair takes all of the difference.
describeOnBothDatabases('the map, totals and progress of a class', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const map = (roundNumber: number) =>
    getMap(as('assistant'), { exerciseId: ids.exercise, roundNumber, line: null }, { now });

  it('lays each proof that counts beside the nearest reference', async () => {
    const {
      students,
      namesShown,
      lines: [line],
    } = await map(1);
    expect({ students, namesShown }).toEqual({
      students: [{ name: 'The student', token: ids.proof }],
      namesShown: true,
    });
    expect(line).toMatchObject({
      text: 'HO',
      letters: ['H', 'O'],
      ground: 'light',
      // The reference allows 8; less than 10 can't be distinguished.
      tolerances: [[10]],
      references: [{ author: 'The instructor', spacing: { tracking: 0, offsets: [-10] } }],
      // Sent −4 where the reference says −10: a single pair's own miss is not the line's tightness.
      rows: [{ tracking: 0, offsets: [-4], against: 0, nearest: 0, tenths: [60] }],
    });
  });

  it('is worked out once for a state of the round, and again when a proof comes in', async () => {
    const kept = () => suite.db.summary.findMany({ where: { roundId: ids.round, kind: { startsWith: 'map ' } } });
    const [first] = await kept();
    await map(1);
    expect(await kept()).toEqual([first]);
    await suite.db.proof.update({ where: { id: ids.proof }, data: { receivedAt: new Date('2027-02-20T10:00:00Z') } });
    await map(1);
    expect((await kept())[0]!.basis).not.toBe(first!.basis);
  });

  it('names nobody as long as names are hidden: no name, no member, no proof, no instant', async () => {
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{"namesHidden":true}' } });
    const [hidden, table, { csv }] = [
      await map(2),
      await getMapPage(as('assistant'), { exerciseId: ids.exercise, round: 2, line: null, tablePage: 1 }, { now }),
      await exportMap(as('assistant'), { exerciseId: ids.exercise, roundNumber: 2, line: null }, { now }),
    ];
    expect(hidden).toMatchObject({ students: [{ name: 'quiet-heron', token: 'plain-otter' }], namesShown: false });
    for (const told of [JSON.stringify(hidden), JSON.stringify(table), csv.join('')])
      for (const secret of ['The student', ids.members.student, ids.nextProof, '2027-03-06'])
        expect(told).not.toContain(secret);
    // Round 1 was released, and a name there would tell whose alias it is in round 2.
    expect((await map(1)).students[0]).toEqual({ name: 'quiet-heron', token: 'quiet-heron' });
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{}' } });
  });

  it('says the same in its table and its file', async () => {
    const { table } = await getMapPage(
      as('instructor'),
      { exerciseId: ids.exercise, round: 1, line: ids.specimenVersion, tablePage: 1 },
      { now },
    );
    expect(table).toEqual({
      page: 1,
      pages: 1,
      pairs: ['HO'],
      rows: [{ name: 'The student', values: [{ far: 6, tolerance: 10 }] }],
    });
    const { csv, name } = await exportMap(
      as('instructor'),
      { exerciseId: ids.exercise, roundNumber: 1, line: ids.specimenVersion },
      { now },
    );
    expect(name).toBe('map-round-1.csv');
    expect(Papa.parse(csv.join('').slice(1), { delimiter: ',', header: true, skipEmptyLines: true }).data).toEqual([
      {
        Student: 'The student',
        Line: 'HO',
        'Pair number': '1',
        Pair: 'HO',
        Tracking: '0',
        Offset: '-4',
        'Deviation (1/1000 em)': '6',
        Tolerance: '10',
        'Held against': 'nearest reference',
      },
    ]);
  });

  it('tells the totals of a pair beside the references and what they allow', async () => {
    const totals = await getPairTotals(
      as('assistant'),
      { exerciseId: ids.exercise, roundNumber: 1, line: ids.specimenVersion },
      { now },
    );
    expect(totals).toEqual({
      text: 'HO',
      count: 1,
      pairs: [
        {
          letters: 'HO',
          values: [-4],
          spread: { count: 1, least: -4, lower: -4, median: -4, upper: -4, most: -4 },
          references: [{ name: 'The instructor', value: -10 }],
          band: { from: -20, to: 0 },
        },
      ],
    });
  });

  it('follows the class from round to round', async () => {
    const { rounds } = await getProgress(as('instructor'), { exerciseId: ids.exercise }, { now });
    expect(
      rounds.map(({ number, lines }) => [number, lines[0]!.students, lines[0]!.deviation?.median, lines[0]!.moved]),
    ).toEqual([
      [1, 1, 6, null],
      [2, 1, 6, { nearer: 0, farther: 0, same: 1 }],
    ]);
  });

  it('holds a line that no reference compares against the usual range, and tells which letters show it', async () => {
    await suite.db.comparison.deleteMany();
    await suite.db.summary.deleteMany();
    const round = async () =>
      (await getClass(as('assistant'), { exerciseId: ids.exercise, round: 1 }, { now })) as ShownClass;
    const asUsual = await round();
    expect(asUsual.summary.lines[0]).toMatchObject({
      yardstick: 'usual-range',
      judged: 1,
      pairs: [{ letters: 'HO', judged: 1, outside: 0 }],
    });
    // The same line sent with HO far open: what its measures say of it is what the class page counts.
    const pack = await suite.db.pack.findFirstOrThrow({ select: { payload: true } });
    const wide = reportLine(
      packSchema.parse(JSON.parse(pack.payload)),
      { tracking: 0, offsets: [180] },
      { size: { value: 96, unit: 'px' }, ground: 'light' },
    );
    await suite.db.measurement.updateMany({ data: { payload: JSON.stringify(wide) } });
    await suite.db.summary.deleteMany();
    const wider = await round();
    expect(wider.summary.lines[0]!.pairs[0]).toMatchObject({ judged: 1, outside: 1 });
    expect(wider.summary.lines[0]!.pairs[0]!.spread!.median).toBeGreaterThan(100);
    expect(wider.summary.sides).toMatchObject([{ letters: ['HO'], pairs: 1, outside: 1 }]);
  });
});
