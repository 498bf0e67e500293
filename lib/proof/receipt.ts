import type { Lateness } from '@/shared/exercise/lateness';
import type { SeatRound } from './member-rounds';

/** What a student gets for a proof: the server's word on what came and when. */
export type Receipt = {
  proofId: string;
  number: number;
  round: number;
  /** ISO instant, UTC. */
  receivedAt: string;
  late: Late | null;
  /** Marking had begun: it is kept, and counts only if the instructor picks it. */
  afterMarkingStarted: boolean;
  lines: number | null;
};

/** Started days of 24 hours, and the percentage of the mark they cost. */
export type Late = { days: number; deductPercent: number };

export const lateWords = (late: Lateness): Late | null =>
  late.late && late.accepted ? { days: late.daysLate, deductPercent: late.deductPercent } : null;

type Sent = { id: string; number: number; receivedAt: Date; lines: number | null };

export function receiptOf(sent: Sent, round: SeatRound, late: Lateness): Receipt {
  return {
    proofId: sent.id,
    number: sent.number,
    round: round.number,
    receivedAt: sent.receivedAt.toISOString(),
    late: lateWords(late),
    afterMarkingStarted: round.markingStartedAt !== null && sent.receivedAt >= round.markingStartedAt,
    lines: sent.lines,
  };
}
