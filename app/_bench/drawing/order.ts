import type { SpacingDocument } from '@/shared/editing/document';
import type { Run, Size } from '@/shared/schemas/spacing';
import type { CssPx } from '@/shared/units';
import type { UsualLine } from '../usual';
import type { Looks } from '@/shared/line/looks';
import type { Frame } from '@/app/_line/frame';
import type { Inks, RulerInks } from '@/app/_line/inks';

/** What is to be painted, as plain data: it may be carried to another thread. Packs and canvases go by number. */
export type Order = LineOrder | RulerOrder;

/** What differs from the order before on the same canvas; the whole of it the first time. */
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
   * Another setting as outlines under the line, laid so that the letter in front of `chosen.head` is the same in both.
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
  /** What is usual for the pairs, and the size the line is set at; null while nothing is said of it. */
  readonly usual: (UsualLine & { readonly size: Size }) | null;
  /** For the reference that is laid to the line: how far each gap may stand and still be called the same. */
  readonly reference: { readonly document: SpacingDocument; readonly tolerances: readonly (number | null)[] } | null;
};

/**
 * Only what has changed is carried over: of the seven drawings of a line nearly everything stays as it was. Null =
 * nothing has changed.
 */
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

/** The same plain data, whatever objects hold it. */
function alike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const names = Object.keys(a);
  return (
    names.length === Object.keys(b).length &&
    names.every((name) => alike(a[name as keyof typeof a], b[name as keyof typeof b]))
  );
}
