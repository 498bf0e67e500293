import { readJson } from '@/lib/http/read-json';
import { route } from '@/lib/http/route';
import { finishProof } from '@/lib/review/claim';

export const PUT = route(finishProof, { read: (request) => readJson(request) });
