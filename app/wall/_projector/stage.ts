'use client';

import { type RefObject, useEffect, useState } from 'react';
import { setWidthOf } from '@/app/_line/frame';
import { placed } from '@/shared/class/wall';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import type { WallLine } from '@/shared/schemas/wall';

export type Places = {
  /** Keys in the order of the lines. */
  order: string[];
  /** Lines that wait to be placed. */
  waiting: number;
  /** Placed, and not yet acknowledged. */
  fresh: string[];
  /** Sent again since they were acknowledged. */
  renewed: string[];
  /** Places the waiting lines and acknowledges all. */
  take: () => void;
};

/** Keeps every line in its place, and knows what is new. */
export function usePlaces(lines: readonly WallLine[], holding: boolean): Places {
  const keys = lines.filter(({ out }) => !out).map(({ key }) => key);
  const [order, setOrder] = useState<string[]>(keys);
  const [noted, setNoted] = useState<ReadonlyMap<string, number>>(() => sentOf(lines));
  const known = new Set(order);
  const next = placed(order, holding ? keys.filter((key) => known.has(key)) : keys);
  // React's way to adjust state to new props before anything is shown.
  if (next.join() !== order.join()) setOrder(next);
  const shown = new Set(next);
  return {
    order: next,
    waiting: keys.filter((key) => !shown.has(key)).length,
    fresh: next.filter((key) => !noted.has(key)),
    renewed: lines
      .filter(({ key, sent }) => shown.has(key) && noted.has(key) && noted.get(key)! < sent)
      .map(({ key }) => key),
    take() {
      setOrder(placed(order, keys));
      setNoted(sentOf(lines));
    },
  };
}

const sentOf = (lines: readonly WallLine[]) => new Map(lines.map(({ key, sent }) => [key, sent]));

type Set = { pack: Pack; spacing: Spacing };

/** Beside each line: its sign, and a little air. CSS px. */
export const BESIDE = 64;
const most = 4;

/** Smallest em, as a share of the screen's height, for the back of a room. From trying it, not from a source. */
const legible = 0.08;

/**
 * Width that every line gets, in em: the face's own width and room for being opened, so that one more line changes no
 * size.
 */
export function widest(lines: readonly Set[]): number {
  return (
    Math.max(
      1,
      ...lines.map(({ pack, spacing }) =>
        Math.max(1.12 * setWidthOf(pack), placeLetters(pack, spacing).width / pack.unitsPerEm),
      ),
    ) + 0.16
  );
}

/** Em at this number of columns. */
export const emFor = (columns: number, width: number, ems: number, height: number): number =>
  Math.max(14, Math.min((width / columns - BESIDE) / ems, 0.5 * height));

/** As many columns as can still be read from the back. */
export function columnsFor(width: number, height: number, ems: number): number {
  let columns = 1;
  while (columns < most && emFor(columns + 1, width, ems, height) >= legible * height) columns += 1;
  return columns;
}

/** Width of an element and height of the window, whole CSS px; null until it is known. */
export function useSize(ref: RefObject<HTMLElement | null>): { width: number; height: number } | null {
  const [size, setSize] = useState<{ width: number; height: number } | null>(null);
  useEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = () => {
      const style = getComputedStyle(element);
      const width = Math.floor(element.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight));
      setSize((was) =>
        was?.width === width && was.height === window.innerHeight ? was : { width, height: window.innerHeight },
      );
    };
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    window.addEventListener('resize', measure);
    return () => {
      observer.disconnect();
      window.removeEventListener('resize', measure);
    };
  }, [ref]);
  return size;
}
