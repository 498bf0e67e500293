import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { idSchema } from '@/shared/schemas/note';

/** Takes a stock note of one's own out of use; notes that were written with it stay. */
export const dropStockNote = operation({
  name: 'drop-stock-note',
  allow: 'critique:write',
  input: z.strictObject({ stockNoteId: idSchema }),
  run: async ({ data, now }, { stockNoteId }) => {
    if (!(await data.stockNotes.remove(stockNoteId, now))) throw notFound();
    return { stockNoteId };
  },
});
