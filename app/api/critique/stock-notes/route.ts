import { keepStockNote } from '@/lib/review/stock-notes';
import { readJson } from '@/lib/http/read-json';
import { route } from '@/lib/http/route';

export const POST = route(keepStockNote, { read: (request) => readJson(request) });
