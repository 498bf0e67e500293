import { changeName } from '@/lib/account/change-name';
import { readJson } from '@/lib/http/read-json';
import { route } from '@/lib/http/route';

/** In benchmarks only: an equally authenticated write of one row, to hold autosave against. */
export const PUT = route(changeName, { read: (request) => readJson(request) });
