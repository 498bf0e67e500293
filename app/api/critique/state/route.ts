import { readJson, route } from '@/lib/http/route';
import { finishProof } from '@/lib/review/claim';

export const PUT = route(finishProof, { read: (request) => readJson(request) });
