import { copyFileSync } from 'node:fs';
import type { Caller } from '@/lib/access/caller';
import { exchangeDatabase } from '@/lib/data/client';
import { newId } from '@/lib/data/ids';
import { openDatabase, type Database } from '@/lib/data/open';
import { freshDatabase } from '../fixtures/databases';
import { everyone, type Who } from './row';
import { fillWorld, type Ids } from './fill-world';
import { addNeighbour, type Neighbour } from './neighbour';

export type World = {
  readonly ids: Ids;
  readonly neighbour: Neighbour;
  readonly callers: Readonly<Record<Who, Caller>>;
  readonly now: Date;
};
export type OpenWorld = World & { reset(): Promise<void>; close(): Promise<void> };

/** The instant at which everything is tried: round 1 is open and released to `student`, round 2 is open. */
const now = new Date('2027-03-08T10:00:00Z');

/** A course with all roles and work of all kinds in it. `reset` puts it back to how it began. */
export async function openWorld(): Promise<OpenWorld> {
  const template = await freshDatabase('sqlite');
  const filling = openDatabase(template);
  const ids = await fillWorld(filling, now);
  const neighbour = await addNeighbour(filling, ids, now);
  await filling.$disconnect();
  const callers = Object.fromEntries(everyone.map((who) => [who, callerFor(who, ids)])) as Record<Who, Caller>;
  let db: Database | undefined;
  const close = async () => {
    exchangeDatabase(undefined);
    await db?.$disconnect();
  };
  return {
    ids,
    neighbour,
    callers,
    now,
    close,
    reset: async () => {
      await close();
      const copy = template.replace(/[^/]+$/, `w${newId()}.db`);
      copyFileSync(template.replace('file:', ''), copy.replace('file:', ''));
      db = openDatabase(copy);
      exchangeDatabase(db);
    },
  };
}

function callerFor(who: Who, ids: Ids): Caller {
  if (who === 'visitor') return { kind: 'visitor', address: '192.0.2.1' };
  return { kind: 'person', userId: ids.users[who], sessionId: ids.sessions[who], address: '192.0.2.1' };
}
