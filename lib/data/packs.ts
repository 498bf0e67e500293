import { createHash } from 'node:crypto';
import type { Actor } from './actor';
import { canonicalJson } from '@/shared/text/canonical-json';
import { type Pack, packSchema } from '@/shared/schemas/pack';
import type { Db } from './client';
import { newId } from './ids';
import { isTaken } from './retry';

export type FaceFile = { bytes: Uint8Array; mime: string; name: string; licence: object };
export type FaceRow = {
  index: number;
  axes: Record<string, number>;
  family: string;
  style: string;
  weight: number;
  details: object;
  installed: boolean;
};

/**
 * Packs, faces and files by their content. They have no owner and hold nothing about people; which of them an actor can
 * read depends on the specimens that name them. Call outside of a transaction: a row that another request made first is
 * simply used.
 */
export const packData = (_actor: Actor, db: Db) => ({
  /** Keeps a face and its file; returns the face's id. */
  storeFace: async (file: FaceFile, face: FaceRow, now: Date): Promise<string> => {
    const assetSha = sha256(file.bytes);
    const key = { assetSha, index: face.index, axes: canonicalJson(face.axes) };
    const there = await db.face.findUnique({ where: { assetSha_index_axes: key }, select: { id: true } });
    if (there) return there.id;
    await unlessTaken(
      db.asset.create({
        data: {
          sha256: assetSha,
          bytes: new Uint8Array(file.bytes),
          mime: file.mime,
          name: file.name,
          licence: canonicalJson(file.licence),
          createdAt: now,
        },
      }),
    );
    const { family, style, weight, details, installed } = face;
    await unlessTaken(
      db.face.create({
        data: {
          id: newId(),
          ...key,
          family,
          style,
          weight,
          details: canonicalJson(details),
          installed,
          createdAt: now,
        },
      }),
    );
    return (await db.face.findUniqueOrThrow({ where: { assetSha_index_axes: key }, select: { id: true } })).id;
  },

  /** Keeps a pack; returns the hash that names it. */
  storePack: async (pack: Pack, faceId: string | null, now: Date): Promise<string> => {
    const payload = canonicalJson(packSchema.parse(pack));
    const sha = sha256(payload);
    if ((await db.pack.count({ where: { sha256: sha } })) === 0) {
      await unlessTaken(
        db.pack.create({
          data: {
            sha256: sha,
            format: `${pack.format}/${pack.version}`,
            kind: pack.kind,
            faceId,
            payload,
            createdAt: now,
          },
        }),
      );
    }
    return sha;
  },
});

const sha256 = (content: Uint8Array | string): string => createHash('sha256').update(content).digest('hex');

async function unlessTaken(insert: Promise<unknown>): Promise<void> {
  try {
    await insert;
  } catch (error) {
    if (!isTaken(error)) throw error;
  }
}
