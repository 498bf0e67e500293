import { readJson, route } from '@/lib/http/route';
import { skipProof } from '@/lib/review/next';

/** Puts a proof off, or takes it up again. */
export const PUT = route(skipProof, { read: (request) => readJson(request) });
