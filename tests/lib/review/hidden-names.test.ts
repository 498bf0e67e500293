import { beforeAll, expect, it } from 'vitest';
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
    expect(line.proof).toMatchObject({ token, shownAs: token, receivedAt: null, section: null });
  });

  it('are shown again once the round is released to that student', async () => {
    const queue = await getQueue(callerIn(ids)('assistant'), { exerciseId: ids.exercise, roundNumber: 1 }, { now });
    expect(queue.queue).toMatchObject([{ token: ids.proof, shownAs: 'The student', section: 'Monday' }]);
  });
});
