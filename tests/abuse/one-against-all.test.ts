import { channel } from 'node:diagnostics_channel';
import { Agent, createServer, request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, expect, it, vi } from 'vitest';
import { MOST_RESULTS, savePracticeResults } from '@/lib/account/practice-results';
import { FairShare, type Allowance } from '@/lib/http/fair-share';
import { ADDRESS, knownCookieChannel, makeGate, PERSON } from '@/lib/http/gate';
import { describeOnBothDatabases } from '../fixtures/databases';
import { addPerson } from '../fixtures/people';

/** One person, or one address, asks so much of the server that everybody else would wait. */
const allowance: Allowance = {
  perSecond: 50,
  burst: 200,
  rest: 3,
  atOnce: { alone: 6, beside: 2 },
  waiting: { most: 30, patience: 5_000 },
  streams: 3,
};

/** A server that works on one request after the other, each for 5 ms, under a clock that is moved by hand. */
function simulate(of: Allowance = allowance) {
  vi.useFakeTimers();
  const begun = Date.now();
  let worked = 0;
  const share = new FairShare(
    () => Date.now() - begun,
    () => worked,
  );
  const inside: (() => void)[] = [];
  const counts = new Map<string, { served: number; refused: number }>();
  const countOf = (key: string) => counts.get(key) ?? counts.set(key, { served: 0, refused: 0 }).get(key)!;
  return {
    countOf,
    ask: (key: string) =>
      share.ask(key, of, {
        begin: (leave) => {
          countOf(key).served += 1;
          inside.push(leave);
        },
        refuse: () => (countOf(key).refused += 1),
      }),
    pass: (milliseconds: number) => {
      for (let passed = 0; passed < milliseconds; passed += 5) {
        const leave = inside.shift();
        if (leave) worked += 5;
        vi.advanceTimersByTime(5);
        leave?.();
      }
    },
  };
}

afterEach(() => void vi.useRealTimers());

it('lets somebody alone on the server have all of it', () => {
  const { ask, pass, countOf } = simulate();
  for (let turn = 0; turn < 500; turn += 1) {
    ask('person one');
    pass(5);
  }
  expect(countOf('person one')).toEqual({ served: 500, refused: 0 });
});

it('gives who asks without end their share of it while others are there, and refuses the rest', () => {
  const { ask, pass, countOf } = simulate();
  // Ten seconds in which somebody asks twenty times whenever anybody else saves once.
  for (let turn = 0; turn < 100; turn += 1) {
    ask(`student ${turn % 50}`);
    for (let times = 0; times < 20; times += 1) ask('hostile');
    pass(100);
  }
  const { served, refused } = countOf('hostile');
  // 200 ms at first and 50 a second, over ten seconds, at 5 ms each: 140.
  expect(served).toBeGreaterThan(100);
  expect(served).toBeLessThan(150);
  expect(refused).toBeGreaterThan(1_500);
  for (let student = 0; student < 50; student += 1)
    expect(countOf(`student ${student}`)).toEqual({ served: 2, refused: 0 });
});

it('never refuses a class of 120 at work behind one address', () => {
  const { ask, pass, countOf } = simulate(PERSON);
  for (let second = 0; second < 120; second += 1) {
    for (let student = 0; student < 120; student += 1) {
      // A save every other second, and a page with what it fetches ahead every minute.
      if ((student + second) % 2 === 0) ask(`person ${student}`);
      if ((student + second) % 60 === 0) for (let times = 0; times < 8; times += 1) ask(`person ${student}`);
    }
    pass(1_000);
  }
  pass(1_000);
  for (let student = 0; student < 120; student += 1)
    expect(countOf(`person ${student}`)).toEqual({ served: 76, refused: 0 });
});

it('never refuses the phones of a class of 120 behind one address, which open a wall and point', () => {
  const { ask, pass, countOf } = simulate(ADDRESS);
  for (let second = 0; second < 120; second += 1) {
    ask('the instructor');
    // All open the page, its data and its stream within twenty seconds; then each points every ten.
    const phones = second < 20 ? 18 : 12;
    for (let phone = 0; phone < phones; phone += 1) ask('the room');
    pass(1_000);
  }
  pass(10_000);
  expect(countOf('the room')).toEqual({ served: 20 * 18 + 100 * 12, refused: 0 });
});

const servers: Server[] = [];
afterEach(() => servers.splice(0).forEach((server) => server.closeAllConnections()));

/** A server that works 10 ms on each request, behind the gate. */
async function serve() {
  let seen = 0;
  const gate = makeGate(0);
  const server = createServer((asked, response) =>
    gate(asked, response, () => {
      seen += 1;
      setTimeout(() => {
        if (asked.url?.endsWith('/live')) response.writeHead(200, { 'content-type': 'text/event-stream' }).write('\n');
        else response.end('done');
      }, 10);
    }),
  );
  servers.push(server);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return { port: (server.address() as AddressInfo).port, seen: () => seen };
}

type Answer = { status: number; retryAfter: string | undefined; text: string };
const agent = new Agent({ keepAlive: true, maxSockets: 2_000 });

