import { RateLimiterPrisma, RateLimiterRes } from 'rate-limiter-flexible';
import type { Actor } from './actor';
import { database, type Db } from './client';

/** How often something may be tried: `tries` in `minutes`. */
export const limits = {
  /**
   * Wrong passwords for one account from one address, whether or not there is such an account: the wait grows with the
   * tries. Others who guess at the account from elsewhere do not make its owner wait.
   */
  'sign-in-seconds': { tries: 4, minutes: 0.25 },
  'sign-in-minutes': { tries: 8, minutes: 5 },
  'sign-in-hour': { tries: 16, minutes: 60 },
  /**
   * The same from all addresses together; does not hold where the account was signed in to before (`sign-in-known`).
   */
  'sign-in-account': { tries: 100, minutes: 15 },
  'sign-in-known': { tries: 1_000_000, minutes: 90 * 24 * 60 },
  /** The password of a signed-in person, asked for once more. */
  'own-password': { tries: 8, minutes: 15 },
  /** Loose: a class sits behind one address. */
  'sign-in-address': { tries: 300, minutes: 15 },
  'reset-account': { tries: 3, minutes: 60 },
  'reset-address': { tries: 60, minutes: 60 },
  'link-address': { tries: 120, minutes: 15 },
  /** A room of phones behind one address opens a wall; in the end only codes that lead to no wall are counted. */
  'wall-address': { tries: 600, minutes: 15 },
  /** Each tap of a room of phones. */
  'point-address': { tries: 12_000, minutes: 15 },
  /** Phones that point at one wall for the first time: two classes of 120 in one room, and not all that a wall takes. */
  'phone-address': { tries: 240, minutes: 60 },
  'new-account-address': { tries: 200, minutes: 60 },
} as const;

export type Limit = keyof typeof limits;
type Taken = { allowed: true } | { allowed: false; retryAfterSeconds: number };

/**
 * Counted in the database, so that several processes share one count and a restart forgets nothing. Each take is one
 * increment there, so that tries at the same moment are all counted.
 */
export const rateLimitData = (_actor: Actor, _db: Db) => ({
  take: async (limit: Limit, key: string): Promise<Taken> => {
    try {
      await limiter(limit).consume(key);
      return { allowed: true };
    } catch (refused) {
      if (!(refused instanceof RateLimiterRes)) throw refused;
      return { allowed: false, retryAfterSeconds: Math.max(1, Math.ceil(refused.msBeforeNext / 1000)) };
    }
  },

  /** Whether anything was counted. */
  has: async (limit: Limit, key: string): Promise<boolean> => (await limiter(limit).get(key)) !== null,

  /** Gives one try back: it was not a failure after all. */
  giveBack: async (limit: Limit, key: string): Promise<void> => void (await limiter(limit).reward(key)),

  forget: async (limit: Limit, key: string): Promise<void> => void (await limiter(limit).delete(key)),
});

const limiters = new WeakMap<object, Map<Limit, RateLimiterPrisma>>();

/**
 * Always on the database itself and never inside a transaction: a try stays counted when what it was for is rolled
 * back.
 */
function limiter(limit: Limit): RateLimiterPrisma {
  const storeClient = database();
  const made = limiters.get(storeClient) ?? new Map<Limit, RateLimiterPrisma>();
  limiters.set(storeClient, made);
  const { tries, minutes } = limits[limit];
  const cleared =
    made.get(limit) ??
    new RateLimiterPrisma({
      storeClient,
      tableName: 'rateLimit',
      keyPrefix: limit,
      points: tries,
      duration: minutes * 60,
    });
  made.set(limit, cleared);
  return cleared;
}
