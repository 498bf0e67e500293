import type { IncomingMessage, ServerResponse } from 'node:http';
import { databaseCondition } from '@/lib/data/condition';
import { logError } from '@/lib/log';

/** A proxy asks every few seconds and must not wait longer for an answer than that. */
const DATABASE_IN = 2_000;

/**
 * Answers what a proxy or a supervisor asks, before the framework: `/healthz` says that the process runs, `/readyz` that
 * its database answers too and that it isn't stopping. 200 or 503, one word of text.
 * @returns whether the request was one of them
 */
export function answersHealth(
  request: Pick<IncomingMessage, 'method' | 'url'>,
  response: Pick<ServerResponse, 'writeHead' | 'end'>,
  { stopping, now = new Date() }: { stopping: boolean; now?: Date },
): boolean {
  if (request.method !== 'GET' && request.method !== 'HEAD') return false;
  const [path] = (request.url ?? '').split('?');
  if (path === '/healthz') {
    answer(response, 200, 'running');
    return true;
  }
  if (path !== '/readyz') return false;
  if (stopping) {
    answer(response, 503, 'stopping');
    return true;
  }
  databaseCondition(now, DATABASE_IN).then(
    () => answer(response, 200, 'ready'),
    (error: unknown) => {
      logError(error);
      answer(response, 503, 'the database does not answer');
    },
  );
  return true;
}

function answer(response: Pick<ServerResponse, 'writeHead' | 'end'>, status: number, words: string): void {
  response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' });
  response.end(`${words}\n`);
}
