type RoundTimes = { readonly opensAt: Date | null; readonly dueAt: Date | null };

/**
 * The due instant of one member: the round's, made later by their share of more time (percent of the time from opening
 * to due, rounded up to the minute) or by a due date of their own, whichever is later. Never earlier than the round's.
 * `publishedAt` stands in for the opening of a round that opens with publication.
 */
export function dueFor(round: RoundTimes, publishedAt: Date | null, member: { moreTime?: number | undefined; extendedTo?: Date | null }): Date | null {
  if (round.dueAt === null) return null;
  const due = round.dueAt.getTime();
  const opens = (round.opensAt ?? publishedAt ?? round.dueAt).getTime();
  const longer = due + Math.ceil((Math.max(0, due - opens) * (member.moreTime ?? 0)) / 100 / minute) * minute;
  return new Date(Math.max(due, longer, member.extendedTo?.getTime() ?? 0));
}

const minute = 60_000;
