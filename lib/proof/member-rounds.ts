import * as z from 'zod/mini';
import type { Seat } from '@/lib/data/seats';
import { lateness, type Lateness } from '@/shared/exercise/lateness';
import { currentRound, nextRound } from '@/shared/rounds/current-round';
import { dueForMember } from '@/shared/rounds/due-for-member';
import { accommodationsSchema } from '@/shared/schemas/course';
import { lateRuleSchema } from '@/shared/schemas/round';

/** What is different for this member, checked on the way out. */
export const accommodationsOf = (member: { accommodations: string }) =>
  z.parse(accommodationsSchema, JSON.parse(member.accommodations));

type RoundRow = Omit<Seat['rounds'][number], 'extendedTo' | 'releasedToMember'>;
type Facing = { publishedAt: Date | null; accommodations: string; extendedTo: Date | null };

/** A round with the due instant that holds for one member. */
export function roundFor(round: RoundRow, { publishedAt, accommodations, extendedTo }: Facing) {
  const opensAt = round.opensAt?.getTime() ?? null;
  const dueAt = dueForMember({
    opensAt: opensAt ?? publishedAt?.getTime() ?? round.dueAt?.getTime() ?? 0,
    dueAt: round.dueAt?.getTime() ?? null,
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
    plainDueAt: round.dueAt,
    markingStartedAt: round.markingStartedAt,
    lateRule: z.parse(lateRuleSchema, JSON.parse(round.lateRule)),
  };
}

/** The rounds as the member in this seat meets them. */
export const memberRounds = ({ rounds, member, exercise }: Seat) =>
  rounds.map(({ extendedTo, releasedToMember, ...round }) => ({
    ...roundFor(round, { publishedAt: exercise.publishedAt, accommodations: member.accommodations, extendedTo }),
    releasedToMember,
  }));

export type SeatRound = ReturnType<typeof memberRounds>[number];

/** The round that a proof would go into now, and the one still to come. */
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
