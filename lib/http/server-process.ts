import http, { type IncomingMessage, type ServerResponse } from 'node:http';

/** After a signal to stop, requests may take this long, ms; what is still open then is cut off. */
const TIME_TO_STOP = 8_000;

type Options = {
  trustedProxies: number;
  /** Meets each request before the framework, which gets it by `proceed`, at once or later, or not at all. */
  onRequest: (
    request: IncomingMessage,
    response: ServerResponse,
    state: { stopping: boolean; proceed: () => void },
  ) => void;
};

/**
 * What the framework's own HTTP server lacks, for every server of this process. Called once, before the first request.
 *
 * - Without a proxy in front of it (`trustedProxies` 0), X-Forwarded-For is whatever the sender wrote into it, and the
 *   framework keeps that. Here it is replaced by the address of the connection itself.
 * - On a signal to stop, the framework waits for every open stream, without a limit. Here streams end at once and
 *   browsers reconnect by themselves; the process ends when the rest is answered, and after eight seconds in any case.
 */
export function prepareServerProcess({ trustedProxies, onRequest }: Options): void {
  const streams = new Set<ServerResponse>();
  let stopping = false;
  const emit = http.Server.prototype.emit;
  http.Server.prototype.emit = function (event: string | symbol, ...given: unknown[]): boolean {
    if (event === 'request') {
      const [request, response] = given as [IncomingMessage, ServerResponse];
      if (trustedProxies === 0) request.headers['x-forwarded-for'] = request.socket.remoteAddress ?? 'unknown';
      streams.add(response);
      response.once('close', () => streams.delete(response));
      const proceed = () => void (emit as (...all: unknown[]) => boolean).call(this, event, ...given);
      onRequest(request, response, { stopping, proceed });
      return true;
    }
    return (emit as (...all: unknown[]) => boolean).call(this, event, ...given);
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => {
      stopping = true;
      for (const response of streams) if (isStream(response)) response.socket?.destroy();
      setTimeout(() => process.exit(0), TIME_TO_STOP).unref();
    });
  // The process that started this one holds a channel to it: when it closes, that process is gone, and nothing else
  // would stop this one.
  if (process.send) process.once('disconnect', () => process.kill(process.pid, 'SIGTERM'));
}

const isStream = (response: ServerResponse): boolean =>
  String(response.getHeader('content-type') ?? '').startsWith('text/event-stream');
