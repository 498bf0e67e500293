import { beforeAll, expect, it } from 'vitest';
import { newId } from '@/lib/data/ids';
import { getStudentMinutes } from '@/lib/exercise/student-minutes';
import { fillWorld, type Ids } from '@/tests/access/fill-world';
import { describeOnBothDatabases } from '@/tests/fixtures/databases';
import { addMember, addPerson } from '@/tests/fixtures/people';
import { callerIn } from '@/tests/fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

/** The exercise is one line of one gap. */
describeOnBothDatabases('the estimate of a student’s minutes', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
  });
  const asked = () => getStudentMinutes(callerIn(ids)('instructor'), { exerciseId: ids.exercise }, { now });
  async function works(draftId: string, seconds: readonly number[], clientId = 'bench') {
    await suite.db.draftChange.createMany({
      data: seconds.map((second, seq) => ({
        id: newId(),
        draftId,
        clientId,
        seq,
        baseVersion: seq + (clientId === 'bench' ? 0 : 50),
        tracking: 0,
        offsets: '[0]',
        receivedAt: new Date(now.getTime() + second * 1000),
      })),
    });
    await suite.db.draft.update({ where: { id: draftId }, data: { version: seconds.length } });
  }

  it('comes from the stated figure, then from the work of three students of the course', async () => {
    expect(await asked()).toEqual({ gaps: 1, minutes: 1, seconds: 20, students: null });
    await works(ids.drafts.student, [0, 90]);
    // What a change of the line did to a draft is not the student's work.
    await works(ids.drafts.student, [170], 'moved-to-elsewhere');
    await suite.db.draft.update({ where: { id: ids.drafts.student }, data: { version: 3 } });
    await works(ids.drafts.otherStudent, [0, 100, 150]);
    expect((await asked()).students).toBeNull();
    const { id: userId } = await addPerson(suite.db);
    const memberId = await addMember(suite.db, ids.course, userId, 'student');
    const draft = newId();
    await suite.db.draft.create({
      data: {
        id: draft,
        memberId,
        specimenVersionId: ids.specimenVersion,
        purpose: 'work',
        tracking: 0,
        offsets: '[0]',
        updatedAt: now,
      },
    });
    await works(draft, [0, 120]);
    // 90, 150 and 120 seconds for the one gap.
    expect(await asked()).toEqual({ gaps: 1, minutes: 2, seconds: 120, students: 3 });
  });
});
