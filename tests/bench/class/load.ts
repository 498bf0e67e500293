import { Agent, request } from 'node:http';

export type Ask = { path: string; method?: 'GET' | 'PUT' | 'POST'; cookie: string; body?: unknown };
export type Load = { perSecond: number; p50: number; p95: number; answers: number };

/**
 * Sends `next()` after `next()` over ten connections for some seconds, and counts the answers.
 * @throws Error at the first answer that is not 200: a figure over refusals would mean nothing.
 */
export async function load(
  origin: string,
  next: (connection: number) => Ask,
  seconds: number,
  connections = 10,
): Promise<Load> {
  const agent = new Agent({ keepAlive: true, maxSockets: connections });
  const times: number[] = [];
  const begun = performance.now();
  const end = begun + seconds * 1000;
  await Promise.all(
    Array.from({ length: connections }, async (_, connection) => {
      while (performance.now() < end) {
        const sent = performance.now();
        await ask(origin, agent, next(connection));
        times.push(performance.now() - sent);
      }
    }),
  );
  agent.destroy();
  const sorted = times.sort((one, other) => one - other);
  return {
    perSecond: times.length / ((performance.now() - begun) / 1000),
    p50: percentile(sorted, 0.5),
    p95: percentile(sorted, 0.95),
    answers: times.length,
  };
}

/** The least of the sorted values that at least this share of them does not exceed (nearest rank). NaN of nothing. */
export const percentile = (sorted: readonly number[], share: number): number =>
  sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;

/** @returns the body's length */
export function ask(
  origin: string,
  agent: Agent | undefined,
  { path, method = 'GET', cookie, body }: Ask,
): Promise<number> {
  return new Promise((resolve, reject) => {
    const text = body === undefined ? undefined : JSON.stringify(body);
    const headers = {
      cookie,
      ...(text === undefined
        ? {}
        : {
            'content-type': 'application/json',
            'content-length': Buffer.byteLength(text),
            'sec-fetch-site': 'same-origin',
          }),
    };
    const sent = request(`${origin}${path}`, { method, agent, headers }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () => {
        const said = Buffer.concat(chunks);
        if (response.statusCode === 200) resolve(said.length);
        else reject(new Error(`${method} ${path} answered ${response.statusCode}: ${said.toString().slice(0, 300)}`));
      });
    });
    sent.on('error', reject);
    sent.end(text);
  });
}
