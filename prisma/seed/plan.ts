import type { Caller } from '@/lib/access/caller';
import { addCriterion } from '@/lib/exercise/criteria';
import { changeExercise, createExercise } from '@/lib/exercise/exercises';
import { addRound } from '@/lib/exercise/rounds';
import { addSpecimens } from '@/lib/exercise/specimens';
import type { TypedCriterion } from '@/shared/schemas/criterion';
import type { Line } from './exercise-words';

export type Plan = {
  title: string;
  brief: string;
  lines: readonly Line[];
  /** Dates as the course's zone writes them, e.g. 2026-11-24T09:00. */
  rounds: readonly { title: string; opensLocal: string; dueLocal: string; untilLocal: string; deductPerDay: number }[];
  criteria: readonly TypedCriterion[];
};

/** An exercise of the demo, planned as people do it and not yet published. @returns its id; its version is 1. */
export async function planExercise(
  instructor: Caller,
  courseId: string,
  { title, brief, lines, rounds, criteria }: Plan,
  at: { now: Date },
): Promise<string> {
  const { exerciseId } = await createExercise(instructor, { courseId, title, brief, safetySigns: false }, at);
  const settings = {
    benchTells: 'contact',
    benchTellsAfterProof: 'evenness',
    referencesShown: 'after-release',
    tolerance: 10,
    smallestSize: { value: 24, unit: 'px' },
    namesHidden: true,
    safetySigns: false,
  } as const;
  await changeExercise(instructor, { exerciseId, version: 0, title, brief, settings }, at);
  for (const { text, face, size, ground } of lines)
    await addSpecimens(instructor, { exerciseId, lines: [text], faces: [face], sizes: [size], grounds: [ground] }, at);
  for (const round of rounds)
    await addRound(instructor, { exerciseId, ...round, accept: round.untilLocal === '' ? 'always' : 'until' }, at);
  for (const criterion of criteria) await addCriterion(instructor, { exerciseId, ...criterion }, at);
  return exerciseId;
}
