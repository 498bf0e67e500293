import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { spacingOf } from '@/lib/draft/spacing-of';
import { packSchema } from '@/shared/schemas/pack';
import { settingOf } from './measure-proof-line';
import { latenessOf, roundFor } from './member-rounds';
import { lateWords } from './receipt';

/**
 * A proof as it was sent: the receipt and each line. To its sender, and to the staff of the course.
 * What was measured is not in it; what was released comes with the release.
 */
export const seeProof = operation({
  name: 'see-proof',
  allow: 'proof:see',
  input: z.strictObject({ proofId: z.string().check(z.minLength(1), z.maxLength(64)) }),
  run: async ({ data, actor }, { proofId }) => {
    const proof = await data.proofs.byId(proofId);
    if (!proof) throw notFound();
    const { exercise } = proof.round;
    const extendedTo = proof.member.extensions.find(({ roundId }) => roundId === proof.roundId)?.dueAt ?? null;
    const round = roundFor(proof.round, {
      publishedAt: exercise.publishedAt,
      accommodations: proof.member.accommodations,
      extendedTo,
    });
    return {
      id: proof.id,
      mine: actor.kind === 'person' && proof.member.userId === actor.userId,
      number: proof.number,
      round: { number: proof.round.number, title: proof.round.title },
      receivedAt: proof.receivedAt.toISOString(),
      late: lateWords(latenessOf(round, proof.receivedAt)),
      reasoning: proof.reasoning,
      zoom: proof.zoom,
      exercise: { id: exercise.id, title: exercise.title },
      course: { id: exercise.course.id, title: exercise.course.title, timeZone: exercise.course.timeZone },
      lines: proof.items
        .toSorted((one, other) => one.specimenVersion.specimen.position - other.specimenVersion.specimen.position)
        .map(({ id, specimenVersion: version, ...item }) => ({
          itemId: id,
          specimenId: version.specimen.id,
          specimenVersionId: version.id,
          text: version.text,
          pack: z.parse(packSchema, JSON.parse(version.pack.payload)),
          spacing: spacingOf(item),
          ...settingOf(version),
        })),
    };
  },
});
