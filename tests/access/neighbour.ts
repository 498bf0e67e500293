import { newId } from '@/lib/data/ids';
import type { Database } from '@/lib/data/open';
import type { Ids } from './fill-world';
import type { Who } from './row';
import type { World } from './world';

/** Words that stand in the work of the student beside `student`, and in another course, and nowhere else. */
const words = {
  reasoning: 'Words of the one beside.',
  note: 'Said to the one beside.',
  released: 'Released to the one beside.',
  otherCourse: 'Lines of another course',
};

/** Work of `otherStudent`, and an exercise of another course: rows that an answer could hold by mistake. */
export async function addNeighbour(db: Database, ids: Ids, now: Date) {
  const at = new Date(now.getTime() - 86_400_000);
  const id = newId;
  const [proof, item, task, note, release, exercise] = [id(), id(), id(), id(), id(), id()];
  await db.proof.create({
    data: {
      id: proof,
      roundId: ids.nextRound,
      memberId: ids.members.otherStudent,
      number: 1,
      requestKey: 'of-the-one-beside',
      reasoning: words.reasoning,
      receivedAt: at,
      items: { create: { id: item, specimenVersionId: ids.specimenVersion, tracking: 0, offsets: '[-6]' } },
      markTasks: {
        create: { id: task, roundId: ids.nextRound, slot: 'first', alias: 'calm-finch', state: 'open', createdAt: at },
      },
    },
  });
  await db.note.create({
    data: {
      id: note,
      proofItemId: item,
      requestKey: 'note-beside',
      fromPair: 0,
      toPair: 0,
      taskId: task,
      authorId: ids.members.assistant,
      createdAt: at,
      entries: { create: { id: id(), seq: 1, authorId: ids.members.assistant, body: words.note, at } },
    },
  });
  const { snapshot } = await db.release.findFirstOrThrow({ where: { id: ids.release } });
  await db.release.create({
    data: {
      id: release,
      roundId: ids.round,
      memberId: ids.members.otherStudent,
      number: 1,
      proofId: proof,
      engine: 1,
      snapshot: snapshot
        .replace('A little closer.', words.released)
        .replaceAll(ids.proof, proof)
        .replaceAll(ids.note, note),
      releasedAt: at,
    },
  });
  await db.exercise.create({
    data: {
      id: exercise,
      courseId: ids.otherCourse,
      title: words.otherCourse,
      brief: words.otherCourse,
      state: 'published',
      createdAt: at,
      publishedAt: at,
    },
  });
  return { proof, item, note, release, exercise };
}

export type Neighbour = Awaited<ReturnType<typeof addNeighbour>>;

/**
 * What an answer to `who` must not hold, whatever was asked: rows, names and words that are not theirs. What stands in
 * the question itself may come back.
 */
export function notFor(who: Who, { ids, neighbour }: World): string[] {
  const ofStudent = [
    ids.users.student,
    ids.members.student,
    ids.sessions.student,
    ids.drafts.student,
    ids.proof,
    ids.proofItem,
    ids.nextProof,
    ids.nextProofItem,
    ids.note,
    ids.release,
    'H and O looked open.',
    'A little closer.',
    'The student',
    '"student@school.example"',
  ];
  const ofTheOneBeside = [
    ids.users.otherStudent,
    ids.members.otherStudent,
    ids.sessions.otherStudent,
    ids.drafts.otherStudent,
    neighbour.proof,
    neighbour.item,
    neighbour.note,
    neighbour.release,
    words.reasoning,
    words.released,
    'The otherStudent',
    'otherstudent@school.example',
  ];
  const ofStaff = [
    ids.nextNote,
    ids.nextTask,
    ids.stockNote,
    'Not released yet.',
    words.note,
    'Look at it upside down.',
    'assistant@school.example',
    'instructor@school.example',
    'plain-otter',
    'calm-finch',
  ];
  const ofOtherCourse = [
    ids.otherCourse,
    ids.users.outsider,
    ids.members.outsider,
    neighbour.exercise,
    words.otherCourse,
  ];
  const ofCourse = [ids.course, ids.exercise, ids.round, ids.nextRound, ids.specimen, ids.reference, 'First lines'];
  const everything = [...ofStudent, ...ofTheOneBeside, ...ofStaff];
  switch (who) {
    case 'student':
      return [...ofTheOneBeside, ...ofStaff, ...ofOtherCourse];
    case 'otherStudent':
      return [...ofStudent, ...ofStaff, ...ofOtherCourse];
    case 'assistant':
    case 'instructor':
      return ofOtherCourse;
    case 'outsider':
      return [...everything, ...ofCourse];
    default:
      return [...everything, ...ofCourse, ...ofOtherCourse];
  }
}
