import type { Actor } from '@/lib/access/actor';
import { Prisma } from '@/prisma/generated/sqlite/client/client';
import { canonicalJson } from '@/shared/json/canonical';
import type { Spacing } from '@/shared/schemas/spacing';
import type { Db } from './client';
import { newId } from './ids';
import { membersOf } from './scope';

export type DraftPurpose = 'work' | 'practice';
type Key = { memberId: string; specimenVersionId: string; purpose: DraftPurpose };
type Standing = { id: string; version: number; tracking: number; offsets: string };
type Change = { draftId: string; clientId: string; seq: number; baseVersion: number; spacing: Spacing };

/** Drafts: only ever the actor's own. */
export const draftData = (actor: Actor, db: Db) => ({
  byId: (id: string) => db.draft.findFirst({ where: { id, member: membersOf(actor) } }),

  /**
   * What autosave asks before each write, so it is one plain statement: the same scope as `byId` (membersOf), spelled
   * out. Both databases read it alike.
   */
  standing: async (id: string): Promise<Standing | null> => {
    if (actor.kind !== 'person' || actor.roles.length === 0) return null;
    const [row] = await db.$queryRaw<Standing[]>`
      SELECT d."id", d."version", d."tracking", d."offsets" FROM "Draft" d JOIN "Member" m ON m."id" = d."memberId"
      WHERE d."id" = ${id} AND m."userId" = ${actor.userId} AND m."removedAt" IS NULL AND m."role" IN (${Prisma.join([...actor.roles])})`;
    return row ? { ...row, version: Number(row.version), tracking: Number(row.tracking) } : null;
  },

  byKey: (key: Key) => db.draft.findFirst({ where: { ...key, member: membersOf(actor) } }),

  ofMember: (memberId: string, specimenVersionIds: readonly string[]) =>
    db.draft.findMany({
      where: { memberId, purpose: 'work', specimenVersionId: { in: [...specimenVersionIds] }, member: membersOf(actor) },
    }),

  /** @throws P2002 when another request made it first: retry from outside. */
  create: (key: Key, spacing: Spacing, now: Date) =>
    db.draft.create({ data: { id: newId(), ...key, ...columns(spacing), updatedAt: now, version: 0 } }),

  /**
   * Keeps one change on top of the version it was made on: row and change in one transaction. Takes the row that
   * `standing` gave, which is the actor's own; the update asks for nothing but its version, so that it fails only together
   * with the unique key of the change.
   * @throws P2002 when this change is already kept, or when another followed the same version first.
   */
  keep: async (draft: { id: string }, change: Change, now: Date): Promise<void> => {
    const { tracking, offsets } = columns(change.spacing);
    const { clientId, seq, baseVersion } = change;
    // Plain statements: this is the busiest write there is, and nothing of it is read back.
    const update = db.$executeRaw`
      UPDATE "Draft" SET "tracking" = ${tracking}, "offsets" = ${offsets}, "updatedAt" = ${now}, "version" = ${baseVersion + 1}
      WHERE "id" = ${draft.id} AND "version" = ${baseVersion}`;
    const insert = db.$executeRaw`
      INSERT INTO "DraftChange" ("id", "draftId", "clientId", "seq", "baseVersion", "tracking", "offsets", "receivedAt")
      VALUES (${newId()}, ${draft.id}, ${clientId}, ${seq}, ${baseVersion}, ${tracking}, ${offsets}, ${now})`;
    if ('$transaction' in db) await db.$transaction([update, insert]);
    else await update.then(() => insert);
  },

  /** The kept change with this name, where there is one. */
  change: (draftId: string, clientId: string, seq: number) =>
    db.draftChange.findFirst({ where: { draftId, clientId, seq, draft: { member: membersOf(actor) } } }),

  changes: (draftId: string) =>
    db.draftChange.findMany({ where: { draftId, draft: { member: membersOf(actor) } }, orderBy: { baseVersion: 'asc' } }),
});

const columns = ({ tracking, offsets }: Spacing) => ({ tracking, offsets: canonicalJson(offsets) });
