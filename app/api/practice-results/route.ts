import { readJson, route } from '@/lib/http/route';
import { keepPracticeResults } from '@/lib/account/practice-results';

/** Results of one's own practice, one or many; sent again they are the same. */
export const POST = route(keepPracticeResults, { read: (request) => readJson(request, 256 * 1024) });
