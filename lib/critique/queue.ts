import type { ScopedData } from '@/lib/data';
import { countedProofs } from './counted-proofs';
import { tasksFor } from './mark-tasks';
import type { RoundInHand } from './round-in-hand';
import { shownAs, tokenOf } from './shown-as';

export type QueueEntry = {
  token: string;
  proofId: string;
  memberId: string;
  shownAs: string;
  section: string | null;
  hidden: boolean;
  state: 'open' | 'done';
  /** Who works on it now, and until when it is kept for them. */
  heldBy: string | null;
  heldUntil: Date | null;
  mine: boolean;
  /** Proofs that came after marking began and do not count unless picked. */
  tooLate: number;
};

/** The round's proofs that count, in the order of their aliases: fair, and the same for every marker. */
export async function queueOf(data: ScopedData, { round, settings, me }: RoundInHand, now: Date): Promise<QueueEntry[]> {
  const counted = (await countedProofs(data, round)).filter(({ proof }) => proof !== null);
  const [tasks, people, released] = await Promise.all([
    tasksFor(data, round.id, counted.map(({ proof }) => proof!.id), now),
    data.markTasks.peopleOf(counted.map(({ memberId }) => memberId)),
    settings.namesHidden ? data.releases.numbersOf(round.id) : new Map<string, unknown>(),
  ]);
  const entries = counted.map(({ memberId, proof, tooLate }) => {
    const task = tasks.get(proof!.id)!;
    const person = people.get(memberId);
    const hidden = settings.namesHidden && !released.has(memberId);
    const held = task.state === 'open' && task.leaseUntil !== null && task.leaseUntil > now;
    return {
      alias: task.alias,
      entry: {
        token: tokenOf(task, hidden), proofId: task.proofId, memberId, hidden,
        shownAs: shownAs({ name: person?.name ?? null, alias: task.alias }, hidden),
        section: person?.section ?? null,
        state: task.state === 'done' ? 'done' as const : 'open' as const,
        heldBy: held ? (task.marker?.user?.name ?? null) : null,
        heldUntil: held ? task.leaseUntil : null,
        mine: task.markerId === me.id,
        tooLate: tooLate.length,
      },
    };
  });
  return entries.sort((one, other) => (one.alias < other.alias ? -1 : 1)).map(({ entry }) => entry);
}
