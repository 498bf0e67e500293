'use client';
import type { Fault, StockNoteView } from '@/shared/schemas/note';

/** Stock notes with those that answer the fault first; otherwise in the order they were kept. */
export const suggestedFirst = (stock: readonly StockNoteView[], fault: Fault): StockNoteView[] =>
  fault === ''
    ? [...stock]
    : stock.toSorted((one, other) => Number(other.fault === fault) - Number(one.fault === fault));
