import { operation } from '@/lib/access/operation';
import { previewChangeInput } from '@/shared/schemas/specimen';
import { planChange } from './plan-change';
import { lineOf } from '../rows/specimen';

/** What a change of a specimen will do, before it is done: which pairs stay, how many drafts move, which proofs keep the old version. */
export const previewSpecimenChange = operation({
  name: 'preview-specimen-change',
  allow: 'exercise:plan',
  input: previewChangeInput,
  run: async (context, { specimenId, ...typed }) => {
    const { before, after, pack, map, same } = await planChange(context, specimenId, typed);
    const [drafts, proofs, references] = await Promise.all([
      context.data.specimens.workDrafts(before.versionId),
      context.data.specimens.proofsOf(before.versionId),
      context.data.references.ofVersion(before.versionId),
    ]);
    const letters = lineOf(before.pack).letters;
    return {
      same,
      number: before.number,
      pack,
      size: after.size,
      ground: after.ground,
      kept: map.filter((place) => place !== null).length,
      lost: map.flatMap((place, pair) => (place === null ? [`${letters[pair]}${letters[pair + 1]}`] : [])),
      fresh: pack.letters.length - 1 - map.filter((place) => place !== null).length,
      drafts,
      proofs,
      references: references.length,
    };
  },
});
