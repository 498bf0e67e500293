import { readJson, route } from '@/lib/http/route';
import { takeNext } from '@/lib/review/next';

/** Takes the next proof of a round that waits. */
export const POST = route(takeNext, { read: (request) => readJson(request) });
