import { providerOf } from '@/lib/data/open';
import { env } from '@/lib/env';
import { localBus, type Bus, type Topic } from './bus';
import { postgresqlBus } from './postgresql-bus';

/** On globalThis: pages and route handlers are bundled apart and must still share it. */
const globals = globalThis as typeof globalThis & { kerncritBus?: Bus };

/** The bus of this process: in memory with SQLite, which one process serves; across processes with PostgreSQL. */
export function bus(): Bus {
  const { databaseUrl } = env();
  globals.kerncritBus ??= providerOf(databaseUrl) === 'sqlite' ? localBus() : postgresqlBus(databaseUrl);
  return globals.kerncritBus;
}

/** Says that something has changed, after it was committed. Nothing that was done fails because of this. */
export function announce(topic: Topic): void {
  bus().publish(topic);
}
