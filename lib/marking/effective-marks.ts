import type { ScopedData } from '@/lib/data';
import { firstSlot, secondSlot } from '@/lib/critique/mark-tasks';
import { effectiveMark, type EffectiveMark, type GivenLevels, type SecondState } from '@/shared/marking/effective-mark';
import { secondMarkingOf } from './second-sample';
import { secondState } from './second-state';

export type MarksOfProofs = {
  /** How far the second marking of a proof is. */
  stateOf(proofId: string): SecondState;
  /** What each marking gave by one criterion. */
  given(proofId: string, criterionVersionId: string): GivenLevels;
  /** The level that counts, and where it comes from. */
  effective(proofId: string, criterionVersionId: string): EffectiveMark;
  /** Whether the first marker has finished, null where nobody has begun. */
  firstDone(proofId: string): boolean | null;
};

const nothing: GivenLevels = { first: null, second: null, settled: null };

/** All marks of these proofs of a round, with the one rule of which level counts. Every page, export and release asks here. */
export async function marksOfProofs(
  data: ScopedData,
  round: { secondMarker: string },
  proofIds: readonly string[],
): Promise<MarksOfProofs> {
  const tasks = await data.markTasks.withMarks(proofIds);
  const setting = secondMarkingOf(round);
  const inSlot = (wanted: string) =>
    new Map(tasks.filter(({ slot }) => slot === wanted).map((task) => [task.proofId, task]));
  const [first, second] = [inSlot(firstSlot), inSlot(secondSlot)];
  const levels = new Map<string, GivenLevels>();
  for (const { proofId, slot, marks } of tasks) {
    for (const { criterionVersionId, level } of marks) {
      const key = `${proofId} ${criterionVersionId}`;
      levels.set(key, { ...(levels.get(key) ?? nothing), [slot]: level });
    }
  }
  const stateOf = (proofId: string) =>
    secondState(proofId, { first: first.get(proofId), second: second.get(proofId) }, setting);
  const given = (proofId: string, criterionVersionId: string) =>
    levels.get(`${proofId} ${criterionVersionId}`) ?? nothing;
  return {
    stateOf,
    given,
    effective: (proofId, criterionVersionId) => effectiveMark(given(proofId, criterionVersionId), stateOf(proofId)),
    firstDone: (proofId) => {
      const task = first.get(proofId);
      return task ? task.state === 'done' : null;
    },
  };
}
