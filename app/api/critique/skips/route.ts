import { readJson, route } from '@/lib/http/route';
import { skipProof } from '@/lib/review/next';

/** Puts a proof off, or back in the queue. */
export const PUT = route(skipProof, { read: (request) => readJson(request) });
