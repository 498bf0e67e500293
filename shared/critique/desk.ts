import type { Late, SecondState } from '@/shared/marking/marks';
import type { MarkEventView, MarkView } from '@/shared/schemas/mark';
import type { Fault, NoteView, StockNoteView } from '@/shared/schemas/note';
import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Size, Spacing } from '@/shared/schemas/spacing';
import type { StoredComparison, StoredMeasure } from '@/shared/schemas/stored-figures';
import type { PairFault } from './faults';
import { followPair, type PairChange, pairChange } from './pair-change';

/** A note of an earlier round, with how each of its pairs has moved since. A note on the whole line has no changes. */
export type EarlierNote = {
  id: string;
  round: number;
  body: string;
  fromPair: number | null;
  toPair: number | null;
  changes: PairChange[];
};

export type DeskCriterion = {
  versionId: string;
  title: string;
  description: string;
  weight: number;
  levels: { title: string; description: string; points: number }[];
  mark: MarkView;
  /** What the measures would say, with its arithmetic; a person decides. */
  proposed: { level: number; arithmetic: string } | null;
};

/** All that the critique desk works with on one line of one proof. */
export type DeskLine = {
  course: { id: string; title: string; timeZone: string };
  exercise: { id: string };
  round: { number: number };
  queue: { skipped: boolean; section: { id: string; name: string } | null };
  /** The token of the proof. */
  proof: { token: string; shownAs: string; counts: boolean };
  /** This proof has been released before. */
  released: boolean;
  /** Keeps what is typed on this device apart by person. */
  personKey: string;
  line: { specimenId: string; specimenVersionId: string; text: string; size: Size; ground: Ground; tolerance: number };
  pack: Pack;
  spacing: Spacing;
  /** What the line began from, where it was wrong on purpose. */
  began: Spacing | null;
  measure: StoredMeasure | null;
  comparison: StoredComparison | null;
  /** Hints, in sentences, on how the same text was set at other sizes, weights and in other faces. */
  across: string[];
  references: { author: string; slot: number; spacing: Spacing }[];
  previous: { round: number; proof: number; spacing: Spacing } | null;
  /** Pairs that moved since that round; null where there was none. */
  since: { round: number; moved: MovedPair[] } | null;
  notes: NoteView[];
  earlier: EarlierNote[];
  marks: {
    criteria: DeskCriterion[];
    total: {
      percent: number | null;
      arithmetic: string[];
      after: number | null;
      late: string | null;
      rule: Late | null;
    };
    history: MarkEventView[];
  };
  stock: StockNoteView[];
  task: { state: 'open' | 'done'; mine: boolean; heldBy: string | null };
  /** Whether two mark this proof, which of the two markings this is, and what may be seen here of both. */
  two: { state: SecondState; slot: 'first' | 'second'; sight: 'all' | 'own' | 'none' };
  go: {
    nextStudent: string | null;
    previousStudent: string | null;
    nextLine: string | null;
    previousLine: string | null;
  };
};

/** A version of the specimen that is looked at across the class. */
export type AcrossVersion = {
  id: string;
  specimenId: string;
  number: number;
  text: string;
  size: Size;
  ground: Ground;
  pack: Pack;
};

/** One student's spacing of it; `token` is that of the proof. */
export type AcrossLine = {
  token: string;
  shownAs: string;
  specimenVersionId: string;
  spacing: Spacing;
  faults: PairFault[];
  /** At the chosen fault: the offsets that the measure would bring its pairs to, 1/1000 em. */
  suggestion: number[] | null;
  notes: { fromPair: number | null; toPair: number | null; body: string }[];
};

/** A fault that several settings share. `key` names it in an address. */
export type AcrossFault = { key: string; first: number; last: number; fault: Exclude<Fault, ''>; letters: string };

/** A page of one specimen across a round. */
export type AcrossPage = {
  personKey: string;
  exerciseId: string;
  round: number;
  specimen: { id: string; text: string };
  versions: AcrossVersion[];
  lines: AcrossLine[];
  /** Of all pages: how many settings are in the list, and the place of the first one here. */
  inList: number;
  first: number;
  chosen: AcrossFault | null;
  stock: StockNoteView[];
  go: {
    nextFault: string | null;
    nextPage: string | null;
    previousPage: string | null;
    nextLine: string | null;
    previousLine: string | null;
  };
};

/**
 * A pair that has moved since the last round. `pair` is its place in the line as it was, `place` in the line as it is
 * now (null: gone).
 */
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

/**
 * The pairs that moved, or are gone, in the order of the line; each with whether it went towards the note's suggestion
 * and the reference.
 */
export function sinceLastRound({ then, now, maps, before, after, notes }: Rounds): MovedPair[] {
  const noted = notes.flatMap(({ changes }) => changes);
  return then.offsets.flatMap((_, pair) => {
    const place = followPair(pair, maps);
    const change = pairChange(pair, then, now, place, null);
    if (change.now !== null && change.moved === 0) return [];
    const toward = noted.find((one) => one.pair === pair && one.toward !== null)?.toward ?? null;
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
