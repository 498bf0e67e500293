import type { SecondState } from '@/shared/marking/effective-mark';
import type { SecondMarking } from '@/shared/schemas/second-marking';
import { isSampled } from './second-sample';

type Task = { state: string; markerId: string | null };

/** How far the second marking of a proof is. One that was begun stays, whatever the round's setting becomes. */
export function secondState(
  proofId: string,
  { first, second }: { first?: Task | null; second?: Task | null },
  setting: SecondMarking,
): SecondState {
  if (first?.state === 'done' && second?.state === 'done') return 'done';
  return isSampled(proofId, setting) || (second?.markerId ?? null) !== null ? 'waits' : 'none';
}

/**
 * What somebody at the desk may see of the marks and notes of a proof: all of them, those of their own marking, or none.
 * While two mark a proof, neither sees the other's work until both have finished, and nobody else sees either's at the
 * desk, since anybody else may still become the second.
 */
export type Sight = 'all' | 'own' | 'none';

export function sightOf(state: SecondState, task: Task | null, me: string): Sight {
  if (state !== 'waits') return 'all';
  return task === null || task.markerId === null || task.markerId === me ? 'own' : 'none';
}
