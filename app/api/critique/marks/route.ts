import { readJson } from '@/lib/http/read-json';
import { route } from '@/lib/http/route';
import { giveMark } from '@/lib/review/marks';

export const PUT = route(giveMark, { read: (request) => readJson(request) });
