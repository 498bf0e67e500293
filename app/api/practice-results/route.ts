import { readJson, route } from '@/lib/http/route';
import { savePracticeResults } from '@/lib/account/practice-results';

/** Results of a person's practice, one or many; sent again they count once. */
export const POST = route(savePracticeResults, { read: (request) => readJson(request, 256 * 1024) });
