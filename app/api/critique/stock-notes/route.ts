import { keepStockNote } from '@/lib/review/stock-notes';
import { readJson, route } from '@/lib/http/route';

export const POST = route(keepStockNote, { read: (request) => readJson(request) });
