import type { Caller } from '@/lib/access/caller';
import { closeExercise } from '@/lib/exercise/exercises';
import { publishExercise } from '@/lib/exercise/publish';
import { listReferences } from '@/lib/reference/references';
import { getReleasePlan } from '@/lib/release/plan';
import { releaseRound } from '@/lib/release/release';
import { beginMarking } from '@/lib/review/counted';
import { getProofLine } from '@/lib/review/desk';
import { getQueue } from '@/lib/review/queue';
import { annotate } from './critique';
import { criteria, type Line } from './exercise-words';
import { habitsOfStudents } from './habits';
import { daysAgo, localInstant, localTime } from './local-instant';
import { mark } from './mark';
import type { OwnSpacing } from './own-spacing';
import { planExercise } from './plan';
import { saveOwn, authors } from './references';
import { send, setLines } from './work';

type Seats = {
  courseId: string;
  timeZone: string;
  instructorId: string;
  assistantId: string;
  studentIds: readonly string[];
};

/** The lines of the exercise that is closed, and how the instructor sets them. */
const closedLines: readonly (Line & { own: OwnSpacing })[] = [
  {
    text: 'TOLL HOUSE',
    face: 'libre-franklin-600',
    size: { value: 72, unit: 'px' },
    ground: 'light',
    own: {
      tracking: 6,
      changes: { TO: { by: -12, why: 'The bar of the T reaches over the O and leaves the widest gap of the word.' } },
    },
  },
  {
    text: 'Yarn loft',
    face: 'source-serif-4-600',
    size: { value: 80, unit: 'px' },
    ground: 'light',
    own: {
      tracking: -10,
      changes: { ft: { by: 8, why: 'The bars of f and t would meet once the line is closed.' } },
    },
  },
];

/** The first exercise of the term: one round, critiqued, released and closed. */
export async function seedClosedExercise(seats: Seats, now: Date): Promise<void> {
  const { courseId, timeZone, instructorId, assistantId, studentIds } = seats;
  const [instructor, assistant] = [person(instructorId), person(assistantId)];
  const round = {
    title: 'One look',
    opensLocal: localTime(now, timeZone, -45, '09:00'),
    dueLocal: localTime(now, timeZone, -38, '18:00'),
    untilLocal: '',
    deductPerDay: 5,
  };
  const brief =
    'Two plates for the house of an imaginary toll keeper, one in capitals and one in small letters. Set each so that it reads as one word at a time and no gap calls first.';
  const plan = {
    title: 'Plates for a toll house',
    brief,
    lines: closedLines.map(({ own: _own, ...line }) => line),
    rounds: [round],
    criteria: criteria.slice(0, 1),
  };
  const begun = daysAgo(now, 47);
  const exerciseId = await planExercise(instructor, courseId, plan, begun);
  const { specimens } = await listReferences(instructor, { exerciseId }, begun);
  for (const [place, specimen] of specimens.entries())
    await saveOwn(
      instructor,
      specimen,
      { slot: 1, author: authors.instructor, own: closedLines[place]!.own, place },
      begun.now,
    );
  await publishExercise(instructor, { exerciseId, version: 1 }, begun);

  for (const [student, userId] of studentIds.slice(0, SENT).entries()) {
    const at = localInstant(now, timeZone, -40, `1${student}:00`);
    await setLines(
      userId,
      exerciseId,
      closedLines.map(({ own }) => own),
      { student, round: 'before' },
      at,
    );
    await send(userId, exerciseId, 'toll-house', habitsOfStudents[student % habitsOfStudents.length]!.says[0]!, at);
  }
  await critique({ exerciseId, roundNumber: 1 }, { instructor, assistant }, localInstant(now, timeZone, -36, '10:00'));
  await closeExercise(instructor, { exerciseId, version: 2 }, { now: localInstant(now, timeZone, -30, '12:00') });
}

/** As many students had found the course by then. */
const SENT = 5;

async function critique(
  round: { exerciseId: string; roundNumber: number },
  { instructor, assistant }: { instructor: Caller; assistant: Caller },
  now: Date,
): Promise<void> {
  const {
    round: { version },
  } = await getQueue(assistant, round, { now });
  await beginMarking(assistant, { ...round, version }, { now });
  const { queue, specimens } = await getQueue(assistant, round, { now });
  for (const [turn, { token }] of queue.entries()) {
    const line = await getProofLine(assistant, { proof: token, specimenId: specimens[0]!.id }, { now });
    await annotate(assistant, line, turn, { now });
    await mark(assistant, line, { now });
  }
  const { rows } = await getReleasePlan(instructor, round, { now });
  await releaseRound(instructor, { ...round, to: rows.map(({ token, seen }) => ({ proofId: token, seen })) }, { now });
}

const plannedLines: readonly Line[] = [
  { text: 'Spring tides', face: 'playfair-display-400', size: { value: 64, unit: 'px' }, ground: 'light' },
  { text: 'WATCHTOWER', face: 'fira-sans-500', size: { value: 72, unit: 'px' }, ground: 'dark' },
  { text: 'Tallow wharf', face: 'eb-garamond-500', size: { value: 48, unit: 'pt' }, ground: 'light' },
];

/** The next exercise: lines and dates exist, references and criteria don't yet, and only staff see it. */
export async function seedPlannedExercise({ courseId, timeZone, instructorId }: Seats, now: Date): Promise<void> {
  const round = {
    title: 'First look',
    opensLocal: localTime(now, timeZone, 14, '09:00'),
    dueLocal: localTime(now, timeZone, 28, '18:00'),
    untilLocal: '',
    deductPerDay: 5,
  };
  const brief =
    'Headings for an invented tide almanac: one large and light, one on a dark ground, one old-style on paper. Each face asks for something else.';
  const plan = { title: 'Headings for a tide almanac', brief, lines: plannedLines, rounds: [round], criteria: [] };
  await planExercise(person(instructorId), courseId, plan, daysAgo(now, 2));
}

const person = (userId: string): Caller => ({ kind: 'person', userId, sessionId: 'demo', address: 'demo' });
