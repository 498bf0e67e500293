import type { LateRule } from '@/shared/schemas/round';

export type Lateness =
  | { readonly accepted: true; readonly late: false }
  | { readonly accepted: true; readonly late: true; readonly daysLate: number; readonly deductPercent: number }
  | { readonly accepted: false; readonly late: boolean; readonly why: 'not-open' | 'too-late' };

type RoundTimes = { readonly opensAt: Date | null; readonly dueAt: Date | null; readonly lateRule: LateRule };

const dayInMilliseconds = 86_400_000;

/**
 * What becomes of a proof received at an instant. `extendedDueAt` is the member's own due date, where they have one;
 * it counts where it is later than the round's, and moves a last date by the same span.
 * A proof received exactly at the due instant is in time. Days late are started days of 24 hours.
 */
export function lateness(round: RoundTimes, receivedAt: Date, extendedDueAt: Date | null = null): Lateness {
  if (round.opensAt !== null && receivedAt < round.opensAt) return { accepted: false, late: false, why: 'not-open' };
  if (round.dueAt === null) return { accepted: true, late: false };
  const dueAt = extendedDueAt !== null && extendedDueAt > round.dueAt ? extendedDueAt : round.dueAt;
  const over = receivedAt.getTime() - dueAt.getTime();
  if (over <= 0) return { accepted: true, late: false };
  const last = lastInstant(round, dueAt);
  if (last !== null && receivedAt.getTime() > last) return { accepted: false, late: true, why: 'too-late' };
  const daysLate = Math.ceil(over / dayInMilliseconds);
  return { accepted: true, late: true, daysLate, deductPercent: Math.min(100, daysLate * round.lateRule.deductPerDay) };
}

/** The last instant at which a proof is taken, or null where late ones always are. */
function lastInstant(round: RoundTimes, dueAt: Date): number | null {
  const { accept, untilAt } = round.lateRule;
  if (accept === 'always') return null;
  if (accept === 'none' || untilAt === null) return dueAt.getTime();
  return new Date(untilAt).getTime() + (dueAt.getTime() - round.dueAt!.getTime());
}
