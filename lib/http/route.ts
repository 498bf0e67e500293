import type { $ZodType } from 'zod/v4/core';
import type { Operation } from '@/lib/access/operation';
import { currentCaller } from './caller';
import { errorResponse } from './error-response';
import { refuseCrossSite } from './same-origin';

type RouteContext = { params: Promise<Record<string, string>> };
type Options<Result> = {
  /** The operation's input, from address and body; checked by the operation itself. */
  read: (request: Request, params: Record<string, string>) => Promise<unknown> | unknown;
  respond?: (result: Result) => Response;
};

/** A route handler: reads the input, calls one operation, answers. Writes from another site are refused. */
export function route<Result, Schema extends $ZodType>(
  operation: Operation<Result, Schema>,
  { read, respond = (result) => json(result) }: Options<Result>,
) {
  return async (request: Request, context: RouteContext): Promise<Response> => {
    try {
      refuseCrossSite(request);
      const input = await read(request, await context.params);
      return respond(await operation(await currentCaller(), input));
    } catch (error) {
      return errorResponse(error);
    }
  };
}

/** Answers with JSON that no cache keeps. */
export const json = (result: unknown, status = 200): Response =>
  Response.json(result ?? null, { status, headers: { 'cache-control': 'no-store' } });
