import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { countedProofs } from '@/lib/review/counted';
import { writeNote } from '@/lib/review/notes';
import { keepAsNoteSchema } from '@/shared/schemas/wall';
import { linesOfWall } from './lines-of-wall';
import { wallInHand } from './wall-in-hand';

/** Keeps what was said about a gap as a note on its proof: a note like any other, which goes out with the release. */
export const keepAsNote = operation({
  name: 'keep-as-note',
  allow: 'critique:write',
  input: keepAsNoteSchema,
  run: async ({ data, caller, now }, { wallId, line, pair, body, requestKey }): Promise<{ counts: boolean }> => {
    const { wall, settings } = await wallInHand(data, wallId, now);
    const meant = (await linesOfWall(data, wall, settings)).find((one) => one.line.key === line);
    if (!meant) throw notFound();
    const { proof, specimenVersionId } = meant.item;
    await writeNote(
      caller,
      { proofId: proof.id, specimenVersionId, requestKey, fromPair: pair, toPair: pair, body, suggestion: null },
      { now },
    );
    const counted = await countedProofs(data, wall.round);
    // The wall shows what was sent last; what counts may be an earlier one, and then the note waits there until somebody picks this proof.
    return { counts: counted.some((one) => one.proof?.id === proof.id) };
  },
});
