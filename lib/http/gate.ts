import { channel } from 'node:diagnostics_channel';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { clientAddress } from './client-address';
import { type Allowance, FairShare } from './fair-share';

/**
 * A session cookie that turned out to be a person's is told on this channel of `node:diagnostics_channel`: the
 * framework keeps modules of its own, and the gate stands before it.
 */
export const knownCookieChannel = 'kerncrit:known-cookie';
export type KnownCookie = { cookie: string; userId: string };

/** Somebody signed in. A page, its files and what it fetches ahead take about 150 ms of server time, a save 5. */
export const PERSON: Allowance = {
  perSecond: 40,
  burst: 600,
  rest: 8,
  atOnce: { alone: 6, beside: 1 },
  waiting: { most: 60, patience: 8_000 },
  streams: 24,
};
/** All who are not signed in behind one address: a class of 120 opens a wall on its phones there, and signs in. */
export const ADDRESS: Allowance = {
  perSecond: 80,
  burst: 1_500,
  rest: 6,
  atOnce: { alone: 12, beside: 2 },
  waiting: { most: 600, patience: 10_000 },
  streams: 400,
};

/** A refusal takes its time, ms: who asks again at once would otherwise keep the server busy with being refused. */
const REFUSED_AFTER = 1_000;
/** Refusals that may be held back for so long; beyond them the connection is closed. */
const MOST_REFUSALS = 2_000;
const MOST_COOKIES = 50_000;

type Gate = (request: IncomingMessage, response: ServerResponse, proceed: () => void) => void;

/**
 * Stands before the framework: each request goes on by `proceed` when it is its party's turn, or is answered with 429
 * (RFC 6585, 4), words and Retry-After. A person is known by their session cookie once the framework has recognised it;
 * whatever else comes counts for its network address.
 */
export function makeGate(trustedProxies: number, share = new FairShare()): Gate {
  const people = new Map<string, string>();
  channel(knownCookieChannel).subscribe((message) => {
    const { cookie, userId } = message as KnownCookie;
    people.delete(cookie);
    people.set(cookie, userId);
    if (people.size > MOST_COOKIES) people.delete(people.keys().next().value!);
  });
  let refusals = 0;

  function refuse(request: IncomingMessage, response: ServerResponse, seconds: number): void {
    if (refusals >= MOST_REFUSALS) {
      request.socket.destroy();
      return;
    }
    refusals += 1;
    setTimeout(() => {
      refusals -= 1;
      if (!response.destroyed) answerTooMany(request, response, seconds);
    }, REFUSED_AFTER);
  }

  return (request, response, proceed) => {
    const userId = people.get(sessionCookieOf(request.headers.cookie ?? '') ?? '');
    const [key, allowance] =
      userId === undefined ? [`at ${addressOf(request, trustedProxies)}`, ADDRESS] : [`person ${userId}`, PERSON];
    if (/\/live$/.test((request.url ?? '').split('?')[0]!)) {
      const end = share.openStream(key, allowance);
      if (end === null) return refuse(request, response, 30);
      response.once('close', end);
    }
    share.ask(key, allowance, {
      begin: (leave) => {
        // Whoever has gone meanwhile needs no answer.
        if (response.destroyed || request.socket.destroyed) return leave();
        // The framework adds about as many of its own as Node takes for a leak.
        response.setMaxListeners(20);
        response.once('close', leave);
        leaveWhenStreaming(response, leave);
        proceed();
      },
      refuse: (seconds) => refuse(request, response, seconds),
    });
  };
}

/** A stream has been worked on once it begins: from then on it mostly rests. */
function leaveWhenStreaming(response: ServerResponse, leave: () => void): void {
  const writeHead = response.writeHead;
  response.writeHead = function (this: ServerResponse, ...given: unknown[]) {
    const result = (writeHead as (...all: unknown[]) => ServerResponse).apply(this, given);
    const own = given.find((one) => typeof one === 'object' && one !== null) as Record<string, unknown> | undefined;
    const type = String(response.getHeader('content-type') ?? own?.['content-type'] ?? '');
    if (type.startsWith('text/event-stream')) leave();
    return result;
  } as typeof writeHead;
}

const addressOf = ({ headers }: IncomingMessage, trustedProxies: number): string =>
  clientAddress(
    {
      get: (name) => {
        const value = headers[name];
        return Array.isArray(value) ? value.join(',') : (value ?? null);
      },
    },
    trustedProxies,
  );

/** The session cookie as it was sent, or null. */
export const sessionCookieOf = (cookies: string): string | null =>
  /(?:^|;\s*)(?:__Secure-|__Host-)?next-auth\.session-token=([^;]+)/.exec(cookies)?.[1] ?? null;

function answerTooMany(request: IncomingMessage, response: ServerResponse, seconds: number): void {
  const message = `More was asked of the server at once than one person’s share while others work. Nothing was changed or lost. Wait ${seconds} seconds and try again.`;
  const page = String(request.headers.accept ?? '').includes('text/html');
  response.writeHead(429, {
    'content-type': page ? 'text/html; charset=utf-8' : 'application/json',
    'cache-control': 'no-store',
    'retry-after': String(seconds),
    // The rest of a body that nobody reads would be taken for the next request.
    connection: 'close',
  });
  response.end(
    page
      ? `<!doctype html><html lang="en"><meta charset="utf-8"><title>Please wait a little</title>\n<h1>Please wait a little</h1>\n<p>${message}</p>\n`
      : JSON.stringify({ error: { code: 'TOO_MANY', message, fields: {} } }),
  );
}
