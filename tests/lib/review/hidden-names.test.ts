import { beforeAll, expect, it } from 'vitest';
import { newId } from '@/lib/data/ids';
import { getProofLine } from '@/lib/review/desk';
import { getQueue } from '@/lib/review/queue';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnSqlite } from '@/tests/fixtures/databases';
import { callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

describeOnSqlite('hidden names', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{"namesHidden":true}' } });
  });

  it('are in nothing that a marker gets: no name, no section, no id of the proof or member, no time of receipt', async () => {
    const assistant = callerIn(ids)('assistant');
    const queue = await getQueue(assistant, { exerciseId: ids.exercise, roundNumber: 2 }, { now });
    const { token } = queue.queue[0]!;
    const line = await getProofLine(assistant, { proof: token, specimenId: ids.specimen }, { now });
    const sent = JSON.stringify([queue, line]);
    for (const secret of [
      'The student',
      'Monday',
      ids.nextProof,
      ids.nextProofItem,
      ids.members.student,
      ids.users.student,
      '2027-03-06',
    ])
      expect(sent).not.toContain(secret);
    expect(line.proof).toMatchObject({ token, shownAs: 'quiet-heron', receivedAt: null, section: null });
  });

  it('are shown again once all that was sent in the exercise is released, in no round before', async () => {
    const first = () =>
      getQueue(callerIn(ids)('assistant'), { exerciseId: ids.exercise, roundNumber: 1 }, { now }).then(
        ({ queue }) => queue,
      );
    expect(await first()).toMatchObject([{ token: 'quiet-heron', shownAs: 'quiet-heron', section: null }]);
    const { id: _id, ...release } = await suite.db.release.findUniqueOrThrow({ where: { id: ids.release } });
    await suite.db.release.create({
      data: { ...release, id: newId(), roundId: ids.nextRound, proofId: ids.nextProof },
    });
    expect(await first()).toMatchObject([{ token: ids.proof, shownAs: 'The student', section: 'Monday' }]);
  });
});
