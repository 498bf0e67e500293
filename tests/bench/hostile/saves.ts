import { Agent, request } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';
import type { Filled } from '../class/fill';
import { percentile } from '../class/load';

/** Times in ms, from when a save was due to its answer. */
export type Saves = { p50: number; p95: number; most: number; answers: number; refused: number };

/**
 * A class at work: each student changes one gap after another and saves on average every two seconds, at moments of
 * their own (exponential pauses), over a connection of their own. Returns what makes them save for some seconds.
 * Refused saves are counted, and sent again after the wait they are told.
 */
export function saveAsAClass(origin: string, students: Filled['students'], pairs: number) {
  const versions = students.map(() => 0);
  const agent = new Agent({ keepAlive: true });
  return async (seconds: number): Promise<Saves> => {
    const times: number[] = [];
    let refused = 0;
    const end = performance.now() + seconds * 1000;
    await Promise.all(
      students.map(async ({ cookie, draftIds }, place) => {
        for (;;) {
          await wait(-Math.log(1 - Math.random()) * 2_000);
          if (performance.now() > end) return;
          const version = versions[place]!;
          const offsets = Array.from({ length: pairs }, (_, pair) => (version + pair) % 40);
          const body = { baseVersion: version, clientId: 'bench', seq: version + 1, spacing: { tracking: 0, offsets } };
          const begun = performance.now();
          for (;;) {
            const { status, retryAfter } = await put(`${origin}/api/drafts/${draftIds[0]}`, agent, cookie, body).catch(
              () =>
                // A connection that rested was closed just then; a save sent again counts once.
                put(`${origin}/api/drafts/${draftIds[0]}`, agent, cookie, body),
            );
            if (status === 200) break;
            if (status !== 429) throw new Error(`A save was answered ${status}.`);
            refused += 1;
            await wait(retryAfter * 1000);
          }
          times.push(performance.now() - begun);
          versions[place] = version + 1;
        }
      }),
    );
    const sorted = times.sort((one, other) => one - other);
    return {
      p50: percentile(sorted, 0.5),
      p95: percentile(sorted, 0.95),
      most: sorted.at(-1) ?? Number.NaN,
      answers: sorted.length,
      refused,
    };
  };
}

function put(address: string, agent: Agent, cookie: string, body: unknown) {
  return new Promise<{ status: number; retryAfter: number }>((resolve, reject) => {
    const text = JSON.stringify(body);
    const headers = {
      cookie,
      'content-type': 'application/json',
      'content-length': Buffer.byteLength(text),
      'sec-fetch-site': 'same-origin',
    };
    request(address, { method: 'PUT', agent, headers }, (answer) => {
      answer
        .resume()
        .on('end', () =>
          resolve({ status: answer.statusCode ?? 0, retryAfter: Number(answer.headers['retry-after'] ?? 1) }),
        );
    })
      .on('error', reject)
      .end(text);
  });
}
