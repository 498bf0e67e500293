import { readJson, route } from '@/lib/http/route';
import { claimProof, giveBackProof } from '@/lib/review/claim';

/** Keeps a proof for the marker who has it open. */
export const PUT = route(claimProof, { read: (request) => readJson(request) });

/** Lets go of it. */
export const DELETE = route(giveBackProof, { read: (request) => readJson(request) });
