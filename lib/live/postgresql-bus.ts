import { randomBytes } from 'node:crypto';
import { Client } from 'pg';
import { postgresqlFields } from '@/lib/data/postgresql';
import { once } from '@/lib/once';
import { localBus, type Bus, type Topic } from './bus';

const channel = 'kerncrit_live';
const firstWait = 250;
const longestWait = 5_000;

/**
 * Across processes by LISTEN and NOTIFY, on one connection of its own that is made again when it breaks. Listeners here
 * are notified at once, those elsewhere by PostgreSQL. After a break all listeners are notified, since anything may
 * have changed. It needs its own database session: a pooler that shares connections between statements drops LISTEN.
 */
export function postgresqlBus(url: string): Bus {
  const here = localBus();
  const me = randomBytes(6).toString('hex');
  const unsent = new Set<Topic>();
  let client: Client | null = null;
  let closed = false;
  let cutOff = false;
  let waiting = firstWait;
  let timer: NodeJS.Timeout | undefined;

  void connect();
  return {
    publish(topic) {
      here.publish(topic);
      unsent.add(topic);
      flush();
    },
    listen: here.listen,
    async close() {
      closed = true;
      clearTimeout(timer);
      await here.close();
      await client?.end().catch(() => undefined);
    },
  };

  async function connect(): Promise<void> {
    const { max: _pool, ...fields } = postgresqlFields(url);
    const next = new Client({ ...fields, keepAlive: true, application_name: 'kerncrit live' });
    const lost = once(() => again(next));
    next.on('error', lost);
    next.on('end', lost);
    next.on('notification', ({ payload = '' }) => hear(payload));
    try {
      await next.connect();
      await next.query(`LISTEN ${channel}`);
    } catch {
      return lost();
    }
    if (closed) return void next.end().catch(() => undefined);
    // A command that sends a proof must still be able to end.
    (next as Client & { unref(): void }).unref();
    client = next;
    waiting = firstWait;
    if (cutOff) here.tellAll();
    flush();
  }

  function again(broken: Client): void {
    if (client === broken) client = null;
    void broken.end().catch(() => undefined);
    if (closed) return;
    cutOff = true;
    timer = setTimeout(() => void connect(), waiting).unref();
    waiting = Math.min(2 * waiting, longestWait);
  }

  function hear(payload: string): void {
    const [from, ...topic] = payload.split('|');
    if (from !== me) here.publish(topic.join('|') as Topic);
  }

  /** What could not be sent while the connection was lost is sent when it is back. */
  function flush(): void {
    const by = client;
    if (!by) return;
    for (const topic of unsent) {
      unsent.delete(topic);
      by.query('SELECT pg_notify($1, $2)', [channel, `${me}|${topic}`]).catch(() => {
        unsent.add(topic);
      });
    }
  }
}
