import type { $ZodType } from 'zod/v4/core';
import { AppError } from '@/lib/access/errors';
import type { Operation } from '@/lib/access/operation';
import { currentCaller } from './caller';
import { errorResponse } from './error-response';

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

const safe = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * Refuses a write that another site started: Sec-Fetch-Site (W3C Fetch Metadata) where the browser sends it, else
 * Origin against Host.
 */
function refuseCrossSite(request: Request): void {
  if (safe.has(request.method)) return;
  const site = request.headers.get('sec-fetch-site');
  if (site === 'same-origin' || site === 'none') return;
  if (site === null && originMatches(request)) return;
  throw new AppError(
    'INVALID',
    'This request came from another site, so nothing was changed. Open Kerncrit itself and try again there.',
  );
}

function originMatches(request: Request): boolean {
  const origin = request.headers.get('origin');
  if (origin === null) return false;
  const host = request.headers.get('x-forwarded-host') ?? request.headers.get('host');
  return URL.canParse(origin) && new URL(origin).host === host;
}

/** A body of JSON, at most `most` bytes, as an object. @throws AppError TOO_LARGE or INVALID. */
export async function readJson(request: Request, most = 64 * 1024): Promise<Record<string, unknown>> {
  const text = await readText(request, most);
  try {
    const value: unknown = JSON.parse(text);
    if (value !== null && typeof value === 'object' && !Array.isArray(value)) return value as Record<string, unknown>;
  } catch {
    // Reported below, like any other body that is not an object.
  }
  throw new AppError('INVALID', `Expected a JSON object, got “${text.slice(0, 40)}”.`);
}

async function readText(request: Request, most: number): Promise<string> {
  const reader = request.body?.getReader();
  if (!reader) return '';
  const chunks: Uint8Array[] = [];
  let size = 0;
  for (let chunk = await reader.read(); !chunk.done; chunk = await reader.read()) {
    size += chunk.value.byteLength;
    if (size > most) {
      await reader.cancel();
      throw new AppError('TOO_LARGE', `This is more than the ${most} bytes that are taken at once.`);
    }
    chunks.push(chunk.value);
  }
  return Buffer.concat(chunks).toString('utf8');
}
