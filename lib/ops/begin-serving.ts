import type { IncomingMessage, ServerResponse } from 'node:http';
import { env } from '@/lib/env';
import { makeGate } from '@/lib/http/gate';
import { prepareServerProcess } from '@/lib/http/server-process';
import { logRequest } from '@/lib/log';
import { answersHealth } from './health';
import { processMetrics, serveMetrics } from './metrics';
import { holdAsOnlyServer } from './one-server';

const globals = globalThis as typeof globalThis & { kerncritServer?: () => void };

/**
 * What a process that serves people does first: it makes sure that it is alone on a SQLite database, and ends with
 * words where it is not. Only the first call does anything: a development server calls this again when a file changed.
 */
export function beginServing(): void {
  if (globals.kerncritServer) return;
  try {
    // Referenced here: a lock without a reference would be released.
    globals.kerncritServer = holdAsOnlyServer(env().databaseUrl);
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  }
  const { trustedProxies, metricsPort, host, dataDirectory } = env();
  const metrics = metricsPort === null ? null : processMetrics({ dataDirectory });
  if (metrics && metricsPort !== null) serveMetrics(metrics, { host, port: metricsPort });
  const gate = makeGate(trustedProxies);
  prepareServerProcess({
    trustedProxies,
    onRequest: (request, response, { stopping, proceed }) => {
      if (answersHealth(request, response, { stopping })) return;
      metrics?.timeRequest(request, response);
      logWhenAnswered(request, response);
      gate(request, response, proceed);
    },
  });
}

function logWhenAnswered({ method = '', url = '' }: IncomingMessage, response: ServerResponse): void {
  const begun = performance.now();
  response.once('close', () =>
    logRequest({ method, path: url, status: response.statusCode, milliseconds: performance.now() - begun }),
  );
}
