import { AppError } from '@/lib/access/errors';

/**
 * Runs tasks in the order they come, at most `running` at once.
 * @throws AppError UNAVAILABLE when `waiting` tasks are in line already.
 */
export function atMost({ running, waiting }: { running: number; waiting: number }) {
  let active = 0;
  const line: (() => void)[] = [];

  return async function inTurn<T>(task: () => Promise<T>): Promise<T> {
    if (active >= running) {
      if (line.length >= waiting) throw tooBusy();
      await new Promise<void>((start) => line.push(start));
    } else {
      active += 1;
    }
    try {
      return await task();
    } finally {
      // The place is handed on, not given back, so that nobody who comes now gets in before those who wait.
      const next = line.shift();
      if (next) next();
      else active -= 1;
    }
  };
}

const tooBusy = () =>
  new AppError('UNAVAILABLE', 'Very many people are signing in at this moment. Please try again in a few seconds.', {
    retryAfterSeconds: 5,
  });
