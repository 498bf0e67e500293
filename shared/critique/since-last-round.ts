import type { StoredComparison } from '@/shared/schemas/stored-figures';
import type { Spacing } from '@/shared/schemas/spacing';
import type { EarlierNote } from './desk';
import { followPair } from './follow-pair';
import { pairChange, type PairChange } from './pair-change';

/** A pair that has moved since the last round. `pair` is its place in the line as it was, `place` in the line as it is now (null: gone). */
export type MovedPair = PairChange & {
  place: number | null;
  /** Beside the nearest reference, tightness taken out, before and now: `met` is within tolerance. */
  reference: PairChange['toward'];
};

type Rounds = {
  then: Spacing;
  now: Spacing;
  /** Pair maps of the versions between, oldest first. */
  maps: readonly (readonly (number | null)[])[];
  before: StoredComparison | null;
  after: StoredComparison | null;
  /** Notes of that round, which may have suggested something for a pair. */
  notes: readonly Pick<EarlierNote, 'changes'>[];
};

/** The pairs that moved, or are gone, in the order of the line; each with whether it went towards the note's suggestion and the reference. */
export function sinceLastRound({ then, now, maps, before, after, notes }: Rounds): MovedPair[] {
  const said = notes.flatMap(({ changes }) => changes);
  return then.offsets.flatMap((_, pair) => {
    const place = followPair(pair, maps);
    const change = pairChange(pair, then, now, place, null);
    if (change.now !== null && change.moved === 0) return [];
    const toward = said.find((one) => one.pair === pair && one.toward !== null)?.toward ?? null;
    return [
      { ...change, toward, place, reference: place === null ? null : besideReference(before, pair, after, place) },
    ];
  });
}

function besideReference(
  before: StoredComparison | null,
  pair: number,
  after: StoredComparison | null,
  place: number,
): PairChange['toward'] {
  if (before?.nearest == null || after?.nearest == null) return null;
  const then = before.pairs.find(({ index }) => index === pair);
  const now = after.pairs.find(({ index }) => index === place);
  if (!then || !now) return null;
  if (now.within) return 'met';
  const nearer = Math.abs(then.rest) - Math.abs(now.rest);
  return nearer > 0 ? 'nearer' : nearer < 0 ? 'away' : 'same';
}
