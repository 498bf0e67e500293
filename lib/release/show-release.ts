import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { type NoteEntryView } from '@/shared/schemas/note';
import { idSchema } from '@/shared/schemas/id';
import type { ReleaseSnapshot } from '@/shared/schemas/release';
import { changesSince, type LineSince } from './changes-since';
import { readRelease } from './read-release';

export type ShownRelease = {
  number: number;
  releasedAt: string;
  snapshot: ReleaseSnapshot;
  /** What was answered since in the threads of released notes, by note. */
  answers: Record<string, NoteEntryView[]>;
  /** How the lines stand in the student's present drafts; empty for staff. */
  since: LineSince[];
  mayAnswer: boolean;
};

/**
 * What was released from a proof: to its student, and to staff as the student sees it. Null before there is a release.
 * Nothing is read here but the release itself and the threads of the notes in it.
 */
export const showRelease = operation({
  name: 'show-release',
  allow: 'release:see',
  input: z.strictObject({ proofId: idSchema }),
  run: async (
    { data, actor },
    { proofId },
  ): Promise<{ release: ShownRelease | null; elsewhere: { proofId: string } | null }> => {
    const proof = await data.proofs.byId(proofId);
    if (!proof) throw notFound();
    const own = actor.kind === 'person' && proof.member.userId === actor.userId;
    const [release, elsewhere] = await Promise.all([
      readRelease(data, proofId, own),
      own ? data.releases.ownFromAnother(proofId) : null,
    ]);
    if (!release) return { release: null, elsewhere: elsewhere && { proofId: elsewhere.proofId } };
    const { number, releasedAt, snapshot, answers } = release;
    return {
      release: {
        number,
        releasedAt: releasedAt.toISOString(),
        snapshot,
        answers,
        since: own ? await changesSince(data, proof, snapshot) : [],
        mayAnswer: own,
      },
      elsewhere: elsewhere && elsewhere.number > number ? { proofId: elsewhere.proofId } : null,
    };
  },
});
