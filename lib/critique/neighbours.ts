import type { ScopedData } from '@/lib/data';
import type { ProofInHand } from './proof-in-hand';
import type { MyQueue } from './my-queue';
import type { InOrder } from './queue-order';
import { tokenOf } from './shown-as';

/** Where the keys lead from here: addresses of pages, null at either end. */
export type Neighbours = {
  nextStudent: string | null;
  previousStudent: string | null;
  nextLine: string | null;
  previousLine: string | null;
};

type Here = { token: string; proofId: string; specimenId: string };

/**
 * The proofs before and after this one in the queue (the same line), and the lines before and after this one in the
 * proof; after a student's last line comes the first line of the next student. From a proof that does not count, the first of the queue comes next.
 */
export async function neighboursOf(
  data: ScopedData,
  hand: Pick<ProofInHand, 'round' | 'settings'>,
  queue: MyQueue,
  here: Here,
  specimenIds: readonly string[],
): Promise<Neighbours> {
  const place = queue.placeOf.get(here.proofId) ?? -1;
  const [next, previous] = await tokensOf(data, hand, [queue.counted[place + 1], queue.counted[place - 1]]);
  return between(next ?? null, previous ?? null, here, specimenIds, queue.section?.id ?? null);
}

/** The same in a queue of which every token is at hand. */
export function neighboursAmong(
  tokens: readonly string[],
  here: Omit<Here, 'proofId'>,
  specimenIds: readonly string[],
): Neighbours {
  const place = tokens.indexOf(here.token);
  return between(tokens[place + 1] ?? null, tokens[place - 1] ?? null, here, specimenIds);
}

function between(
  next: string | null,
  previous: string | null,
  here: Omit<Here, 'proofId'>,
  specimenIds: readonly string[],
  section: string | null = null,
): Neighbours {
  const line = specimenIds.indexOf(here.specimenId);
  const nextLine = specimenIds[line + 1];
  const previousLine = line > 0 ? specimenIds[line - 1] : undefined;
  const to = (token: string, specimenId: string) => address(token, specimenId, section);
  return {
    nextStudent: next ? to(next, here.specimenId) : null,
    previousStudent: previous ? to(previous, here.specimenId) : null,
    nextLine: nextLine ? to(here.token, nextLine) : next && specimenIds[0] ? to(next, specimenIds[0]) : null,
    previousLine: previousLine ? to(here.token, previousLine) : null,
  };
}

/** What stands for each of these proofs in an address, null where there is none. */
async function tokensOf(
  data: ScopedData,
  { round, settings }: Pick<ProofInHand, 'round' | 'settings'>,
  places: readonly (InOrder | undefined)[],
): Promise<(string | null)[]> {
  const memberIds = places.flatMap((place) => (place ? [place.memberId] : []));
  const released = settings.namesHidden
    ? await data.releases.numbersOf(round.id, memberIds)
    : new Map<string, unknown>();
  return places.map((place) => (place ? tokenOf(place, settings.namesHidden && !released.has(place.memberId)) : null));
}

export const address = (token: string, specimenId: string, section: string | null): string =>
  `/critique/${token}/${specimenId}${section === null ? '' : `?section=${section}`}`;
