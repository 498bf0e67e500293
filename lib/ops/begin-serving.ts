import { env } from '@/lib/env';
import { prepareServerProcess } from '@/lib/http/server-process';
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
  prepareServerProcess(env());
}
