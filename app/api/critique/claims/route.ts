import { readJson, route } from '@/lib/http/route';
import { claimProof, unclaimProof } from '@/lib/review/claim';

/** Keeps a proof for the marker who has it open. */
export const PUT = route(claimProof, { read: (request) => readJson(request) });

/** Lets go of it. */
export const DELETE = route(unclaimProof, { read: (request) => readJson(request) });
