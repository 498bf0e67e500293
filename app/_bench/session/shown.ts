import { builtInDocument, type SpacingDocument } from '@/shared/editing/document';
import type { BenchProps } from '../props';
import { threeAt } from '@/app/_line/looks';
import { current, type BenchState } from './state';

/** The spacing laid to the one being set, or null. */
export function laidDocument(state: BenchState, props: BenchProps): SpacingDocument | null {
  if (state.laid === null) return null;
  if (state.laid === 'built-in') return builtInDocument(props.pack.letters.length - 1);
  if (state.laid === 'start' && props.start)
    return { tracking: props.start.spacing.tracking, offsets: props.start.spacing.offsets };
  if (state.laid === 'step before') return state.history.steps[Math.max(0, (state.replayed ?? 0) - 1)] ?? null;
  const underlay = props.underlays?.find(({ id }) => id === state.laid);
  return underlay ? { tracking: underlay.spacing.tracking, offsets: underlay.spacing.offsets } : null;
}

/** What the drawings show now: a step that is watched again, mine, built-in while that is asked for, or the other one in turn. */
export function shownDocument(state: BenchState, props: BenchProps): SpacingDocument {
  if (state.shown === 'built-in') return builtInDocument(props.pack.letters.length - 1);
  if (state.laying === 'in turn' && state.otherTurn) return laidDocument(state, props) ?? current(state);
  if (state.replayed !== null) return state.history.steps[state.replayed] ?? current(state);
  return current(state);
}

/** Letters that are not covered: all, or the two of the chosen gap and the next one. */
export function openWindow(state: BenchState, letterCount: number): { from: number; to: number } {
  return state.looks.three ? threeAt(state.chosen.head, letterCount) : { from: 0, to: letterCount - 1 };
}
