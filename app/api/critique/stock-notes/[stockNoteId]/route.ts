import { dropStockNote } from '@/lib/critique/drop-stock-note';
import { route } from '@/lib/http/route';

export const DELETE = route(dropStockNote, { read: (_request, { stockNoteId }) => ({ stockNoteId }) });
