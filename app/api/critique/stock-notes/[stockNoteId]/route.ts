import { deleteStockNote } from '@/lib/review/stock-notes';
import { route } from '@/lib/http/route';

export const DELETE = route(deleteStockNote, { read: (_request, { stockNoteId }) => ({ stockNoteId }) });
