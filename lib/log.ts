import pino, { type DestinationStream, type Logger } from 'pino';
import { env } from './env';

/**
 * The server's log: a line of JSON each, on standard error. It holds no text that people wrote, no address of theirs and
 * no code of a link: of an error its kind, message, code and places in the code, of a request its method, the first part
 * of its path, its status and time.
 * @param level the least weight that is written: `error`, or `info` for a line a request as well
 */
export const makeLog = (level: string, to: DestinationStream = pino.destination({ dest: 2, sync: true })): Logger =>
  pino(
    {
      level,
      base: undefined,
      timestamp: pino.stdTimeFunctions.isoTime,
      formatters: { level: (label) => ({ level: label }) },
      serializers: { error: plainError },
    },
    to,
  );

let made: Logger | undefined;
const log = (): Logger => (made ??= makeLog(levelOfSettings()));

/** Makes the server's log this one, or its own again: for tests. */
export function exchangeLog(other: Logger | undefined): void {
  made = other;
}

/** Wrong settings must be able to be logged as well. */
function levelOfSettings(): string {
  try {
    return env().logLevel;
  } catch {
    return 'error';
  }
}

/** Writes an unexpected error to the server's log; never to a person. */
export function logError(error: unknown): void {
  log().error({ error });
}

export type RequestLine = { method: string; path: string; status: number; milliseconds: number };

/** Writes a request to the log where it is wanted: codes and ids come after the first part of a path, and stay out. */
export function logRequest({ path, milliseconds, ...rest }: RequestLine, to: Logger = log()): void {
  const [first = ''] = (path.split('?')[0] ?? '').split('/').filter((part) => part !== '');
  to.info({ request: { ...rest, path: `/${first}`, milliseconds: Math.round(milliseconds) } });
}

type Told = { type: string; message: string; code?: string; stack?: string; cause?: Told };

function plainError(error: unknown): Told {
  if (!(error instanceof Error)) return { type: typeof error, message: String(error) };
  const { code } = error as { code?: unknown };
  return {
    type: error.name,
    message: error.message,
    ...(typeof code === 'string' ? { code } : {}),
    ...(error.stack ? { stack: error.stack } : {}),
    ...(error.cause === undefined ? {} : { cause: plainError(error.cause) }),
  };
}
