import { fork, type ChildProcess } from 'node:child_process';
import { join } from 'node:path';
import { FaceError, type FaceErrorCode } from '../face-error';
import { LIMITS } from '../limits';
import { projectRoot } from '../project-root';
import type { Job, JobReply, JobResult } from './jobs';

/** Processes at once: one line is quick, and a hostile file must not stop everyone else's. */
const WORKERS = 2;
/** Time that a process may take to start, ms, on a busy machine. */
const STARTING = 60_000;

type Waiting = { job: Job; time: number; resolve(value: unknown): void; reject(error: Error): void };
type Worker = {
  child: ChildProcess;
  ready: Promise<void>;
  current: { id: number; waiting: Waiting; timer: NodeJS.Timeout } | null;
};
type Pool = { workers: Worker[]; queue: Waiting[]; lastId: number };

/** One pool per server process, also when a development server loads this module again. */
const shared = globalThis as typeof globalThis & { kerncritFacePool?: Pool };
const pool = (shared.kerncritFacePool ??= { workers: [], queue: [], lastId: 0 });

/**
 * Has a face file opened in a process of its own, within `time` ms and LIMITS.wasmMegabytes.
 * Throws FaceError: what the job found wrong, `cut-off` when it took too long or the process died, `busy` when too many
 * wait.
 */
export function inFaceProcess<J extends Job>(job: J, time: number = LIMITS.jobTime): Promise<JobResult<J>> {
  if (pool.queue.length >= LIMITS.waiting)
    return Promise.reject(
      new FaceError(
        'busy',
        `${pool.queue.length} lines are waiting to be read from their faces. Try again in a minute.`,
      ),
    );
  return new Promise((resolve, reject) => {
    pool.queue.push({ job, time, resolve: resolve as (value: unknown) => void, reject });
    serve();
  });
}

/** Starts the processes, so that the first line does not wait for them (about half a second). */
export async function startFaceProcesses(): Promise<void> {
  while (pool.workers.length < WORKERS) pool.workers.push(startWorker());
  await Promise.all(
    pool.workers.map(async (worker) => {
      keepAlive(worker.child, true);
      await worker.ready;
      keepAlive(worker.child, worker.current !== null);
    }),
  );
}

function serve(): void {
  while (pool.queue.length > 0) {
    let worker = pool.workers.find((one) => one.current === null);
    if (!worker && pool.workers.length < WORKERS) pool.workers.push((worker = startWorker()));
    if (!worker) return;
    const waiting = pool.queue.shift();
    if (waiting) give(worker, waiting);
  }
}

function give(worker: Worker, waiting: Waiting): void {
  const id = ++pool.lastId;
  const stopAfter = (time: number) =>
    setTimeout(
      () =>
        endWorker(
          worker,
          new FaceError(
            'cut-off',
            `Reading this face took longer than ${time / 1000} seconds and was stopped. Use a smaller or sounder file.`,
          ),
        ),
      time,
    );
  worker.current = { id, waiting, timer: stopAfter(STARTING) };
  // A new process needs a moment to start, which is not the face's fault.
  void worker.ready.then(() => {
    if (worker.current?.id !== id) return;
    clearTimeout(worker.current.timer);
    worker.current.timer = stopAfter(waiting.time);
    worker.child.send({ id, job: waiting.job });
  });
  keepAlive(worker.child, true);
}

function startWorker(): Worker {
  const root = projectRoot();
  const child = fork(/* turbopackIgnore: true */ join(root, 'lib/face/processes/worker.ts'), [], {
    cwd: root,
    // Nothing of the server's environment: the process that opens strangers' files knows no secrets.
    env: { NODE_ENV: 'production' },
    execArgv: ['--import', 'tsx', `--max-old-space-size=${LIMITS.heapMegabytes}`],
    serialization: 'advanced',
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
  });
  let complaint = '';
  child.stderr?.on('data', (chunk: Buffer) => {
    complaint = (complaint + chunk.toString()).slice(-2_000);
  });
  const worker: Worker = {
    child,
    current: null,
    ready: new Promise((resolve) => child.on('message', (message: { ready?: true }) => message.ready && resolve())),
  };
  child.on('message', (message: JobReply | { ready: true }) => {
    if ('id' in message) finish(worker, message);
  });
  child.on('exit', (code, signal) =>
    endWorker(
      worker,
      new FaceError(
        'cut-off',
        `Reading this face ended the process that opens faces (${signal ?? code}${/out of memory/i.test(complaint) ? ', out of memory' : ''}). Use a smaller or sounder file.`,
      ),
    ),
  );
  child.on('error', () =>
    endWorker(
      worker,
      new FaceError(
        'cut-off',
        'The process that opens faces could not be started. Tell the person who runs this server.',
      ),
    ),
  );
  keepAlive(child, false);
  return worker;
}

function finish(worker: Worker, reply: JobReply): void {
  if (worker.current?.id !== reply.id) return;
  const { waiting, timer } = worker.current;
  clearTimeout(timer);
  worker.current = null;
  keepAlive(worker.child, false);
  if ('value' in reply) waiting.resolve(reply.value);
  else waiting.reject(new FaceError(reply.code as FaceErrorCode, reply.message));
  if (reply.retire) endWorker(worker, null);
  serve();
}

/** Ends a process and, where it had a job, answers it with the error. */
function endWorker(worker: Worker, error: FaceError | null): void {
  if (!pool.workers.includes(worker)) return;
  pool.workers = pool.workers.filter((one) => one !== worker);
  worker.child.kill('SIGKILL');
  if (worker.current) {
    clearTimeout(worker.current.timer);
    worker.current.waiting.reject(error ?? new FaceError('cut-off', 'The process that opens faces was ended.'));
    worker.current = null;
  }
  serve();
}

/** A command may end while the processes are idle, and waits while one works. */
function keepAlive(child: ChildProcess, working: boolean): void {
  const turn = working ? 'ref' : 'unref';
  child[turn]();
  child.channel?.[turn]();
  (child.stderr as unknown as { ref(): void; unref(): void } | null)?.[turn]();
}
