import { dropStockNote } from '@/lib/review/stock-notes';
import { route } from '@/lib/http/route';

export const DELETE = route(dropStockNote, { read: (_request, { stockNoteId }) => ({ stockNoteId }) });
