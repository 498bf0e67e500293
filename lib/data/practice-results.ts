import type { Actor } from './actor';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { PracticeResult } from '@/shared/schemas/practice';
import { Prisma } from '@/prisma/generated/sqlite/client/client';
import { executeBatch } from './batch';
import type { Db } from './client';
import { newId } from './ids';
import { self } from './scope';

/** What the actor's own eye could see in practice. No function reads another person's, for any role. */
export const practiceResultData = (actor: Actor, db: Db) => ({
  own: () => db.practiceResult.findMany({ where: { user: self(actor) }, orderBy: [{ at: 'asc' }, { id: 'asc' }] }),

  count: () => db.practiceResult.count({ where: { user: self(actor) } }),

  /** Keeps results in one transaction, each once: one that is there already under its key stays as it is. */
  keep: async (results: readonly PracticeResult[], now: Date): Promise<void> => {
    const person = await db.user.findFirst({ where: self(actor), select: { id: true } });
    if (!person) return;
    // Both databases know ON CONFLICT DO NOTHING; Prisma offers it for PostgreSQL alone.
    const inserts = results.map(({ requestKey, at, kind, size, fault, task, trials, turns, unmoved }) => {
      const ended = new Date(at);
      const payload = canonicalJson({ task, trials, turns, unmoved });
      return Prisma.sql`
        INSERT INTO "PracticeResult" ("id", "userId", "requestKey", "kind", "size", "threshold", "payload", "at")
        VALUES (${newId()}, ${person.id}, ${requestKey}, ${kind === 'any' ? '' : kind}, ${size}, ${fault}, ${payload}, ${ended > now ? now : ended})
        ON CONFLICT ("userId", "requestKey") DO NOTHING`;
    });
    await executeBatch(db, inserts);
  },
});
