'use client';
import { useState } from 'react';
import type { Run } from '@/shared/critique/run';
import { offsetsOf } from '@/shared/critique/suggested-spacing';
import { OFFSET_LIMIT } from '@/shared/editing/document';
import type { Spacing } from '@/shared/schemas/spacing';

/** Where a note will stand, and the setting it will suggest there. Null stands for the whole line. */
export type Place = { run: Run | null; suggestion: number[] | null };

/** The chosen pair, run or line. Choosing elsewhere lets an unsaved suggestion go; nudging begins from what was sent. */
export function usePlace(spacing: Spacing, first: Run | null, suggested: number[] | null = null) {
  const [place, setPlace] = useState<Place>({ run: first, suggestion: suggested });
  const last = spacing.offsets.length - 1;
  const choose = (run: Run | null) => setPlace({ run, suggestion: null });
  return {
    ...place,
    choose,
    /** The pair `by` further along; from the whole line, the first or the last. */
    step(by: 1 | -1) {
      const from = place.run === null ? (by > 0 ? -1 : last + 1) : by > 0 ? place.run.last : place.run.first;
      const pair = Math.min(last, Math.max(0, from + by));
      choose({ first: pair, last: pair });
    },
    /** One pair more or less at the end of the run. */
    extend(by: 1 | -1) {
      if (place.run === null) return;
      const end = Math.min(last, Math.max(place.run.first, place.run.last + by));
      choose({ first: place.run.first, last: end });
    },
    /** Opens (above 0) or tightens every gap of the run. */
    nudge(by: number) {
      const from = place.suggestion ?? offsetsOf(spacing, place.run);
      setPlace({
        run: place.run,
        suggestion: from.map((offset) => Math.min(OFFSET_LIMIT, Math.max(-OFFSET_LIMIT, offset + by))),
      });
    },
    suggest: (suggestion: number[] | null) => setPlace({ run: place.run, suggestion }),
  };
}

export type PlaceInHand = ReturnType<typeof usePlace>;
