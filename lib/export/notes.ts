import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { env } from '@/lib/env';
import { drawLines, findRelease } from '@/lib/release/released';
import { roundContext } from '@/lib/review/context';
import { noteView } from '@/lib/review/notes';
import { queueOf } from '@/lib/review/queue';
import { blindStill } from '@/lib/review/second-marker';
import { roundByNumber } from '@/shared/schemas/critique';
import { exportAddress } from '@/shared/schemas/export';
import { idSchema } from '@/shared/schemas/id';
import { type OutgoingNote, webAnnotations } from './web-annotations';

/** The notes that were released from a proof as W3C Web Annotations: to its student, and to those who teach. */
export const exportReleasedNotes = operation({
  name: 'export-released-notes',
  allow: 'release:see',
  input: z.strictObject({ proofId: idSchema }),
  run: async ({ data, actor, now }, { proofId }) => {
    const proof = await data.proofs.byId(proofId);
    if (!proof) throw notFound();
    const release = await findRelease(data, proofId, actor.kind === 'person' && proof.member.userId === actor.userId);
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
        id: `${env().publicOrigin}${exportAddress('released-notes', proof.id)}`,
        label: `Released notes: ${exercise.title}, round ${number}`,
        now,
        notes,
      }),
      name: `notes-round-${number}-proof-${proof.number}.jsonld`,
    };
  },
});

/** All notes of a round, released or not, as W3C Web Annotations; for those who teach. Hidden students stay hidden. */
export const exportRoundNotes = operation({
  name: 'export-round-notes',
  allow: 'class:see',
  input: roundByNumber,
  run: async ({ data, now }, { exerciseId, roundNumber }) => {
    const context = await roundContext(data, exerciseId, roundNumber);
    const { round, exercise, course } = context;
    const queue = new Map((await queueOf(data, context, now)).map((entry) => [entry.proofId, entry]));
    const proofIds = [...queue.keys()];
    const blind = await blindStill(data, round, proofIds);
    // While two mark a proof without each other, neither reads the other's notes by this way either.
    const rows = await data.notes.ofProofs(proofIds.filter((id) => !blind.has(id)));
    const lines = await data.exports.linesOf([...new Set(rows.map(({ proofItem }) => proofItem.specimenVersionId))]);
    const notes = rows.flatMap((row): OutgoingNote[] => {
      const entry = queue.get(row.proofItem.proofId);
      const line = lines.get(row.proofItem.specimenVersionId);
      if (!entry || !line) return [];
      return [
        {
          ...noteView(row, entry.hidden),
          pack: line.pack,
          hideStudent: entry.hidden,
          page: `${env().publicOrigin}/critique/${entry.token}/${line.specimenId}`,
        },
      ];
    });
    await data.audit.record({ courseId: course.id, verb: 'notes exported', subject: `round:${round.id}` }, now);
    return {
      annotations: webAnnotations({
        id: `${env().publicOrigin}${exportAddress('notes', exercise.id, { round: String(round.number) })}`,
        label: `Notes: ${exercise.title}, round ${round.number}`,
        now,
        notes,
      }),
      name: `notes-round-${round.number}.jsonld`,
    };
  },
});
