import type { Pack } from '@/shared/schemas/pack';
import type { Fault, StockNoteView } from '@/shared/schemas/note';
import type { Ground, Size, Spacing } from '@/shared/schemas/spacing';
import type { PairFault } from './faults';

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

/** One student's setting of it; `token` stands for the proof. */
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
