import { latenessOf, roundFor } from '@/lib/proof/member-rounds';
import type { Late } from '@/shared/marking/late-deduction';

type Round = Parameters<typeof roundFor>[0] & { exercise: { publishedAt: Date | null } };
type Member = { accommodations: string; extensions: readonly { roundId: string; dueAt: Date }[] };

const day = 86_400_000;

/**
 * How late a proof was for its own student, by the server's receipt; null when it was in time.
 * A proof that was taken when it came counts as late by its days, even where the dates were moved since so that it would be refused now.
 */
export function lateOf(round: Round, member: Member, receivedAt: Date): Late | null {
  const extendedTo = member.extensions.find(({ roundId }) => roundId === round.id)?.dueAt ?? null;
  const own = roundFor(round, {
    publishedAt: round.exercise.publishedAt,
    accommodations: member.accommodations,
    extendedTo,
  });
  const late = latenessOf(own, receivedAt);
  if (!late.late) return null;
  if (late.accepted) return { startedDays: late.daysLate, deduct: late.deductPercent };
  const startedDays = Math.ceil((receivedAt.getTime() - own.dueAt!) / day);
  return { startedDays, deduct: Math.min(100, startedDays * own.lateRule.deductPerDay) };
}
