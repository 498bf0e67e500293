import { keepStockNote } from '@/lib/critique/keep-stock-note';
import { readJson } from '@/lib/http/read-json';
import { route } from '@/lib/http/route';

export const POST = route(keepStockNote, { read: (request) => readJson(request) });
