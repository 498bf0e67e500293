// One attack in a process of its own: reads what to ask from the first line it is given, asks for each once, says that it
// is ready, and from the second line on asks until its input ends. Then it prints one line: how it was answered.
import { Agent, request } from 'node:http';
import { createInterface } from 'node:readline';
import type { AttackAsk } from './attacks';

let over = false;
let turn = 0;
const counts = new Map<string, number>();
const agent = new Agent({ keepAlive: true });

void attack();

async function attack(): Promise<void> {
  const lines = createInterface(process.stdin)[Symbol.asyncIterator]();
  const { origin, connections, asks } = JSON.parse(String((await lines.next()).value)) as {
    origin: string;
    connections: number;
    asks: AttackAsk[];
  };
  for (const ask of asks) await once(origin, ask, (turn += 1));
  process.stdout.write('ready\n');
  await lines.next();
  for (let place = 0; place < connections; place += 1) void askWithoutEnd(origin, asks);
  await lines.next();
  over = true;
  const words = [...counts].sort().map(([status, count]) => `${count} answered ${status}`);
  process.stdout.write(`${words.join(', ') || 'nothing answered'}\n`, () => process.exit(0));
}

async function askWithoutEnd(origin: string, asks: AttackAsk[]): Promise<void> {
  while (!over) {
    const number = (turn += 1);
    const status = await once(origin, asks[number % asks.length]!, number).catch(() => 'with a closed connection');
    counts.set(String(status), (counts.get(String(status)) ?? 0) + 1);
  }
}

function once(origin: string, { method, path, cookie, body }: AttackAsk, number: number): Promise<number> {
  const own = (text: string) => text.replaceAll('*', String(number)).replaceAll('#', String(number).padStart(22, '0'));
  const text = body === undefined ? undefined : own(body);
  const headers = {
    ...(cookie === undefined ? {} : { cookie }),
    ...(text === undefined
      ? {}
      : {
          'content-type': 'application/json',
          'content-length': Buffer.byteLength(text),
          'sec-fetch-site': 'same-origin',
        }),
  };
  return new Promise((resolve, reject) => {
    request(`${origin}${own(path)}`, { method, agent, headers }, (answer) => {
      answer.resume().on('end', () => resolve(answer.statusCode ?? 0));
    })
      .on('error', reject)
      .end(text);
  });
}
