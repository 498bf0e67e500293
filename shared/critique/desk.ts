import type { SecondState } from '@/shared/marking/effective-mark';
import type { Late } from '@/shared/marking/late-deduction';
import type { StoredComparison, StoredMeasure } from '@/shared/schemas/stored-figures';
import type { MarkEventView, MarkView } from '@/shared/schemas/mark';
import type { NoteView, StockNoteView } from '@/shared/schemas/note';
import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Size, Spacing } from '@/shared/schemas/spacing';
import type { PairChange } from './pair-change';
import type { MovedPair } from './since-last-round';

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
  /** The proof by the token that stands for it. */
  proof: { token: string; shownAs: string; counts: boolean };
  /** This proof has been released before. */
  released: boolean;
  /** Keeps what is typed on this device apart by person. */
  personKey: string;
  line: { specimenId: string; specimenVersionId: string; text: string; size: Size; ground: Ground; tolerance: number };
  pack: Pack;
  spacing: Spacing;
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
