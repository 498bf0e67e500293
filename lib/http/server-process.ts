import http, { type IncomingMessage, type ServerResponse } from 'node:http';

/** After a signal to stop, requests may take this long, ms; what is still open then is cut off. */
const TIME_TO_STOP = 8_000;

/**
 * What the framework's own HTTP server lacks, for every server of this process. Called once, before it answers anybody.
 *
 * - Without a proxy before it (`trustedProxies` 0), X-Forwarded-For says what the sender wrote into it; the framework
 *   keeps that. Here the address of the connection itself takes its place.
 * - On a signal to stop, the framework waits for every open stream, without a limit. Here streams end at once and
 * browsers
 *   connect again by themselves; the process ends when the rest is answered, and after eight seconds in any case.
 */
export function prepareServerProcess({ trustedProxies }: { trustedProxies: number }): void {
  const streams = new Set<ServerResponse>();
  const emit = http.Server.prototype.emit;
  http.Server.prototype.emit = function (event: string | symbol, ...given: unknown[]): boolean {
    if (event === 'request') {
      const [request, response] = given as [IncomingMessage, ServerResponse];
      if (trustedProxies === 0) request.headers['x-forwarded-for'] = request.socket.remoteAddress ?? 'unknown';
      streams.add(response);
      response.once('close', () => streams.delete(response));
    }
    return (emit as (...all: unknown[]) => boolean).call(this, event, ...given);
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => {
      for (const response of streams) if (isStream(response)) response.socket?.destroy();
      setTimeout(() => process.exit(0), TIME_TO_STOP).unref();
    });
  // Whoever started this process holds a channel to it: when that closes, they are gone, and nobody would stop it.
  if (process.send) process.once('disconnect', () => process.kill(process.pid, 'SIGTERM'));
}

const isStream = (response: ServerResponse): boolean =>
  String(response.getHeader('content-type') ?? '').startsWith('text/event-stream');
