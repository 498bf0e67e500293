import { readJson, route } from '@/lib/http/route';
import { sendProof } from '@/lib/work/proofs';

/** In benchmarks only: sends a proof as the form does, so that a program can send sixty. */
export const POST = route(sendProof, { read: (request) => readJson(request) });
