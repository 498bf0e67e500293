/** A round as one member meets it; instants in milliseconds since 1970 UTC. */
export type MemberRound = {
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