function askServer(port: number, { path = '/', cookie = '', accept = '*/*' } = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const headers = { accept, cookie: cookie === '' ? '' : `next-auth.session-token=${cookie}` };
    request({ host: '127.0.0.1', port, path, headers, agent }, (answer) => {
      const { statusCode = 0, headers: got } = answer;
      let text = '';
      const give = () => resolve({ status: statusCode, retryAfter: got['retry-after'], text });
      answer
        .on('data', (chunk) => (text += String(chunk)))
        .on('end', give)
        .on('error', () => undefined);
      if (String(got['content-type']).startsWith('text/event-stream')) give();
    })
      .on('error', reject)
      .end();
  });
}

const known = (cookie: string, userId: string) => channel(knownCookieChannel).publish({ cookie, userId });

it('answers what is over budget before the framework sees it: 429, words, and how long to wait', async () => {
  const { port, seen } = await serve();
  known('hostile-cookie', 'hostile');
  known('other-cookie', 'other');
  let over = false;
  const others = (async () => {
    while (!over) {
      expect((await askServer(port, { cookie: 'other-cookie' })).status).toBe(200);
      await wait(200);
    }
  })();
  const answers = await Promise.all(
    Array.from({ length: 200 }, () => askServer(port, { cookie: 'hostile-cookie', accept: 'application/json' })),
  );
  over = true;
  await others;
  const refused = answers.filter(({ status }) => status === 429);
  expect(refused.length).toBeGreaterThan(100);
  expect(seen()).toBeLessThan(100);
  expect(Number(refused[0]!.retryAfter)).toBeGreaterThanOrEqual(1);
  const { error } = JSON.parse(refused[0]!.text) as { error: { code: string; message: string } };
  expect(error.code).toBe('TOO_MANY');
  expect(error.message).toMatch(/Nothing was changed or lost\. Wait \d+ seconds/);
}, 60_000);

it('does not take a made-up cookie for a person of its own', async () => {
  const { port } = await serve();
  known('other-cookie', 'other');
  const answers = await Promise.all(
    Array.from({ length: 900 }, async (_, place) => {
      if (place % 100 === 0) await askServer(port, { cookie: 'other-cookie' });
      return askServer(port, { cookie: `made-up-${place}`, accept: 'text/html' });
    }),
  );
  const refused = answers.filter(({ status }) => status === 429);
  expect(refused.length).toBeGreaterThan(100);
  expect(refused[0]!.text).toContain('<h1>Please wait a little</h1>');
}, 60_000);

it('keeps one person to a few streams and one address to those of a class, and others get theirs', async () => {
  const { port } = await serve();
  known('hostile-cookie', 'hostile');
  known('other-cookie', 'other');
  const answers = await Promise.all(
    Array.from({ length: 60 }, () => askServer(port, { cookie: 'hostile-cookie', path: '/api/w/abc/live' })),
  );
  expect(answers.filter(({ status }) => status === 200)).toHaveLength(24);
  expect(answers.filter(({ status }) => status === 429)).toHaveLength(36);
  expect((await askServer(port, { cookie: 'other-cookie', path: '/api/w/abc/live' })).status).toBe(200);
  // The phones of three classes behind one address.
  const room = await Promise.all(Array.from({ length: 360 }, () => askServer(port, { path: '/api/w/abc/live' })));
  expect(room.every(({ status }) => status === 200)).toBe(true);
}, 60_000);

describeOnBothDatabases('somebody who fills the database', (suite) => {
  const sitting = (requestKey: string) => ({
    requestKey,
    at: '2026-03-01T09:00:00.000Z',
    task: 'which gap' as const,
    kind: 'round' as const,
    size: 48,
    fault: 21,
    trials: 41,
    turns: [20],
    unmoved: null,
  });

  it('gets no further than the sittings that one person may have', async () => {
    const { caller, id: userId } = await addPerson(suite.db);
    const rows = Array.from({ length: MOST_RESULTS - 2 }, (_, place) => ({
      id: `${userId}-${place}`,
      userId,
      requestKey: `earlier-${place}`,
      kind: '',
      size: 48,
      threshold: 20,
      at: new Date('2026-01-01T00:00:00Z'),
    }));
    await suite.db.practiceResult.createMany({ data: rows });
    await savePracticeResults(caller, { results: [sitting('next-to-last'), sitting('the-last-one')] });
    await expect(savePracticeResults(caller, { results: [sitting('one-too-many')] })).rejects.toMatchObject({
      code: 'CONFLICT',
    });
    expect(await suite.db.practiceResult.count({ where: { userId } })).toBe(MOST_RESULTS);
  }, 60_000);

  it('stores a request in one transaction: all of it or nothing', async () => {
    const { caller, id: userId } = await addPerson(suite.db);
    const results = Array.from({ length: 100 }, (_, place) => sitting(`sitting-${place}`));
    await Promise.all(Array.from({ length: 20 }, () => savePracticeResults(caller, { results })));
    expect(await suite.db.practiceResult.count({ where: { userId } })).toBe(100);
  }, 60_000);
});
