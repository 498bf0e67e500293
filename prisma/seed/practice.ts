import type { Caller } from '@/lib/access/caller';
import { savePracticeResults } from '@/lib/account/practice-results';
import type { PracticeResult } from '@/shared/schemas/practice';
import { daysAgo } from './local-instant';

/**
 * Sittings of the practice by two of the demo's students, made up: how small a move was seen, finer as the term goes
 * on.
 */
const sittings: readonly (Pick<PracticeResult, 'task' | 'kind' | 'size'> & { seen: readonly number[] })[] = [
  { task: 'which line', kind: 'any', size: 48, seen: [46, 38, 31, 33, 24] },
  { task: 'which gap', kind: 'open', size: 96, seen: [62, 51, 40] },
];

/** A sitting every four days, until yesterday. */
export async function seedPractice(studentIds: readonly string[], now: Date): Promise<void> {
  for (const [student, userId] of studentIds.slice(0, 2).entries()) {
    const results = sittings.flatMap(({ seen, ...asked }, series) =>
      seen.map((fault, sitting): PracticeResult => {
        const level = fault + 4 * student;
        return {
          ...asked,
          requestKey: `demo-sitting-${series}-${sitting}`,
          at: daysAgo(now, 1 + 4 * (seen.length - 1 - sitting) + series).now.toISOString(),
          fault: level,
          trials: 52 - sitting,
          // Around what was seen, as a staircase turns.
          turns: [8, -6, 5, -5, 3, -4, 3, -3].map((away) => level + away),
          unmoved: { shown: 8, seen: Math.max(0, 2 - sitting) },
        };
      }),
    );
    await savePracticeResults(person(userId), { results }, { now });
  }
}

const person = (userId: string): Caller => ({ kind: 'person', userId, sessionId: 'demo', address: 'demo' });
