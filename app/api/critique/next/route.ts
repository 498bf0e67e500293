import { readJson, route } from '@/lib/http/route';
import { claimNextProof } from '@/lib/review/next';

/** Takes the next proof of a round that waits. */
export const POST = route(claimNextProof, { read: (request) => readJson(request) });
