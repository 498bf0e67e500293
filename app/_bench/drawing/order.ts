import type { Run } from '@/shared/editing/commands';
import type { SpacingDocument } from '@/shared/editing/document';
import type { CssPx } from '@/shared/units';
import type { Looks } from '../session/looks';
import type { Frame } from './frame';
import type { Inks, RulerInks } from './inks';

/** What is to be painted, as plain data: it may be carried to another thread. Packs and canvases go by number. */
export type Order = LineOrder | RulerOrder;

type Common = { readonly canvas: number; readonly pack: number; readonly dpr: number; readonly document: SpacingDocument; readonly frame: Frame };

export type LineOrder = Common & {
  readonly kind: 'line';
  readonly inks: Inks;
  readonly looks: Looks;
  /** First and last letter that is not covered. */
  readonly window: { readonly from: number; readonly to: number };
  /** Another setting as outlines under the line, laid so that the letter in front of `chosen.head` is the same in both. */
  readonly under: SpacingDocument | null;
  /** The gap under the hand. */
  readonly head: number;
  /** Ticks at the chosen gaps, CSS px long, and bars over and under the gap that the keyboard is on; null for none. */
  readonly chosen: { readonly run: Run; readonly length: CssPx; readonly bar: CssPx } | null;
  readonly why: boolean;
};

export type RulerOrder = Common & {
  readonly kind: 'ruler';
  readonly inks: RulerInks;
  readonly head: number;
  /** For the reference that is laid to the line: how far each gap may stand and still be called the same. */
  readonly reference: { readonly document: SpacingDocument; readonly tolerances: readonly (number | null)[] } | null;
};
