import type { Actor } from './actor';
import { Prisma } from '@/prisma/generated/sqlite/client/client';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { Spacing } from '@/shared/schemas/spacing';
import type { Db } from './client';
import { newId } from './ids';
import { membersOf } from './scope';
import { executeBatch } from './batch';

export type DraftPurpose = 'work' | 'trial';
type Key = { memberId: string; specimenVersionId: string; purpose: DraftPurpose };
type CurrentDraft = { id: string; version: number; tracking: number; offsets: string };
type Change = { draftId: string; clientId: string; seq: number; baseVersion: number; spacing: Spacing };

/** Drafts: only ever the actor's own. */
export const draftData = (actor: Actor, db: Db) => ({
  byId: (id: string) => db.draft.findFirst({ where: { id, member: membersOf(actor) } }),

  /**
   * The present draft, for an autosave that was not stored: the same scope as `byId` (membersOf), written out. Both
   * databases run it.
   */
  current: async (id: string): Promise<CurrentDraft | null> => {
    if (actor.kind !== 'person' || actor.roles.length === 0) return null;
    const [row] = await db.$queryRaw<CurrentDraft[]>`
      SELECT d."id", d."version", d."tracking", d."offsets" FROM "Draft" d JOIN "Member" m ON m."id" = d."memberId"
      WHERE d."id" = ${id} AND m."userId" = ${actor.userId} AND m."removedAt" IS NULL AND m."role" IN (${Prisma.join([...actor.roles])})`;
    return row ? { ...row, version: Number(row.version), tracking: Number(row.tracking) } : null;
  },

  byKey: (key: Key) => db.draft.findFirst({ where: { ...key, member: membersOf(actor) } }),

  ofMember: (memberId: string, specimenVersionIds: readonly string[], purpose: DraftPurpose = 'work') =>
    db.draft.findMany({
      where: { memberId, purpose, specimenVersionId: { in: [...specimenVersionIds] }, member: membersOf(actor) },
    }),

  /** @throws P2002 when another request made it first: retry from outside. */
  create: (key: Key, spacing: Spacing, now: Date) =>
    db.draft.create({ data: { id: newId(), ...key, ...columns(spacing), updatedAt: now, version: 0 } }),

  /**
   * Stores one change on top of the version it was made on, and returns whether it did: not where the draft is not the
   * actor's, is at another version or has another number of gaps; `current` tells which. The change is inserted only if
   * all of that is right, and the row is updated only if the change was inserted, in one transaction.
   * @throws what `isTaken` knows when this change is already stored, or when another followed the same version first.
   */
  keep: async (change: Change, now: Date): Promise<boolean> => {
    if (actor.kind !== 'person' || actor.roles.length === 0) return false;
    const { tracking, offsets } = columns(change.spacing);
    const { draftId, clientId, seq, baseVersion } = change;
    const gaps = change.spacing.offsets.length;
    // Plain statements: this is the busiest write of all, and it reads nothing back. Gaps are counted by their commas,
    // which both databases can do. The casts, and the CASE with a column's type beside it, are for PostgreSQL, which
    // takes a bare value in a SELECT for text.
    const insert = Prisma.sql`
      INSERT INTO "DraftChange" ("id", "draftId", "clientId", "seq", "baseVersion", "tracking", "offsets", "receivedAt")
      SELECT ${newId()}, d."id", ${clientId}, CAST(${seq} AS INTEGER), d."version", CAST(${tracking} AS INTEGER), ${offsets}, CASE WHEN d."id" IS NULL THEN d."updatedAt" ELSE ${now} END
      FROM "Draft" d JOIN "Member" m ON m."id" = d."memberId"
      WHERE d."id" = ${draftId} AND d."version" = ${baseVersion}
        AND (d."offsets" = '[]') = (${gaps} = 0) AND LENGTH(d."offsets") - LENGTH(REPLACE(d."offsets", ',', '')) = ${Math.max(gaps - 1, 0)}
        AND m."userId" = ${actor.userId} AND m."removedAt" IS NULL AND m."role" IN (${Prisma.join([...actor.roles])})`;
    const update = Prisma.sql`
      UPDATE "Draft" SET "tracking" = ${tracking}, "offsets" = ${offsets}, "updatedAt" = ${now}, "version" = ${baseVersion + 1}
      WHERE "id" = ${draftId} AND "version" = ${baseVersion}
        AND EXISTS (SELECT 1 FROM "DraftChange" c WHERE c."draftId" = ${draftId} AND c."clientId" = ${clientId} AND c."seq" = ${seq} AND c."baseVersion" = ${baseVersion})`;
    const [, updated] = await executeBatch(db, [insert, update]);
    return updated === 1;
  },

  /** The stored change with this name, if there is one. */
  change: (draftId: string, clientId: string, seq: number) =>
    db.draftChange.findFirst({ where: { draftId, clientId, seq, draft: { member: membersOf(actor) } } }),

  changes: (draftId: string) =>
    db.draftChange.findMany({
      where: { draftId, draft: { member: membersOf(actor) } },
      orderBy: { baseVersion: 'asc' },
    }),
});

const columns = ({ tracking, offsets }: Spacing) => ({ tracking, offsets: canonicalJson(offsets) });
