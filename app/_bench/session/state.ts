import { builtInDocument, type SpacingDocument } from '@/shared/editing/document';
import { type History, present } from '@/shared/editing/history';
import type { Sync } from '@/shared/editing/sync';
import type { Run } from '@/shared/schemas/spacing';
import type { BenchProps } from '../props';
import { openLetters, type Looks, type OpenLetters } from '@/shared/line/looks';
import type { Room } from '../drawing/views';
import type { ScreenMeasure } from './screen';

/** How another spacing is shown with the one being set. */
export type OverlayMode = 'under' | 'beside' | 'in turn';

/** What is chosen: a gap, or a run of gaps from `anchor` to `head`. */
type Chosen = { readonly anchor: number; readonly head: number };

export type BenchState = {
  readonly history: History<SpacingDocument>;
  readonly sync: Sync;
  readonly chosen: Chosen;
  /** The keyboard is on the gaps, and the drawing shows it. */
  readonly byKeys: boolean;
  readonly looks: Looks;
  /** Showing built-in loses nothing; the next change returns to mine. */
  readonly shown: 'mine' | 'built-in';
  /** Which spacing is the overlay: `built-in`, the id of an overlay, or null. */
  readonly overlay: string | null;
  readonly overlayMode: OverlayMode;
  /** Which of the two is shown, while two spacings alternate. */
  readonly otherTurn: boolean;
  /** The step being shown while the sitting is replayed, else null. */
  readonly replayed: number | null;
  /** While the replay plays. */
  readonly playing: boolean;
  /** What is known about the size of a pixel on this screen. */
  readonly screen: ScreenMeasure | null;
  /** What the sheet has for its lines; null until it was measured. */
  readonly room: Room | null;
  /** The working view at the line's true size, panned where the line is longer. */
  readonly atTrue: boolean;
  /** Times the usual size of the working view. */
  readonly zoom: number;
  readonly singleKeys: boolean;
  /** False once this device is full. */
  readonly deviceStores: boolean;
};

/** The document now, an open gesture included. */
export const current = (state: BenchState): SpacingDocument => present(state.history);

export const chosenRun = ({ chosen }: BenchState): Run => ({
  first: Math.min(chosen.anchor, chosen.head),
  last: Math.max(chosen.anchor, chosen.head),
});

/** The overlay: the spacing shown with the one being set, or null. */
export function overlayDocument(state: BenchState, props: BenchProps): SpacingDocument | null {
  if (state.overlay === null) return null;
  if (state.overlay === 'built-in') return builtInDocument(props.pack.letters.length - 1);
  if (state.overlay === 'start' && props.start)
    return { tracking: props.start.spacing.tracking, offsets: props.start.spacing.offsets };
  if (state.overlay === 'step before') return state.history.steps[Math.max(0, (state.replayed ?? 0) - 1)] ?? null;
  const found = props.overlays?.find(({ id }) => id === state.overlay);
  return found ? { tracking: found.spacing.tracking, offsets: found.spacing.offsets } : null;
}

/**
 * What the drawings show now: a replayed step, mine, built-in while that is switched on, or the other of two that
 * alternate.
 */
export function shownDocument(state: BenchState, props: BenchProps): SpacingDocument {
  if (state.shown === 'built-in') return builtInDocument(props.pack.letters.length - 1);
  if (state.overlayMode === 'in turn' && state.otherTurn) return overlayDocument(state, props) ?? current(state);
  if (state.replayed !== null) return state.history.steps[state.replayed] ?? current(state);
  return current(state);
}

/** Letters that are not covered: all, or the two of the chosen gap and the next one. */
export function openWindow(state: BenchState, letterCount: number): OpenLetters {
  return openLetters(state.looks, state.chosen.head, letterCount);
}
