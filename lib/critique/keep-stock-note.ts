import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { stockNoteInputSchema, type StockNoteView } from '@/shared/schemas/note';

/** Keeps a remark for use again, for oneself or for all markers of the course. */
export const keepStockNote = operation({
  name: 'keep-stock-note',
  allow: 'critique:write',
  input: stockNoteInputSchema,
  run: async ({ data, now }, note): Promise<StockNoteView> => {
    const me = await data.markTasks.marker(note.courseId);
    if (!me) throw notFound();
    const id = await data.stockNotes.create({ ...note, authorId: me.id, now });
    return { id, body: note.body, fault: note.fault, shared: note.shared, own: true };
  },
});
