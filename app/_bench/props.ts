import type { BenchTelling } from '@/shared/schemas/course';
import type { DemonstrationSteps } from '@/shared/schemas/demonstration';
import type { Pack } from '@/shared/schemas/pack';
import type { PracticeResult } from '@/shared/schemas/practice';
import type { Ground, Size, Spacing } from '@/shared/schemas/spacing';
import type { PerMille } from '@/shared/units';

/** A spacing that may be laid under or beside the one being set. Built-in is always there and needs no entry. */
type Overlay = {
  id: string;
  /** As the screen says it, e.g. `Last proof`, `Reference by A. Tuzla`. */
  label: string;
  spacing: Spacing;
  /** Tolerance per pair, shown in the gap ruler when the bench may tell everything. */
  tolerances?: (PerMille | null)[];
};

type BenchAccommodations = {
  /** Times the usual size of the working view, 1 to 4. */
  workingView?: number;
  /** Openness of the chosen gap is spoken and written even where the exercise tells nothing. */
  speakGaps?: boolean;
  /** Start with the single-key shortcuts switched off. */
  singleKeysOff?: boolean;
};

export type BenchProps = {
  /**
   * work: a draft, saved. reference: an instructor's, with tolerances and reasons. trial: kept on this device only
   * unless `save` is given.
   */
  mode: 'work' | 'reference' | 'trial';
  pack: Pack;
  size: Size;
  ground: Ground;
  /** What the server has, and its version. */
  spacing: Spacing;
  version: number;
  /** Names the draft (or reference) in the journal and in each PUT. */
  draftId: string;
  /**
   * Opaque key of the person: the journal is kept apart by it, so that a shared computer never replays one student's
   * work into another's.
   */
  personKey: string;
  tells: BenchTelling;
  /** Address of the PUT (see shared/editing/wire.ts for its body and answers); null = nothing is sent. */
  save: string | null;
  /** Where to sign in again when the session has ended; opened in a new tab. */
  signIn?: string;
  overlays?: Overlay[];
  /**
   * A setting of the same words that is offered as a start: laid under the line, and taken only when that is asked for.
   */
  start?: { label: string; spacing: Spacing } | null;
  accommodations?: BenchAccommodations;
  /**
   * Smaller sizes for the ladder, largest first; without it the bench chooses sizes down to the smallest of use, or to
   * 12 px.
   */
  ladder?: Size[];
  /** The smallest size the exercise names: contact is judged there, too. */
  smallestSize?: Size | null;
  /** Reference mode only. null = the exercise's own tolerance, '' = no reason. */
  tolerances?: (PerMille | null)[];
  reasons?: string[];
  /** Reference mode only: a setting can be recorded as it is made. */
  demonstrations?: {
    /** Address that takes recordings; the id of each is put behind it. */
    save: string;
    specimenVersionId: string;
    /** Page where those of the exercise stand. */
    list: string;
  };
};

/** A recorded setting, to be looked at step by step. */
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
  /** The person's sittings that the server keeps, oldest first. */
  results: PracticeResult[];
  /** Address that takes further ones; null = they stay on the device. */
  save: string | null;
};
