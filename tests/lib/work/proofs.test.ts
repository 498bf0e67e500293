import { beforeAll, expect, it } from 'vitest';
import type { Caller } from '@/lib/access/caller';
import { exchangeLog, makeLog } from '@/lib/log';
import { getProofLine } from '@/lib/review/desk';
import { saveDraft } from '@/lib/work/drafts';
import { getProof, sendProof } from '@/lib/work/proofs';
import { ENGINE } from '@/shared/measure';
import { reportLine } from '@/shared/scoring';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { drawnPack } from '@/tests/fixtures/drawn-pack';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';

const now = new Date('2027-03-08T10:00:00Z');

describeOnBothDatabases('send-proof', (suite) => {
  let ids: Ids;
  let student: Caller;
  let other: Caller;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
    const caller = (who: 'student' | 'otherStudent'): Caller => ({
      kind: 'person',
      userId: ids.users[who],
      sessionId: ids.sessions[who],
      address: '192.0.2.1',
    });
    [student, other] = [caller('student'), caller('otherStudent')];
  });

  const proof = (requestKey: string, more: object = {}) => ({
    exerciseId: ids.exercise,
    requestKey,
    reasoning: 'H and O stood too far apart.',
    ...more,
  });

  it('measures each line as the bench does, and compares it with the newest references', async () => {
    await saveDraft(
      other,
      {
        draftId: ids.drafts.otherStudent,
        baseVersion: 0,
        clientId: 'bench',
        seq: 1,
        spacing: { tracking: 2, offsets: [-13] },
      },
      { now },
    );
    const receipt = await sendProof(other, proof('first-of-other'), { now });
    expect(receipt).toMatchObject({
      number: 1,
      round: 2,
      late: null,
      lines: 1,
      receivedAt: now.toISOString(),
      afterMarkingStarted: false,
    });
    const item = await suite.db.proofItem.findFirstOrThrow({
      where: { proofId: receipt.proofId },
      include: { measurements: true, comparisons: true },
    });
    const expected = reportLine(
      drawnPack('HO'),
      { tracking: 2, offsets: [-13] },
      { size: { value: 96, unit: 'px' }, ground: 'light' },
    );
    expect(item.measurements.map(({ engine, payload }) => ({ engine, payload: JSON.parse(payload) }))).toEqual([
      { engine: ENGINE, payload: JSON.parse(JSON.stringify(expected)) },
    ]);
    expect(item.comparisons).toHaveLength(1);
    expect(item.comparisons[0]!.referenceSetId).toBe(ids.referenceSet);
    // Stored for good, so it has no names: the author is given by the id of the membership.
    expect(JSON.parse(item.comparisons[0]!.payload)).toMatchObject({ author: ids.members.instructor });
    expect(item.comparisons[0]!.payload).not.toContain('The instructor');
  });

  it('judges filling in at the smallest size of use that the exercise names', async () => {
    const settings = (value: string) =>
      suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: value } });
    const { settings: before } = await suite.db.exercise.findUniqueOrThrow({ where: { id: ids.exercise } });
    await settings('{"smallestSize":{"value":6,"unit":"px"}}');
    const { proofId } = await sendProof(student, proof('with-a-smallest-size'), { now });
    const { payload } = await suite.db.measurement.findFirstOrThrow({ where: { proofItem: { proofId } } });
    const { findings, pairs, smallestSize } = JSON.parse(payload) as ReturnType<typeof reportLine>;
    expect(smallestSize).toEqual({ value: 6, unit: 'px' });
    // Under 125/1000 em is under 0.75 px at 6 px.
    expect(pairs[0]!.clearance).toBeLessThan(125);
    expect(findings.find(({ kind }) => kind === 'filling')).toMatchObject({
      smallest: true,
      size: { value: 6, unit: 'px' },
    });
    expect(payload).not.toContain('sentence');
    await settings(before);
  });

  it('names the instructor whose reference is nearest when a marker looks, as long as the instructor is there', async () => {
    const marker: Caller = {
      kind: 'person',
      userId: ids.users.assistant,
      sessionId: ids.sessions.assistant,
      address: '192.0.2.1',
    };
    const look = () => getProofLine(marker, { proof: ids.proof, specimenId: ids.specimen }, { now });
    expect((await look()).comparison?.author).toBe('The instructor');
    await suite.db.member.update({ where: { id: ids.members.instructor }, data: { userId: null } });
    expect((await look()).comparison?.author).toBe('a former instructor');
    await suite.db.member.update({ where: { id: ids.members.instructor }, data: { userId: ids.users.instructor } });
  });

  it('is one proof however often the same request comes', async () => {
    const receipts = await Promise.all(
      Array.from({ length: 6 }, () => sendProof(other, proof('same-request'), { now })),
    );
    expect(new Set(receipts.map(({ proofId }) => proofId)).size).toBe(1);
    expect(receipts[0]!.number).toBe(2);
  });

  it('numbers twelve at once from where it was, without a gap or a double', async () => {
    const receipts = await Promise.all(
      Array.from({ length: 12 }, (_, index) => sendProof(other, proof(`many-at-once-${index}`), { now })),
    );
    expect(receipts.map(({ number }) => number).sort((one, two) => one - two)).toEqual(
      Array.from({ length: 12 }, (_, index) => index + 3),
    );
  });

  it('does not send what the sender has not seen', async () => {
    const drafts = { [ids.specimenVersion]: 0 };
    await expect(sendProof(other, proof('not-seen-yet', { drafts }), { now })).rejects.toMatchObject({
      code: 'CONFLICT',
    });
    await expect(
      sendProof(other, proof('seen-as-it-is', { drafts: { [ids.specimenVersion]: 1 } }), { now }),
    ).resolves.toMatchObject({ round: 2 });
  });

  it('tells a late proof by the server’s receipt', async () => {
    const late = new Date('2027-03-13T10:00:01Z');
    expect(await sendProof(other, proof('a-second-late'), { now: late })).toMatchObject({
      late: { days: 1, deductPercent: 0 },
    });
  });

  it('says after marking started that it counts only if picked', async () => {
    await suite.db.round.update({ where: { id: ids.nextRound }, data: { markingStartedAt: now } });
    expect(await sendProof(other, proof('after-marking'), { now })).toMatchObject({ afterMarkingStarted: true });
  });

  it('asks for the sentence of reasoning', async () => {
    await expect(sendProof(other, proof('no-reason', { reasoning: '   ' }))).rejects.toMatchObject({
      code: 'INVALID',
      fields: { reasoning: expect.stringMatching(/one sentence/) },
    });
  });

  it('shows a proof to its sender and not to the student beside', async () => {
    expect((await getProof(student, { proofId: ids.proof })).lines[0]!.spacing).toEqual({ tracking: 0, offsets: [-4] });
    const refused = await getProof(other, { proofId: ids.proof }).catch((error: Error) => error);
    const absent = await getProof(other, { proofId: 'nothing-like-this' }).catch((error: Error) => error);
    expect(JSON.stringify(refused)).toBe(JSON.stringify(absent));
  });

  it('are received even where a line cannot be measured, and say so; nothing else of the course is stopped by it', async () => {
    const { packSha } = await suite.db.specimenVersion.findUniqueOrThrow({ where: { id: ids.specimenVersion } });
    const { payload } = await suite.db.pack.findUniqueOrThrow({ where: { sha256: packSha } });
    const pack = JSON.parse(payload) as { glyphs: { path: string }[] };
    const broken = { ...pack, glyphs: pack.glyphs.map((glyph) => ({ ...glyph, path: 'M0 0Z' })) };
    const lines: string[] = [];
    exchangeLog(makeLog('error', { write: (line) => void lines.push(line) }));
    await suite.db.pack.update({ where: { sha256: packSha }, data: { payload: JSON.stringify(broken) } });
    try {
      const receipt = await sendProof(other, proof('not-to-be-measured'), { now });
      expect(receipt.lines).toBe(1);
      const sent = await getProof(other, { proofId: receipt.proofId }, { now });
      expect(sent.lines.map(({ measured }) => measured)).toEqual([false]);
      expect(lines.length).toBeGreaterThan(0);
      const item = await suite.db.proofItem.findFirstOrThrow({
        where: { proofId: receipt.proofId },
        include: { measurements: true, comparisons: true },
      });
      expect([item.measurements, item.comparisons]).toEqual([[], []]);
    } finally {
      exchangeLog(undefined);
      await suite.db.pack.update({ where: { sha256: packSha }, data: { payload } });
    }
  });
});
