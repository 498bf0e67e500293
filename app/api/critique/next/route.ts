import { readJson, route } from '@/lib/http/route';
import { claimNextProof } from '@/lib/review/next';

/** Claims the next waiting proof of a round. */
export const POST = route(claimNextProof, { read: (request) => readJson(request) });
