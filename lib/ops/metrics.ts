import { subscribe } from 'node:diagnostics_channel';
import { existsSync, readFileSync } from 'node:fs';
import http, { type IncomingMessage, type ServerResponse } from 'node:http';
import { collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import { operationChannel, type OperationRun } from '@/lib/access/operation';
import { databaseCondition } from '@/lib/data/condition';
import { lastBackupFile } from './last-backup';

/** Seconds; most requests take between 10 ms and a second. */
const BUCKETS = [0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10];
const DATABASE_IN = 2_000;

/**
 * The figures of this process in the OpenMetrics format (openmetrics.io, 1.0): requests, operations (saves among them),
 * jobs that wait, the database and the age of the last backup. No figure is about a person: labels are methods, statuses
 * and the names of operations.
 */
export function processMetrics({ dataDirectory }: { dataDirectory: string }) {
  const registry = new Registry<'application/openmetrics-text; version=1.0.0; charset=utf-8'>();
  registry.setContentType(Registry.OPENMETRICS_CONTENT_TYPE);
  const registers = [registry];
  collectDefaultMetrics({ register: registry as unknown as Registry });

  const requests = new Histogram({
    name: 'kerncrit_request_seconds',
    help: 'Time from a request to the end of its answer, by method and status; streams are counted when they end.',
    labelNames: ['method', 'status'],
    buckets: BUCKETS,
    registers,
  });
  const operations = new Histogram({
    name: 'kerncrit_operation_seconds',
    help: 'Time that an operation took, by its name and by how it ended: done, or the code of its refusal.',
    labelNames: ['operation', 'outcome'],
    buckets: BUCKETS,
    registers,
  });
  const up = gauge('kerncrit_database_up', '1 while the database answers within two seconds, else 0.');
  const answer = gauge('kerncrit_database_answer_seconds', 'How long the database took to answer just now.');
  const waiting = gauge('kerncrit_jobs_waiting', 'Jobs (letters, notices) whose time has come and that are not done.');
  const oldest = gauge('kerncrit_oldest_job_seconds', 'How long the oldest of these has waited.');
  const backup = gauge(
    'kerncrit_last_backup_age_seconds',
    'Time since the backup command last succeeded; absent before.',
  );

  subscribe(operationChannel, (message) => {
    const { name, outcome, seconds } = message as OperationRun;
    operations.observe({ operation: name, outcome }, seconds);
  });

  return {
    /** Times one request until its answer has gone out, or its connection. */
    timeRequest: ({ method = '' }: Pick<IncomingMessage, 'method'>, response: ServerResponse): void => {
      const begun = performance.now();
      response.once('close', () =>
        requests.observe(
          { method: knownMethod(method), status: String(response.statusCode) },
          (performance.now() - begun) / 1000,
        ),
      );
    },
    /** All figures as text, those of the database and the backup read now. */
    text: async (now: Date): Promise<string> => {
      await readDatabase(now);
      readBackup(now);
      return registry.metrics();
    },
    contentType: registry.contentType,
  };

  function gauge(name: string, help: string) {
    return new Gauge({ name, help, registers });
  }

  async function readDatabase(now: Date): Promise<void> {
    try {
      const { answerSeconds, jobsWaiting, oldestJobDueAt } = await databaseCondition(now, DATABASE_IN);
      up.set(1);
      answer.set(answerSeconds);
      waiting.set(jobsWaiting);
      oldest.set(oldestJobDueAt === null ? 0 : (now.getTime() - oldestJobDueAt.getTime()) / 1000);
    } catch {
      up.set(0);
      for (const each of [answer, waiting, oldest]) each.remove();
    }
  }

  function readBackup(now: Date): void {
    const file = lastBackupFile(dataDirectory);
    const at = existsSync(file) ? Date.parse(readFileSync(file, 'utf8').trim()) : NaN;
    if (Number.isNaN(at)) backup.remove();
    else backup.set((now.getTime() - at) / 1000);
  }
}

/** A method that nobody knows must not become a label: a stranger could make as many as they like. */
const knownMethod = (method: string): string =>
  ['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS'].includes(method) ? method : 'other';

/** Serves the figures at `/metrics` of a port of their own, which isn't for the public. */
export function serveMetrics(
  metrics: Pick<ReturnType<typeof processMetrics>, 'text' | 'contentType'>,
  { host, port }: { host: string; port: number },
): http.Server {
  const server = http.createServer(async (request, response) => {
    if (request.url?.split('?')[0] !== '/metrics') {
      response.writeHead(404, { 'content-type': 'text/plain' }).end('The figures are at /metrics.\n');
      return;
    }
    response.writeHead(200, { 'content-type': metrics.contentType, 'cache-control': 'no-store' });
    response.end(await metrics.text(new Date()));
  });
  server.listen(port, host);
  server.unref();
  return server;
}
