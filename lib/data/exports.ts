import * as z from 'zod/mini';
import type { Actor } from '@/lib/access/actor';
import { packSchema, type Pack } from '@/shared/schemas/pack';
import type { Db } from './client';
import { specimenVersionsOf } from './exercise-scope';
import { coursesOf } from './scope';

const licenceSchema = z.object({ name: z._default(z.string(), ''), url: z._default(z.string(), ''), attribution: z._default(z.string(), '') });

/** What a file that leaves the server must carry with it. */
export const exportData = (actor: Actor, db: Db) => ({
  /** The licence of the face that a pack was made from, in one line; for packs of the actor's own courses. */
  licenceOf: async (packSha: string): Promise<string> => {
    const pack = await db.pack.findFirst({
      where: { sha256: packSha, versions: { some: { specimen: { exercise: { course: coursesOf(actor) } } } } },
      select: { asset: { select: { licence: true } }, face: { select: { asset: { select: { licence: true } } } } },
    });
    const text = pack?.face?.asset.licence ?? pack?.asset?.licence;
    if (!text) return 'not recorded; ask whoever brought the face into the course';
    const { name, url, attribution } = z.parse(licenceSchema, JSON.parse(text));
    return [name || 'not named', attribution, url].filter((part) => part !== '').join(', ');
  },

  /** The packs of specimen versions of the actor's own courses, by version. */
  linesOf: async (versionIds: readonly string[]): Promise<Map<string, { specimenId: string; pack: Pack }>> => {
    const rows = await db.specimenVersion.findMany({
      where: { AND: [{ id: { in: [...versionIds] } }, specimenVersionsOf(actor)] },
      select: { id: true, specimenId: true, pack: { select: { payload: true } } },
    });
    return new Map(rows.map(({ id, specimenId, pack }) => [id, { specimenId, pack: z.parse(packSchema, JSON.parse(pack.payload)) }]));
  },
});
