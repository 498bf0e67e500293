import type { Caller } from '@/lib/access/caller';
import { AppError } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import type { Limit } from '@/lib/data/rate-limits';

/** Counts one try. @throws AppError TOO_MANY, the same for accounts that exist and those that don't. */
export async function countTry(data: ScopedData, limit: Limit, key: string): Promise<void> {
  const taken = await data.rateLimits.take(limit, key);
  if (taken.allowed) return;
  const { retryAfterSeconds } = taken;
  throw new AppError(
    'TOO_MANY',
    `There were too many tries. Please wait ${inWords(retryAfterSeconds)} and try again.`,
    { retryAfterSeconds },
  );
}

/** The network address of a request; the server's own commands have none. */
export const addressOf = (caller: Caller): string => (caller.kind === 'system' ? 'this server' : caller.address);

function inWords(seconds: number): string {
  if (seconds < 50) return `${seconds} ${seconds === 1 ? 'second' : 'seconds'}`;
  if (seconds <= 60) return 'a minute';
  return `${Math.ceil(seconds / 60)} minutes`;
}
