import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { firstStockNotes } from '@/shared/critique/stock-note';
import { stockNoteInputSchema, type StockNoteView } from '@/shared/schemas/note';
import { idSchema } from '@/shared/schemas/id';

/** The stock notes available in a course: one's own and the shared ones, then those every course starts with. */
export async function listStockNotes(data: ScopedData, courseId: string, memberId: string): Promise<StockNoteView[]> {
  const stored = await data.stockNotes.ofCourse(courseId);
  const own = stored.map(({ id, body, fault, shared, authorId }) => ({
    id,
    body,
    fault: stockNoteInputSchema.shape.fault.parse(fault),
    shared,
    own: authorId === memberId,
  }));
  return [...own, ...firstStockNotes.map((note) => ({ ...note, shared: true, own: false }))];
}

/** Keeps a remark for use again, for oneself or for all markers of the course. */
export const saveStockNote = operation({
  name: 'save-stock-note',
  allow: 'critique:write',
  input: stockNoteInputSchema,
  run: async ({ data, now }, note): Promise<StockNoteView> => {
    const me = await data.markTasks.marker(note.courseId);
    if (!me) throw notFound();
    const id = await data.stockNotes.create({ ...note, authorId: me.id, now });
    return { id, body: note.body, fault: note.fault, shared: note.shared, own: true };
  },
});

/** Takes a stock note of one's own out of use; notes that were written with it stay. */
export const deleteStockNote = operation({
  name: 'delete-stock-note',
  allow: 'critique:write',
  input: z.strictObject({ stockNoteId: idSchema }),
  run: async ({ data, now }, { stockNoteId }) => {
    if (!(await data.stockNotes.remove(stockNoteId, now))) throw notFound();
    return { stockNoteId };
  },
});
