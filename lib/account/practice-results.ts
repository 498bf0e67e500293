import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { buildPack } from '@/lib/face/build-pack';
import type { Pack } from '@/shared/schemas/pack';
import {
  savePracticeResultsInput,
  practiceKindSchema,
  practicePayloadSchema,
  type PracticeResult,
} from '@/shared/schemas/practice';

/**
 * Lines to train the eye on, as their designers kerned them: faces of several builds, and words of our own choice in
 * which sides of every kind meet. In none of them is a gap outside its usual range
 * (`tests/lib/account/practice-lines.test.ts`).
 */
export const PRACTICE_LINES: readonly { face: string; text: string }[] = [
  { face: 'libre-baskerville-400', text: 'Evening ferry' },
  { face: 'lato-700', text: 'Open till dawn' },
  { face: 'source-serif-4-400', text: 'Morning market' },
  { face: 'montserrat-700', text: 'VALLEY RAILWAY' },
  { face: 'playfair-display-400', text: 'Quiet rooms' },
  { face: 'eb-garamond-500', text: 'Tavern Yard' },
  { face: 'fira-sans-500', text: 'ROPE LOCKER' },
  { face: 'work-sans-500', text: 'COOL HOTEL' },
  { face: 'oswald-500', text: 'NORTH DOCK' },
  { face: 'source-sans-3-600', text: 'TALLOW WORKS' },
  { face: 'crimson-pro-500', text: 'WATERFOWL' },
  { face: 'bitter-400', text: 'Wool and linen' },
];

let built: Promise<Pack[]> | undefined;

/** What the practice of the eye is made from, and the actor's own sittings so far, oldest first. */
export const getPractice = operation({
  name: 'get-practice',
  allow: 'account:own',
  input: z.strictObject({}),
  run: async ({ actor, data }) => {
    if (actor.kind !== 'person') throw notFound();
    const [packs, results] = await Promise.all([practicePacks(), data.practiceResults.own()]);
    return { personKey: actor.userId, packs, results: results.map(practiceResultView) };
  },
});

/** Built once per process; a failure is tried again at the next visit. */
function practicePacks(): Promise<Pack[]> {
  built ??= Promise.all(
    PRACTICE_LINES.map(({ face, text }) => buildPack({ kind: 'catalogue', key: face }, text)),
  ).catch((error: unknown) => {
    built = undefined;
    throw error;
  });
  return built;
}

/** Sittings that one person may have stored: several a day for years. */
export const MOST_RESULTS = 5_000;

/**
 * Stores results of the actor's own practice, in one transaction. Repeats are stored once. Result: the keys now stored.
 * @throws AppError CONFLICT where the person has as many as may be stored; approximate for requests at the same moment.
 */
export const savePracticeResults = operation({
  name: 'save-practice-results',
  allow: 'account:own',
  input: savePracticeResultsInput,
  run: async ({ data, now }, { results }) => {
    if ((await data.practiceResults.count()) + results.length > MOST_RESULTS)
      throw new AppError(
        'CONFLICT',
        `${MOST_RESULTS} sittings of yours are stored, and no more are taken. What you see in practice stays as it is.`,
      );
    await retryOnConflict(() => data.practiceResults.keep(results, now));
    return { kept: results.map(({ requestKey }) => requestKey) };
  },
});

type Row = { requestKey: string; kind: string; size: number; threshold: number; payload: string; at: Date };

/** A stored result as the browser gets it, checked on the way out. */
export function practiceResultView({ requestKey, kind, size, threshold, payload, at }: Row): PracticeResult {
  return {
    requestKey,
    at: at.toISOString(),
    kind: practiceKindSchema.parse(kind === '' ? 'any' : kind),
    size,
    fault: threshold,
    ...practicePayloadSchema.parse(JSON.parse(payload)),
  };
}
