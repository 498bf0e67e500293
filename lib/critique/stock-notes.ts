import type { ScopedData } from '@/lib/data';
import { firstStockNotes } from '@/shared/critique/stock-note';
import { stockNoteInputSchema, type StockNoteView } from '@/shared/schemas/note';

/** The stock notes at hand in a course: one's own and the shared ones, then those every course starts with. */
export async function stockNotesAtHand(data: ScopedData, courseId: string, memberId: string): Promise<StockNoteView[]> {
  const kept = await data.stockNotes.ofCourse(courseId);
  const own = kept.map(({ id, body, fault, shared, authorId }) => ({
    id,
    body,
    fault: stockNoteInputSchema.shape.fault.parse(fault),
    shared,
    own: authorId === memberId,
  }));
  return [...own, ...firstStockNotes.map((note) => ({ ...note, shared: true, own: false }))];
}
