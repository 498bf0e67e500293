import * as z from 'zod/mini';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { spacingOf } from '@/lib/rows/spacing';
import { type CurrentLine, currentLines, lineView } from './lines';
import { latenessOf, roundsAt } from './rounds';
import { isUntouched } from '@/shared/exercise/line-start';
import { leadsCourse, teaches } from '@/shared/schemas/course';

/** So many lines of an exercise are drawn for staff. */
const DRAWN = 4;

/**
 * What the person has to do now, over all their courses: a student the line to space next and the notes that are out,
 * staff what is sent, marked and released in each round. What is due first comes first.
 */
export const listNextSteps = operation({
  name: 'list-next-steps',
  allow: 'course:see',
  input: z.strictObject({}),
  run: async ({ data, now }) => {
    const courses = (await data.courses.own()).filter(({ state }) => state !== 'archived');
    const student: StudentStep[] = [];
    const staff: StaffStep[] = [];
    for (const course of courses) {
      const [member] = course.members;
      if (!member) continue;
      const exercises = (await data.exercises.ofCourse(course.id)).filter(({ state }) => state === 'published');
      for (const exercise of exercises) {
        if (teaches(member.role))
          staff.push(...(await staffSteps(data, course, exercise, leadsCourse(member.role), now)));
        else student.push(...(await studentSteps(data, exercise.id, now)));
      }
    }
    return { student: student.sort(dueFirst), staff: staff.sort(waitingFirst) };
  },
});

export type StudentStep = NonNullable<Awaited<ReturnType<typeof studentSteps>>>[number];
export type StaffStep = NonNullable<Awaited<ReturnType<typeof staffSteps>>>[number];

/** Nothing, or where a student is in an exercise. */
async function studentSteps(data: ScopedData, exerciseId: string, now: Date) {
  const seat = await data.seats.atExercise(exerciseId);
  if (!seat) return [];
  const { rounds, current, next } = roundsAt(seat, now);
  const lines = current ? await currentLines(data, exerciseId) : [];
  const drafts = await data.drafts.ofMember(
    seat.member.id,
    lines.map(({ id }) => id),
  );
  const proofs = await data.proofs.ofSeat(seat.member.id, exerciseId);
  const sent = proofs.find(({ roundId }) => roundId === current?.id);
  const draftOf = (id: string) => drafts.find(({ specimenVersionId }) => specimenVersionId === id);
  const spacingNow = (line: CurrentLine) => {
    const draft = draftOf(line.id);
    return draft ? spacingOf(draft) : line.start;
  };
  const begun = lines.filter((line) => !isUntouched(spacingNow(line), line.start));
  // The first that was not begun; once all were, the first one again.
  const line = lines.find((one) => !begun.includes(one)) ?? lines[0];
  const released = rounds.filter(({ releasedToMember }) => releasedToMember).at(-1);
  return [
    {
      exercise: { id: exerciseId, title: seat.exercise.title },
      course: { id: seat.course.id, title: seat.course.title, timeZone: seat.course.timeZone },
      round: current && { number: current.number, of: rounds.length },
      dueAt: current?.dueAt ?? null,
      takesProofs: current !== null && latenessOf(current, now).accepted,
      opensAt: next?.opensAt ?? null,
      sentAt: sent?.receivedAt.toISOString() ?? null,
      touched: begun.length,
      lines: lines.length,
      line: line && {
        ...lineView(line),
        place: lines.indexOf(line) + 1,
        spacing: spacingNow(line),
      },
      notes: released ? await notesOf(data, released, proofs) : null,
    },
  ];
}

type Sent = Awaited<ReturnType<ScopedData['proofs']['ofSeat']>>[number];

/** The proof of a released round on which the notes are. */
async function notesOf(data: ScopedData, round: { id: string; number: number }, proofs: readonly Sent[]) {
  for (const { id, roundId } of proofs) {
    if (roundId !== round.id) continue;
    const [release] = await data.releases.ownOfProof(id);
    if (release) return { proofId: id, round: round.number, releasedAt: release.releasedAt.toISOString() };
  }
  return null;
}

type Course = { id: string; title: string; timeZone: string };
type Exercise = Awaited<ReturnType<ScopedData['exercises']['ofCourse']>>[number];

/** The rounds of an exercise in which something waits or is still to come, for staff. */
async function staffSteps(data: ScopedData, course: Course, exercise: Exercise, mayRelease: boolean, now: Date) {
  const tallies = await data.roundState.tallies(exercise.rounds.map(({ id }) => id));
  const steps = [];
  for (const round of exercise.rounds) {
    const state = await data.roundState.of(round, course.id);
    const { sent = 0, released = 0 } = tallies.get(round.id) ?? {};
    const settled = sent > 0 && released >= sent;
    const ahead = sent === 0 && dueDates(round).length === 0 && round.number > 1;
    if (settled || ahead || !state) continue;
    steps.push({ round, sent, released, marked: Math.min(sent, state.done), students: state.students });
  }
  if (steps.length === 0) return [];
  const lines = await currentLines(data, exercise.id);
  return steps.map(({ round, ...counts }) => ({
    ...counts,
    mayRelease,
    exercise: { id: exercise.id, title: exercise.title },
    course: { id: course.id, title: course.title, timeZone: course.timeZone },
    round: { number: round.number, title: round.title },
    dueAt: nextDue(round, now),
    lines: lines.slice(0, DRAWN).map(lineView),
    more: Math.max(0, lines.length - DRAWN),
  }));
}

/** When a round is due, by its own date and by those of sections, in ms, earliest first. */
const dueDates = ({ dueAt, sections }: Exercise['rounds'][number]): number[] =>
  [dueAt, ...sections.map((own) => own.dueAt)].flatMap((at) => at?.getTime() ?? []).sort((a, b) => a - b);

/** The next of them, or the last when all have passed. */
function nextDue(round: Exercise['rounds'][number], now: Date): number | null {
  const dates = dueDates(round);
  return dates.find((at) => at > now.getTime()) ?? dates.at(-1) ?? null;
}

/** What can still be done before what can't, then by date. */
const dueFirst = (a: StudentStep, b: StudentStep): number =>
  Number(a.sentAt !== null) - Number(b.sentAt !== null) || (a.dueAt ?? Infinity) - (b.dueAt ?? Infinity) || 0;

const waiting = ({ sent, marked, released }: StaffStep): boolean => sent > Math.min(marked, released);

const waitingFirst = (a: StaffStep, b: StaffStep): number =>
  Number(waiting(b)) - Number(waiting(a)) || (a.dueAt ?? Infinity) - (b.dueAt ?? Infinity) || 0;
