import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { env } from '@/lib/env';
import { drawLines } from '@/lib/release/draw-lines';
import { readRelease } from '@/lib/release/read-release';
import { idSchema } from '@/shared/schemas/id';
import { webAnnotations, type OutgoingNote } from './web-annotations';

/** The notes that were released from a proof as W3C Web Annotations: to its student, and to those who teach. */
export const exportReleasedNotes = operation({
  name: 'export-released-notes',
  allow: 'release:see',
  input: z.strictObject({ proofId: idSchema }),
  run: async ({ data, actor, now }, { proofId }) => {
    const proof = await data.proofs.byId(proofId);
    if (!proof) throw notFound();
    const release = await readRelease(data, proofId, actor.kind === 'person' && proof.member.userId === actor.userId);
    if (!release) throw notFound();
    const packs = new Map(
      (await drawLines(data, proofId)).map(({ specimenVersionId, pack }) => [specimenVersionId, pack]),
    );
    const page = `${env().publicOrigin}/proofs/${proof.id}`;
    const notes = release.snapshot.lines.flatMap(({ specimenVersionId, notes: pinned }) =>
      pinned.flatMap((note): OutgoingNote[] => {
        const pack = packs.get(specimenVersionId);
        return pack
          ? [
              {
                ...note,
                entries: [...note.entries, ...(release.answers[note.id] ?? [])],
                specimenVersionId,
                pack,
                page,
                hideStudent: false,
              },
            ]
          : [];
      }),
    );
    const { number, exercise } = proof.round;
    return {
      annotations: webAnnotations({
        id: `${env().publicOrigin}/api/exports/released-notes/${proof.id}`,
        label: `Released notes: ${exercise.title}, round ${number}`,
        now,
        notes,
      }),
      name: `notes-round-${number}-proof-${proof.number}.jsonld`,
    };
  },
});
