import type { SpacingDocument } from '@/shared/editing/document';
import type { Run, Size } from '@/shared/schemas/spacing';
import type { CssPx } from '@/shared/units';
import type { UsualLine } from '../usual';
import type { Looks } from '@/shared/line/looks';
import type { Frame } from '@/app/_line/frame';
import type { Inks, RulerInks } from '@/app/_line/inks';

/**
 * What is to be painted, as plain data, so that it can be sent to another thread. Packs and canvases are named by
 * number.
 */
export type Order = LineOrder | RulerOrder;

/** The differences from the previous order for the same canvas; everything the first time. */
export type OrderChange = { readonly canvas: number } & Partial<LineOrder | RulerOrder>;

type Common = {
  readonly canvas: number;
  readonly pack: number;
  readonly dpr: number;
  readonly document: SpacingDocument;
  readonly frame: Frame;
};

export type LineOrder = Common & {
  readonly kind: 'line';
  readonly inks: Inks;
  readonly looks: Looks;
  /** First and last letter that is not covered. */
  readonly window: { readonly from: number; readonly to: number };
  /**
   * Another spacing as outlines under the line, aligned so that the letter before `chosen.head` is at the same place in
   * both.
   */
  readonly under: SpacingDocument | null;
  /** The chosen gap. */
  readonly head: number;
  /** Ticks at the chosen gaps, CSS px long, and bars over and under the gap that the keyboard is on; null for none. */
  readonly chosen: { readonly run: Run; readonly length: CssPx; readonly bar: CssPx } | null;
  readonly why: boolean;
};

export type RulerOrder = Common & {
  readonly kind: 'ruler';
  readonly inks: RulerInks;
  readonly head: number;
  /** What is usual for the pairs, and the size the line is set at; null where the bench may not show it. */
  readonly usual: (UsualLine & { readonly size: Size }) | null;
  /** In reference mode: the tolerance of each gap. */
  readonly reference: { readonly document: SpacingDocument; readonly tolerances: readonly (number | null)[] } | null;
};

/** Only changes are sent: most of the seven drawings of a line stay the same. Null = nothing has changed. */
export function changeOf(order: Order, before: Order | undefined): OrderChange | null {
  if (!before) return order;
  let differing: Record<string, unknown> | null = null;
  for (const name of Object.keys(order) as (keyof Order)[]) {
    if (!alike(order[name], before[name])) (differing ??= { canvas: order.canvas })[name] = order[name];
  }
  return differing as OrderChange | null;
}

export function changed(before: Order | undefined, change: OrderChange): Order {
  return { ...before, ...change } as Order;
}

/** Equal as plain data, whichever objects hold it. */
function alike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const names = Object.keys(a);
  return (
    names.length === Object.keys(b).length &&
    names.every((name) => alike(a[name as keyof typeof a], b[name as keyof typeof b]))
  );
}
