import { beforeEach, expect, it } from 'vitest';
import { systemCaller, type Caller } from '@/lib/access/caller';
import { eraseAccount } from '@/lib/account/erase';
import { limits } from '@/lib/data/rate-limits';
import { removeRound } from '@/lib/exercise/rounds';
import { sendProof } from '@/lib/work/proofs';
import { bus } from '@/lib/live/announce';
import { changeWall, saveAsNote, getWall, watchWall } from '@/lib/wall/screen';
import { closeForgottenWalls, closeWall, listWalls, openWall } from '@/lib/wall/walls';
import { point, getPointing, watchPointing } from '@/lib/wall/pointing';
import { fillWorld, secrets, wallWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { allAtOnce, callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');
const { code } = wallWorld;
const visitor: Caller = { kind: 'visitor', address: '192.0.2.7' };
const phone = (name: string) => name.padEnd(22, '_');

describeOnBothDatabases('the wall', (suite) => {
  let ids: Ids;
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const wall = async () => (await getWall(as('instructor'), { wallId: ids.wall }, { now })).state;
  const send = (who: 'student' | 'otherStudent', key: string, at = now) =>
    sendProof(
      as(who),
      { exerciseId: ids.exercise, requestKey: key, reasoning: 'It looked open to me.', zoom: 1 },
      { now: at },
    );
  const aim = (name: string, line: string | null, pair = 0) =>
    point(visitor, { code, phone: phone(name), at: line === null ? null : { line, pair } }, { now });
  const change = (what: object) => changeWall(as('instructor'), { wallId: ids.wall, change: what }, { now });
  const points = () => suite.db.wallPoint.findMany({ select: { phone: true, pair: true } });

  beforeEach(async () => {
    if (!ids) ids = await fillWorld(suite.db, now);
    await suite.db.wallPoint.deleteMany();
    await change({ kind: 'pointing', to: 'collect' }).catch(() => undefined);
    await change({ kind: 'front', line: null }).catch(() => undefined);
  });

  it('shows each student’s newest setting under a key that tells nothing and stays when they send again', async () => {
    const [before] = (await wall()).lines;
    expect(before).toMatchObject({ key: ids.wallLine, sent: 1, spacing: { tracking: 0, offsets: [-4] } });
    await suite.db.draft.update({ where: { id: ids.drafts.student }, data: { offsets: '[-9]' } });
    const heard: string[] = [];
    const stop = bus().listen([`round:${ids.nextRound}`], () => heard.push('told'));
    await send('student', 'sent-once-more');
    stop();
    expect(heard).toEqual(['told']);
    const { lines } = await wall();
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatchObject({ key: ids.wallLine, sent: 2, spacing: { tracking: 0, offsets: [-9] } });
  });

  it('has no name, address or id of anybody in it, for its projector or for a phone', async () => {
    const shown = JSON.stringify([
      await getWall(as('assistant'), { wallId: ids.wall }, { now }),
      await getPointing(visitor, { code }, { now }),
    ]);
    for (const hidden of [
      'The student',
      'student@',
      ids.users.student,
      ids.members.student,
      ids.nextProof,
      ids.nextProofItem,
      'plain-otter',
      wallWorld.salt,
    ])
      expect(shown).not.toContain(hidden);
  });

  it('keeps one point a phone, whoever taps at the same moment', async () => {
    const two = await allAtOnce([() => aim('one', ids.wallLine), () => aim('two', ids.wallLine)]);
    expect(two).toEqual({ done: 2, refused: [] });
    expect((await points()).map(({ phone: who }) => who).sort()).toEqual([phone('one'), phone('two')]);
    const same = await allAtOnce(Array.from({ length: 6 }, () => () => aim('three', ids.wallLine)));
    expect(same).toEqual({ done: 6, refused: [] });
    expect(await points()).toHaveLength(3);
    await aim('three', null);
    expect(await points()).toHaveLength(2);
  });

  it('hides where the room looks until it is asked for, and forgets it when asked anew', async () => {
    await aim('one', ids.wallLine);
    await aim('two', ids.wallLine);
    expect(await wall()).toMatchObject({ pointed: 2, counts: [] });
    await change({ kind: 'pointing', to: 'show' });
    expect((await wall()).counts).toEqual([{ line: ids.wallLine, pair: 0, count: 2 }]);
    const { asking } = (await getPointing(visitor, { code }, { now })).state;
    await change({ kind: 'ask anew' });
    expect(await wall()).toMatchObject({ pointed: 0, counts: [] });
    expect((await getPointing(visitor, { code }, { now })).state.asking).toBe(asking + 1);
  });

  it('lets one address add only so many phones, which leaves room for others; phones that point already may go on', async () => {
    const stranger: Caller = { kind: 'visitor', address: '192.0.2.99' };
    const aimFrom = (who: Caller, name: string) =>
      point(who, { code, phone: phone(name), at: { line: ids.wallLine, pair: 0 } }, { now });
    const { tries } = limits['phone-address'];
    for (let each = 0; each < tries; each += 1) await aimFrom(stranger, `stranger-${each}`);
    await expect(aimFrom(stranger, 'one-too-many')).rejects.toMatchObject({ code: 'TOO_MANY' });
    expect(await points()).toHaveLength(tries);
    await expect(aimFrom(stranger, 'stranger-0')).resolves.toEqual({ pointed: true });
    await expect(aim('in-the-room', ids.wallLine)).resolves.toEqual({ pointed: true });
  }, 60_000);

  it('does not count a point at a setting that was replaced since', async () => {
    await aim('one', ids.wallLine);
    await send('student', 'sent-after-pointing');
    expect((await wall()).pointed).toBe(0);
    await aim('one', ids.wallLine);
    expect((await wall()).pointed).toBe(1);
  });

  it('refuses in words a gap that is not there, a line that left, and pointing while nobody is asked', async () => {
    await expect(aim('one', ids.wallLine, 7)).rejects.toMatchObject({
      code: 'INVALID',
      userMessage: expect.stringContaining('1 gaps; gap 8'),
    });
    await change({ kind: 'leave out', line: ids.wallLine, out: true });
    await expect(aim('one', ids.wallLine)).rejects.toMatchObject({ code: 'CONFLICT' });
    expect((await getPointing(visitor, { code }, { now })).state.lines).toEqual([]);
    expect((await wall()).lines[0]).toMatchObject({ out: true });
    await change({ kind: 'leave out', line: ids.wallLine, out: false });
    await change({ kind: 'pointing', to: 'off' });
    await expect(aim('one', ids.wallLine)).rejects.toMatchObject({ code: 'CONFLICT' });
  });

  it('gives phones the line in front alone', async () => {
    await suite.db.draft.update({ where: { id: ids.drafts.otherStudent }, data: { offsets: '[12]' } });
    await send('otherStudent', 'the-other-sends');
    const { lines } = await wall();
    expect(lines.map(({ key }) => key)).toEqual(lines.map(({ key }) => key).sort());
    expect((await getPointing(visitor, { code }, { now })).state.lines).toHaveLength(2);
    await change({ kind: 'front', line: ids.wallLine });
    expect((await watchPointing(systemCaller('test'), { code }, { now })).lines.map(({ key }) => key)).toEqual([
      ids.wallLine,
    ]);
  });

  it('is opened once, however many open it at the same moment, and anew after it was closed', async () => {
    const which = { exerciseId: ids.exercise, roundNumber: 1, specimenId: ids.specimen };
    const openAtOnce = async () => {
      const opened: string[] = [];
      const { refused } = await allAtOnce(
        (['instructor', 'assistant', 'instructor', 'instructor', 'assistant', 'instructor'] as const).map(
          (who) => async () => {
            opened.push((await openWall(as(who), which, { now })).wallId);
          },
        ),
      );
      expect(refused).toEqual([]);
      expect(new Set(opened).size).toBe(1);
      return opened[0]!;
    };
    const first = await openAtOnce();
    await closeWall(as('instructor'), { wallId: first }, { now });
    const second = await openAtOnce();
    expect(second).not.toBe(first);
    expect(await suite.db.wall.count({ where: { roundId: ids.round } })).toBe(2);
    await suite.db.wall.deleteMany({ where: { id: { in: [first, second] } } });
  });

  it('that is forgotten is closed by the server after twelve hours, with its points and what stood for whom', async () => {
    const { wallId } = await openWall(
      as('instructor'),
      { exerciseId: ids.exercise, roundNumber: 1, specimenId: ids.specimen },
      { now },
    );
    await suite.db.wallPoint.create({
      data: { id: 'left-behind', wallId, phone: phone('somebody'), proofItemId: ids.nextProofItem, pair: 0, at: now },
    });
    const after = (hours: number) =>
      closeForgottenWalls(systemCaller('test'), {}, { now: new Date(now.getTime() + hours * 3_600_000) });
    const others = await suite.db.wall.findMany({ where: { id: { not: wallId }, closedAt: null } });
    await suite.db.wall.updateMany({ where: { id: { not: wallId } }, data: { closedAt: now } });
    expect(await after(11.9)).toEqual({ closed: 0 });
    expect(await suite.db.wallPoint.count({ where: { wallId } })).toBe(1);
    expect(await after(12)).toEqual({ closed: 1 });
    expect(await after(13)).toEqual({ closed: 0 });
    expect([
      await suite.db.wallPoint.count({ where: { wallId } }),
      (await suite.db.wall.findUniqueOrThrow({ where: { id: wallId } })).settings,
    ]).toEqual([0, '{}']);
    await suite.db.wall.updateMany({ where: { id: { in: others.map(({ id }) => id) } }, data: { closedAt: null } });
  });

  it('loses no change when several are made at once', async () => {
    const keys = (await wall()).lines.map(({ key }) => key);
    const changes = [
      ...keys.map((line) => () => change({ kind: 'leave out', line, out: true })),
      () => change({ kind: 'pointing', to: 'show' }),
    ];
    expect(await allAtOnce(changes)).toEqual({ done: 3, refused: [] });
    const state = await wall();
    expect([state.pointing, ...state.lines.map(({ out }) => out)]).toEqual(['show', true, true]);
    await change({ kind: 'leave all out', out: false });
    expect((await wall()).lines.map(({ out }) => out)).toEqual([false, false]);
    await change({ kind: 'leave all out', out: true });
    await change({ kind: 'leave out', line: keys[1]!, out: false });
    expect((await wall()).lines.map(({ out }) => out)).toEqual([true, false]);
    await change({ kind: 'leave all out', out: false });
  });

  it('keeps a remark as a note like any other, once for one key, and says when its proof does not count', async () => {
    const keep = {
      wallId: ids.wall,
      line: ids.wallLine,
      pair: 0,
      body: 'Seven of us looked here.',
      requestKey: 'kept-from-wall',
    };
    expect(await saveAsNote(as('instructor'), keep, { now })).toEqual({ counts: true });
    await saveAsNote(as('instructor'), keep, { now });
    const notes = await suite.db.note.findMany({
      where: { requestKey: 'kept-from-wall' },
      include: { entries: true, proofItem: { include: { proof: true } } },
    });
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatchObject({
      authorId: ids.members.instructor,
      fromPair: 0,
      toPair: 0,
      entries: [{ body: 'Seven of us looked here.' }],
      proofItem: { proof: { memberId: ids.members.student } },
    });
    await suite.db.round.update({
      where: { id: ids.nextRound },
      data: { markingStartedAt: new Date(now.getTime() - 1) },
    });
    expect(await saveAsNote(as('instructor'), { ...keep, requestKey: 'kept-too-late' }, { now })).toEqual({
      counts: false,
    });
    await suite.db.round.update({ where: { id: ids.nextRound }, data: { markingStartedAt: null } });
  });

  it('is opened once for a line, with a code of its own', async () => {
    const at = { exerciseId: ids.exercise, roundNumber: 1, specimenId: ids.specimen };
    const first = await openWall(as('assistant'), at, { now });
    expect(await openWall(as('instructor'), at, { now })).toEqual(first);
    expect(
      (await listWalls(as('instructor'), { exerciseId: ids.exercise, roundNumber: 1 }, { now })).specimens[0]!.wall?.id,
    ).toBe(first.wallId);
    const { code: other } = await suite.db.wall.findUniqueOrThrow({ where: { id: first.wallId } });
    expect(other).toMatch(/^[BCDFGHJKMNPQRTVWXZ2346789]{10}$/);
    expect(other).not.toBe(code);
  });

  it('does not keep an empty round from being removed', async () => {
    const round = await suite.db.round.create({
      data: { id: 'empty-round', exerciseId: ids.exercise, number: 3, state: 'open' },
    });
    const { wallId } = await openWall(
      as('instructor'),
      { exerciseId: ids.exercise, roundNumber: 3, specimenId: ids.specimen },
      { now },
    );
    await removeRound(as('instructor'), { roundId: round.id, version: 0 }, { now });
    expect(await suite.db.wall.count({ where: { id: wallId } })).toBe(0);
  });

  it('lets a wrong code see nothing, and counts only those as tries', async () => {
    await expect(getPointing(visitor, { code: 'ZZZZZZZZZZ' }, { now })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    const tried = async () =>
      Number((await suite.db.rateLimit.findFirst({ where: { key: { contains: 'wall-address' } } }))?.points);
    const before = await tried();
    await getPointing(visitor, { code }, { now });
    expect(await tried()).toBe(before);
  });

  it('forgets what the room said of somebody who is erased', async () => {
    await aim('one', ids.wallLine);
    await eraseAccount(as('student'), { email: 'student@school.example', password: secrets.password }, { now });
    expect(await points()).toEqual([]);
    expect((await wall()).lines.map(({ key }) => key)).not.toContain(ids.wallLine);
  });

  it('ends after twelve hours, and when it is closed: link, points, salt and all', async () => {
    const [line] = (await wall()).lines;
    await aim('one', line!.key);
    const tomorrow = { now: new Date(now.getTime() + 12 * 3_600_000 + 1) };
    await expect(getPointing(visitor, { code }, tomorrow)).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(watchWall(as('instructor'), { wallId: ids.wall }, tomorrow)).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
    await closeWall(as('assistant'), { wallId: ids.wall }, { now });
    for (const work of [
      () => getPointing(visitor, { code }, { now }),
      () => watchWall(as('instructor'), { wallId: ids.wall }, { now }),
      () => aim('one', line!.key),
    ])
      await expect(work()).rejects.toMatchObject({ code: 'NOT_FOUND' });
    expect(await points()).toEqual([]);
    expect(await suite.db.wall.findUniqueOrThrow({ where: { id: ids.wall } })).toMatchObject({
      closedAt: now,
      settings: '{}',
    });
  });
});
