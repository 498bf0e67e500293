import { readJson, route } from '@/lib/http/route';
import { giveMark } from '@/lib/review/marks';

export const PUT = route(giveMark, { read: (request) => readJson(request) });
