import { saveStockNote } from '@/lib/review/stock-notes';
import { readJson, route } from '@/lib/http/route';

export const POST = route(saveStockNote, { read: (request) => readJson(request) });
