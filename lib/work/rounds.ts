import * as z from 'zod/mini';
import type { Seat } from '@/lib/data/seats';
import { lateRuleOf, roundView, type RoundView } from '@/lib/rows/exercise';
import {
  currentRound,
  datesForSection,
  dueForMember,
  lateness,
  type Lateness,
  nextRound,
} from '@/shared/exercise/rounds';
import type { Late } from '@/shared/marking/marks';
import { accommodationsSchema } from '@/shared/schemas/course';

/** What is different for this member, checked on the way out. */
export const accommodationsOf = (member: { accommodations: string }) =>
  z.parse(accommodationsSchema, JSON.parse(member.accommodations));

type RoundRow = Omit<Seat['rounds'][number], 'extendedTo' | 'releasedToMember'>;
type Facing = {
  publishedAt: Date | null;
  sectionId: string | null;
  accommodations: string;
  extendedTo: Date | null;
};

/** A round as it holds for one member: by their section, then by what is different for them alone. */
export function roundFor(round: RoundRow, { publishedAt, sectionId, accommodations, extendedTo }: Facing) {
  const dates = datesForSection({ ...round, lateRule: lateRuleOf(round) }, sectionId);
  const opensAt = dates.opensAt?.getTime() ?? null;
  const dueAt = dueForMember({
    opensAt: opensAt ?? publishedAt?.getTime() ?? dates.dueAt?.getTime() ?? 0,
    dueAt: dates.dueAt?.getTime() ?? null,
    extendedTo: extendedTo?.getTime() ?? null,
    moreTime: accommodationsOf({ accommodations }).moreTime ?? 0,
  });
  return {
    id: round.id,
    number: round.number,
    title: round.title,
    state: round.state,
    opensAt,
    dueAt,
    plainDueAt: dates.dueAt,
    markingStartedAt: dates.markingStartedAt,
    lateRule: dates.lateRule,
  };
}

/** The rounds as the member in this seat meets them. */
const memberRounds = ({ rounds, member, exercise }: Seat) =>
  rounds.map(({ extendedTo, releasedToMember, ...round }) => ({
    ...roundFor(round, { publishedAt: exercise.publishedAt, ...member, extendedTo }),
    releasedToMember,
  }));

export type SeatRound = ReturnType<typeof memberRounds>[number];

/** The round that a proof would go into now, and the next one. */
export function roundsAt(seat: Seat, now: Date) {
  const rounds = memberRounds(seat);
  return { rounds, current: currentRound(rounds, now.getTime()), next: nextRound(rounds, now.getTime()) };
}

/** How late a proof received at `at` is for this member. */
export const latenessOf = (round: Pick<SeatRound, 'plainDueAt' | 'dueAt' | 'lateRule'>, at: Date): Lateness =>
  lateness(
    { opensAt: null, dueAt: round.plainDueAt, lateRule: round.lateRule },
    at,
    round.dueAt === null ? null : new Date(round.dueAt),
  );

/** A student's receipt for a proof: what arrived and when, by the server's record. */
export type Receipt = {
  proofId: string;
  number: number;
  round: number;
  /** ISO instant, UTC. */
  receivedAt: string;
  late: LateWords | null;
  /** Marking had begun: it is stored, and counts only if the instructor picks it. */
  afterMarkingStarted: boolean;
  /** Whether this is the proof that counts in its round now. */
  counts: boolean;
  /** Notes or marks had been given on an earlier proof of the round. */
  critiqueBegun: boolean;
  lines: number | null;
};

/** Started days of 24 hours, and the percentage of the mark they cost. */
type LateWords = { days: number; deductPercent: number };

export const lateWords = (late: Lateness): LateWords | null =>
  late.late && late.accepted ? { days: late.daysLate, deductPercent: late.deductPercent } : null;

type Sent = Pick<Receipt, 'number' | 'lines' | 'counts' | 'critiqueBegun'> & { id: string; receivedAt: Date };

export function receiptOf(sent: Sent, round: SeatRound, late: Lateness): Receipt {
  return {
    proofId: sent.id,
    number: sent.number,
    round: round.number,
    receivedAt: sent.receivedAt.toISOString(),
    late: lateWords(late),
    afterMarkingStarted: round.markingStartedAt !== null && sent.receivedAt >= round.markingStartedAt,
    counts: sent.counts,
    critiqueBegun: sent.critiqueBegun,
    lines: sent.lines,
  };
}

type Round = Parameters<typeof roundFor>[0] & { exercise: { publishedAt: Date | null } };
type Member = {
  sectionId: string | null;
  accommodations: string;
  extensions: readonly { roundId: string; dueAt: Date }[];
};

const day = 86_400_000;

/** A round as its own student meets it, whose row comes with the proof. */
export const ownRound = (round: Round, member: Member) =>
  roundFor(round, {
    publishedAt: round.exercise.publishedAt,
    sectionId: member.sectionId,
    accommodations: member.accommodations,
    extendedTo: member.extensions.find(({ roundId }) => roundId === round.id)?.dueAt ?? null,
  });

/** A round as its list shows it to one student: with their own dates, and nobody else’s. */
export function roundViewFor(round: Parameters<typeof roundView>[0] & Round, member: Member): RoundView {
  const { opensAt, dueAt, lateRule } = ownRound(round, member);
  const instant = (at: number | null) => (at === null ? null : new Date(at));
  return {
    ...roundView(round),
    opensLocal: null,
    opensAt: instant(opensAt),
    dueLocal: null,
    dueAt: instant(dueAt),
    lateRule,
    sections: [],
  };
}

/** When a round is due for one student (ms), null where it has no due date. */
export const dueOf = (round: Round, member: Member): number | null => ownRound(round, member).dueAt;

/**
 * How late a proof was for its own student, by the server's receipt; null when it was in time. A proof that was
 * accepted on arrival counts as late by its days, even if dates moved since would now refuse it.
 */
export function lateOf(round: Round, member: Member, receivedAt: Date): Late | null {
  const own = ownRound(round, member);
  const late = latenessOf(own, receivedAt);
  if (!late.late) return null;
  if (late.accepted) return { startedDays: late.daysLate, deduct: late.deductPercent };
  const startedDays = Math.ceil((receivedAt.getTime() - own.dueAt!) / day);
  return { startedDays, deduct: Math.min(100, startedDays * own.lateRule.deductPerDay) };
}
