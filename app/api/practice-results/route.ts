import { readJson, route } from '@/lib/http/route';
import { savePracticeResults } from '@/lib/account/practice-results';

/** Results of one's own practice, one or many; sent again they are the same. */
export const POST = route(savePracticeResults, { read: (request) => readJson(request, 256 * 1024) });
