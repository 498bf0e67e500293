import type { LateRule } from '@/shared/schemas/exercise';

/** A round as one member meets it; instants in milliseconds since 1970 UTC. */
type MemberRound = {
  readonly number: number;
  /** Null: round 1 opens with the exercise, a later one when the one before it was released to this member. */
  readonly opensAt: number | null;
  /** With the member's own extension already in it; null: no date. */
  readonly dueAt: number | null;
  readonly releasedToMember: boolean;
};

/**
 * The round a proof would be sent into now: the highest one that is open to this member.
 * Null when none is open yet. A round never closes the one before it for reading, only for sending.
 */
export function currentRound<Round extends MemberRound>(rounds: readonly Round[], now: number): Round | null {
  const inOrder = [...rounds].sort((one, other) => one.number - other.number);
  let current: Round | null = null;
  inOrder.forEach((round, place) => {
    if (isOpen(round, inOrder[place - 1], now)) current = round;
  });
  return current;
}

/** The first round that is still to open, for saying when. */
export function nextRound<Round extends MemberRound>(rounds: readonly Round[], now: number): Round | null {
  const inOrder = [...rounds].sort((one, other) => one.number - other.number);
  return inOrder.find((round, place) => !isOpen(round, inOrder[place - 1], now)) ?? null;
}

function isOpen(round: MemberRound, before: MemberRound | undefined, now: number): boolean {
  if (round.opensAt !== null) return round.opensAt <= now;
  return before === undefined || before.releasedToMember;
}

/** What holds for one section in a round, in place of the round's own; null inherits. */
export type SectionDates = {
  readonly sectionId: string;
  readonly opensAt: Date | null;
  readonly dueAt: Date | null;
  readonly markingStartedAt: Date | null;
};

type Marking = { readonly markingStartedAt: Date | null; readonly sections: readonly SectionDates[] };
type SharedDates = Marking & {
  readonly opensAt: Date | null;
  readonly dueAt: Date | null;
  readonly lateRule: LateRule;
};

/**
 * A round's dates as they hold for the members of one section (null: in none). A last date for late proofs moves with
 * the section's due date, by the same span.
 */
export function datesForSection(
  round: SharedDates,
  sectionId: string | null,
): Pick<SharedDates, 'opensAt' | 'dueAt' | 'lateRule' | 'markingStartedAt'> {
  const own = ownDates(round.sections, sectionId);
  const dueAt = own?.dueAt ?? round.dueAt;
  const moved = round.dueAt === null || dueAt === null ? 0 : dueAt.getTime() - round.dueAt.getTime();
  const { untilAt } = round.lateRule;
  return {
    opensAt: own?.opensAt ?? round.opensAt,
    dueAt,
    lateRule:
      moved === 0 || untilAt === null
        ? round.lateRule
        : { ...round.lateRule, untilAt: new Date(new Date(untilAt).getTime() + moved).toISOString() },
    markingStartedAt: markingStartedFor(round, sectionId),
  };
}

/**
 * From when a later proof of a section's member does not change which one counts; null: marking has not begun for them.
 * Where a section has its own dates, marking begins for it by itself.
 */
export function markingStartedFor({ markingStartedAt, sections }: Marking, sectionId: string | null): Date | null {
  const own = ownDates(sections, sectionId);
  if (own && (own.opensAt !== null || own.dueAt !== null)) return own.markingStartedAt;
  return own?.markingStartedAt ?? markingStartedAt;
}

/** Whether marking has begun for everybody or for a section. */
export const someBegun = ({ markingStartedAt, sections }: Marking): boolean =>
  markingStartedAt !== null || sections.some((own) => own.markingStartedAt !== null);

const ownDates = (sections: readonly SectionDates[], sectionId: string | null): SectionDates | undefined =>
  sectionId === null ? undefined : sections.find((own) => own.sectionId === sectionId);

type Terms = {
  /** From when the round's time runs. */
  readonly opensAt: number;
  readonly dueAt: number | null;
  /** Another due instant for this member alone, set by an instructor. */
  readonly extendedTo: number | null;
  /** Percent of the round's time that this member has on top, by accommodation. */
  readonly moreTime: number;
};

/**
 * When the round is due for one member, in milliseconds since 1970 UTC; null: no date.
 * An extension and an accommodation do not add up: the later of the two holds.
 */
export function dueForMember({ opensAt, dueAt, extendedTo, moreTime }: Terms): number | null {
  if (dueAt === null) return null;
  const lengthened = dueAt + (Math.max(0, dueAt - opensAt) * moreTime) / 100;
  return Math.max(lengthened, extendedTo ?? dueAt);
}

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
