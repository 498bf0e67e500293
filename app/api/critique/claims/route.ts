import { readJson, route } from '@/lib/http/route';
import { claimProof, unclaimProof } from '@/lib/review/claim';

/** Extends the claim of the marker who has the proof open. */
export const PUT = route(claimProof, { read: (request) => readJson(request) });

/** Gives the claim up. */
export const DELETE = route(unclaimProof, { read: (request) => readJson(request) });
