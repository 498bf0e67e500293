import type { RoundInHand } from '@/lib/review/context';
import { queueOrder } from '@/lib/review/order';
import { tokenOf } from '@/lib/review/tasks';
import type { ScopedData } from '@/lib/data';

export type ShownStudent = { name: string; token: string | null; hidden: boolean };
type Whose = { memberId: string; proofId: string };

/**
 * How the students of these proofs are named to staff now: by name, or, where names are hidden and nothing went out to
 * them yet, by the alias they have as long as they are marked. The token stands for the proof in an address.
 */
export async function studentNames(
  data: ScopedData,
  hand: RoundInHand,
  proofs: readonly Whose[],
  now: Date,
): Promise<(who: Whose) => ShownStudent> {
  const { namesHidden } = hand.settings;
  const memberIds = proofs.map(({ memberId }) => memberId);
  const [people, released, queue] = await Promise.all([
    data.markTasks.peopleOf(memberIds),
    namesHidden ? data.releases.numbersOf(hand.round.id, memberIds) : new Map<string, unknown>(),
    namesHidden ? queueOrder(data, hand, now) : null,
  ]);
  const aliases = new Map(queue?.order.counted.map(({ proofId, alias }) => [proofId, alias]));
  return ({ memberId, proofId }) => {
    const alias = aliases.get(proofId);
    if (namesHidden && !released.has(memberId))
      return {
        name: alias ?? 'A student without a name yet',
        token: alias ? tokenOf({ proofId, alias }, true) : null,
        hidden: true,
      };
    return {
      name: people.get(memberId)?.name ?? `Erased person (${memberId.slice(-6)})`,
      token: proofId,
      hidden: false,
    };
  };
}
