import type { ReactNode } from 'react';
import type { BenchTelling } from '@/shared/schemas/course';
import type { DemonstrationSteps } from '@/shared/schemas/demonstration';
import type { Pack } from '@/shared/schemas/pack';
import type { PracticeResult } from '@/shared/schemas/practice';
import type { Ground, Size, Spacing } from '@/shared/schemas/spacing';
import type { PerMille } from '@/shared/units';

/** A spacing that can be shown under or beside the one being set. Built-in is always offered and needs no entry. */
type Overlay = {
  id: string;
  /** Its name on the screen, e.g. `Last proof`, `Reference by A. Tuzla`. */
  label: string;
  spacing: Spacing;
  /** Tolerance per pair, shown in the gap ruler where the bench may show everything. */
  tolerances?: (PerMille | null)[];
};

type BenchAccommodations = {
  /** Times the usual size of the working view, 1 to 4. */
  workingView?: number;
  /** The gap ruler is on this bench alone; the exercise shows it to nobody else. */
  rulerOfOwn?: boolean;
  /** Openness of the chosen gap is spoken and written even where the exercise hides it. */
  speakGaps?: boolean;
  /** Start with the single-key shortcuts switched off. */
  singleKeysOff?: boolean;
};

export type BenchProps = {
  /**
   * work: a draft, saved. reference: an instructor's, with tolerances and reasons. trial: stored on this device only
   * unless `save` is given.
   */
  mode: 'work' | 'reference' | 'trial';
  pack: Pack;
  size: Size;
  ground: Ground;
  /** What the server has, and its version. */
  spacing: Spacing;
  version: number;
  /** Identifies the draft (or reference) in the journal and in each PUT. */
  draftId: string;
  /**
   * Opaque key of the person: journals are kept apart by it, so that a shared computer never replays one student's work
   * into another's.
   */
  personKey: string;
  tells: BenchTelling;
  /** Address of the PUT (see shared/editing/wire.ts for its body and answers); null = nothing is sent. */
  save: string | null;
  /** Where to sign in again when the session has ended; opened in a new tab. */
  signIn?: string;
  overlays?: Overlay[];
  /** The page's own part of the bar: before the words about saving, and after them. */
  place?: ReactNode;
  onward?: ReactNode;
  /**
   * A setting of the same words that is offered as a start: laid under the line, and taken only when that is asked for.
   */
  start?: { label: string; spacing: Spacing } | null;
  /** What the line began from where that is wrong on purpose: a reset goes back to it. Null: the face's own spacing. */
  began?: Spacing | null;
  accommodations?: BenchAccommodations;
  /**
   * Smaller sizes for the ladder, largest first; without it the bench chooses sizes down to the smallest of use, or to
   * 12 px.
   */
  ladder?: Size[];
  /** The smallest size the exercise names: touching letters are judged at it, too. */
  smallestSize?: Size | null;
  /** Reference mode only. null = the exercise's own tolerance, '' = no reason. */
  tolerances?: (PerMille | null)[];
  reasons?: string[];
  /** Reference mode only: the work can be recorded as a demonstration. */
  demonstrations?: {
    /** Base address for recordings; the id of each is appended. */
    save: string;
    specimenVersionId: string;
    /** Page that lists the recordings of the exercise. */
    list: string;
  };
};

/** A recorded demonstration, to be replayed step by step. */
export type DemonstrationProps = Pick<
  BenchProps,
  'pack' | 'size' | 'ground' | 'personKey' | 'accommodations' | 'ladder'
> & { recorded: DemonstrationSteps };

export type GuidedLineProps = {
  pack: Pack;
  personKey: string;
  size: Size;
  ground: Ground;
  /** Called once, when the last step is done or the guide is skipped; may be a server action. */
  onDone: (how: 'done' | 'skipped') => unknown;
};

export type EyePracticeProps = {
  /** Lines in which gaps are moved, as their designers kerned them. */
  packs: Pack[];
  personKey: string;
  /** The person's sittings stored on the server, oldest first. */
  results: PracticeResult[];
  /** Address for new results; null = they stay on the device. */
  save: string | null;
};
