import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { keepPracticeResultsInput } from '@/shared/schemas/practice';

/** Keeps results of the actor's own practice. Sent again, nothing is kept twice. Result: the keys that are kept now. */
export const keepPracticeResults = operation({
  name: 'keep-practice-results',
  allow: 'account:own',
  input: keepPracticeResultsInput,
  run: async ({ data, now }, { results }) => {
    for (const result of results) await retryOnConflict(() => data.practiceResults.keep(result, now));
    return { kept: results.map(({ requestKey }) => requestKey) };
  },
});
