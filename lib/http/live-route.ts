import type { $ZodType } from 'zod/v4/core';
import type { Caller } from '@/lib/access/caller';
import { AppError } from '@/lib/access/errors';
import type { Operation } from '@/lib/access/operation';
import { bus } from '@/lib/live/announce';
import type { Topic } from '@/lib/live/bus';
import { errorResponse } from './error-response';
import { eventStream } from './event-stream';
import { callerOfSession, readCallerSource } from './caller';

type Options<Result, State> = {
  read: (params: Record<string, string>) => unknown;
  /** What concerns the page, from what the operation gave at first. */
  topics: (result: Result) => Topic[];
  /** The present state, asked again at each change, as the same caller, if they are still who they were. */
  again: (caller: Caller, input: unknown, first: Result) => Promise<State>;
};

/**
 * A route handler that goes on telling: the operation decides whether the caller may listen at all, as in any other
 * route.
 */
export function liveRoute<Result, State, Schema extends $ZodType>(
  operation: Operation<Result, Schema>,
  { read, topics, again }: Options<Result, State>,
) {
  return async (request: Request, context: { params: Promise<Record<string, string>> }): Promise<Response> => {
    try {
      const input = read(await context.params);
      const source = await readCallerSource();
      const result = await operation(await callerOfSession(source), input);
      return eventStream({
        signal: request.signal,
        listen: (hear) => bus().listen(topics(result), hear),
        read: () => presentOrOver(async () => again(await callerOfSession(source), input, result)),
      });
    } catch (error) {
      return errorResponse(error);
    }
  };
}

/** What is closed, or whose session has ended, is over. */
async function presentOrOver(ask: () => Promise<unknown>): Promise<string | null> {
  try {
    return JSON.stringify(await ask());
  } catch (error) {
    if (error instanceof AppError && (error.code === 'NOT_FOUND' || error.code === 'SIGNED_OUT')) return null;
    throw error;
  }
}
