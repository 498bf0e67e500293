import { notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import { secondMarkingOf, settingsOf } from '@/lib/rows/exercise';
import { firstSlot, secondSlot, secondState, sightOf } from './tasks';

/**
 * Whether names are hidden in an exercise now: for as long as a proof of any of its rounds waits for its first release,
 * or until an instructor shows them. Then a student has one alias in all its rounds, and pages about people show
 * nothing of their spacings, marks or times in it: any of these would tie the alias to the name.
 */
export const namesHiddenIn = async (data: ScopedData, exercise: { id: string; settings: string }): Promise<boolean> =>
  settingsOf(exercise).namesHidden && (await data.releases.someWait(exercise.id));

/**
 * A proof as a marker has it before them: whose it is, what holds in its exercise, and whether its name may be seen.
 * The alias of the second marker's task leads to the second marking (`slot`), anything else to the first.
 */
export async function proofContext(data: ScopedData, token: string) {
  const proof = await data.critique.proof(token);
  if (!proof) throw notFound();
  const { round } = proof;
  const { exercise } = round;
  const settings = settingsOf(exercise);
  const [me, first, second, released] = await Promise.all([
    data.markTasks.marker(exercise.courseId),
    data.markTasks.byProof(proof.id, firstSlot),
    data.markTasks.byProof(proof.id, secondSlot),
    data.releases.numbersOfProof(proof.id),
  ]);
  if (!me) throw notFound();
  const slot: typeof firstSlot | typeof secondSlot = second !== null && second.alias === token ? secondSlot : firstSlot;
  const task = slot === secondSlot ? second : first;
  const two = secondState(proof.id, { first, second }, secondMarkingOf(round));
  const hidden = await namesHiddenIn(data, exercise);
  const aliases = hidden ? await data.markTasks.aliasesOf(exercise.id, [proof.memberId]) : null;
  return {
    proof,
    round,
    exercise,
    course: exercise.course,
    settings,
    me,
    slot,
    task,
    first,
    second,
    two,
    sight: sightOf(two, task, me.id),
    hidden,
    /** What the student is called while names are hidden. */
    alias: aliases?.get(proof.memberId) ?? task?.alias ?? 'A student',
    released: released.length > 0,
  };
}

export type ProofContext = Awaited<ReturnType<typeof proofContext>>;

/** A round as staff have it before them, with what decides how its students are named. */
export async function roundContext(data: ScopedData, exerciseId: string, number: number) {
  const round = await data.markTasks.round(exerciseId, number);
  if (!round) throw notFound();
  const me = await data.markTasks.marker(round.exercise.courseId);
  if (!me) throw notFound();
  const { exercise } = round;
  const hidden = await namesHiddenIn(data, exercise);
  return { round, exercise, course: exercise.course, settings: settingsOf(exercise), hidden, me };
}

export type RoundContext = Awaited<ReturnType<typeof roundContext>>;
