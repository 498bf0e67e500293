'use client';
import { useState } from 'react';
import type { Fault, StockNoteView } from '@/shared/schemas/note';
import { send } from './send';

/** The stock notes at hand: kept from what was typed, and taken out of use again by whoever wrote them. */
export function useStock(courseId: string, initial: StockNoteView[], say: (words: string) => void) {
  const [stock, setStock] = useState(initial);
  return {
    stock,
    async keep(body: string, shared: boolean, fault: Fault) {
      const answer = await send<StockNoteView>('POST', '/api/critique/stock-notes', { courseId, body, fault, shared });
      if (answer.ok) setStock((all) => [answer.result, ...all]);
      say(answer.ok ? 'Kept as a stock note.' : answer.message);
    },
    async drop({ id }: StockNoteView) {
      const answer = await send('DELETE', `/api/critique/stock-notes/${id}`, {});
      if (answer.ok) setStock((all) => all.filter((note) => note.id !== id));
      say(answer.ok ? 'The stock note is out of use; notes left with it stay.' : answer.message);
    },
  };
}
