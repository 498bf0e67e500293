import type { ScopedData } from '@/lib/data';
import { countedProofs, type CountedOfMember } from './counted-proofs';
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
  later: LaterProof[];
};

export type LaterProof = { token: string; number: number };
/** Somebody of whom no proof counts: all came after marking began. */
export type Uncounted = { shownAs: string; later: LaterProof[] };

/** The round's proofs that count, in the order of their aliases: fair, and the same for every marker. */
export const queueOf = async (data: ScopedData, hand: RoundInHand, now: Date): Promise<QueueEntry[]> => (await fullQueue(data, hand, now)).queue;

/** The queue, and beside it those of whom no proof counts. */
export async function fullQueue(data: ScopedData, { round, settings, me }: RoundInHand, now: Date): Promise<{ queue: QueueEntry[]; uncounted: Uncounted[] }> {
  const counted = await countedProofs(data, round);
  const proofIds = counted.flatMap(({ proof, tooLate }) => [...(proof ? [proof.id] : []), ...tooLate.map(({ id }) => id)]);
  const [tasks, people, released] = await Promise.all([
    tasksFor(data, round.id, [...new Set(proofIds)], now),
    data.markTasks.peopleOf(counted.map(({ memberId }) => memberId)),
    settings.namesHidden ? data.releases.numbersOf(round.id) : new Map<string, unknown>(),
  ]);
  const hiddenOf = (memberId: string) => settings.namesHidden && !released.has(memberId);
  const laterOf = ({ memberId, proof, tooLate }: CountedOfMember): LaterProof[] =>
    tooLate.filter(({ id }) => id !== proof?.id).map(({ id, number }) => ({ token: tokenOf(tasks.get(id)!, hiddenOf(memberId)), number }));
  const entries = counted.flatMap((one) => {
    const { memberId, proof } = one;
    if (!proof) return [];
    const task = tasks.get(proof.id)!;
    const person = people.get(memberId);
    const hidden = hiddenOf(memberId);
    const held = task.state === 'open' && task.leaseUntil !== null && task.leaseUntil > now;
    return [{
      alias: task.alias,
      entry: {
        token: tokenOf(task, hidden), proofId: task.proofId, memberId, hidden,
        shownAs: shownAs({ name: person?.name ?? null, alias: task.alias }, hidden),
        section: person?.section ?? null,
        state: task.state === 'done' ? 'done' as const : 'open' as const,
        heldBy: held ? (task.marker?.user?.name ?? null) : null,
        heldUntil: held ? task.leaseUntil : null,
        mine: task.markerId === me.id,
        later: laterOf(one),
      },
    }];
  });
  const uncounted = counted.filter(({ proof, tooLate }) => proof === null && tooLate.length > 0).map((one) => {
    const alias = tasks.get(one.tooLate[0]!.id)!.alias;
    return { shownAs: shownAs({ name: people.get(one.memberId)?.name ?? null, alias }, hiddenOf(one.memberId)), later: laterOf(one) };
  });
  return { queue: entries.sort((one, other) => (one.alias < other.alias ? -1 : 1)).map(({ entry }) => entry), uncounted };
}
