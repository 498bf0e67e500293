import type { SpacingDocument } from '@/shared/editing/document';
import { present, type History } from '@/shared/editing/history';
import type { Run } from '@/shared/editing/commands';
import type { Sync } from '@/shared/editing/sync';
import type { Laying, Looks } from '@/app/_line/looks';
import type { ScreenMeasure } from './screen';

/** Where the hand is: a gap, or a run of gaps from `anchor` to `head`. */
export type Chosen = { readonly anchor: number; readonly head: number };

export type BenchState = {
  readonly history: History<SpacingDocument>;
  readonly sync: Sync;
  readonly chosen: Chosen;
  /** The keyboard is on the gaps, which is shown there. */
  readonly byKeys: boolean;
  readonly looks: Looks;
  /** While built-in is shown nothing is lost; the next change goes back to mine. */
  readonly shown: 'mine' | 'built-in';
  /** Which spacing is laid to this one: `built-in`, the id of an underlay, or null. */
  readonly laid: string | null;
  readonly laying: Laying;
  /** Whose turn it is while two settings are shown in turn. */
  readonly otherTurn: boolean;
  /** The step that is shown while the sitting is watched again, else null. */
  readonly replayed: number | null;
  /** While it goes from step to step by itself. */
  readonly playing: boolean;
  /** What is known of the size of a pixel on this screen. */
  readonly screen: ScreenMeasure | null;
  /** Times the usual size of the working view. */
  readonly zoom: number;
  readonly singleKeys: boolean;
  /** False once this device took nothing more. */
  readonly deviceKeeps: boolean;
};

/** The document as it stands under the hand. */
export const current = (state: BenchState): SpacingDocument => present(state.history);

export const chosenRun = ({ chosen }: BenchState): Run => ({
  from: Math.min(chosen.anchor, chosen.head),
  to: Math.max(chosen.anchor, chosen.head),
});
