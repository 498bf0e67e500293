'use client';
import { useState } from 'react';
import type { WallLine } from '@/shared/schemas/wall';
import { placed } from '@/shared/class/wall';

export type Places = {
  /** Keys in the order they stand. */
  order: string[];
  /** Lines that wait to be placed. */
  waiting: number;
  /** Placed, and not yet taken note of. */
  fresh: string[];
  /** Sent again since they were taken note of. */
  renewed: string[];
  /** Places those that wait and takes note of all. */
  take: () => void;
};

/** Keeps every line where it stands, and knows what is new. */
export function usePlaces(lines: readonly WallLine[], holding: boolean): Places {
  const keys = lines.filter(({ out }) => !out).map(({ key }) => key);
  const [order, setOrder] = useState<string[]>(keys);
  const [noted, setNoted] = useState<ReadonlyMap<string, number>>(() => sentOf(lines));
  const known = new Set(order);
  const next = placed(order, holding ? keys.filter((key) => known.has(key)) : keys);
  // React's way to keep state in step with what came in: before anything is shown.
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
