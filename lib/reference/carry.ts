import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { faceName, lineOf, specimenView, versionView } from '@/lib/rows/specimen';
import { moveByMap, pairMap } from '@/shared/exercise/pair-map';
import { inPixels } from '@/shared/exercise/sizes';
import { measureLine } from '@/shared/scoring';
import type { Pack } from '@/shared/schemas/pack';
import { carryReferenceInput } from '@/shared/schemas/reference';
import type { Ground, Size, Spacing } from '@/shared/schemas/spacing';
import { referenceView } from '@/lib/rows/reference';

/**
 * Carries a reference to other specimens of the exercise as a start of the actor's own. Each counts only once its
 * author has opened it on the bench. Where the actor has one already it is left alone, unless `replace`.
 */
export const carryReference = operation({
  name: 'carry-reference',
  allow: 'reference:set',
  input: carryReferenceInput,
  run: async ({ data, now }, { referenceId, specimenIds, replace }) => {
    const row = await data.references.find(referenceId);
    if (!row) throw notFound();
    const from = versionView(row.specimenVersion);
    const reference = referenceView(row);
    const exerciseId = row.specimenVersion.specimen.exerciseId;
    const exercise = await data.exercises.find(exerciseId);
    const member = exercise && (await data.exercises.myMember(exercise.courseId));
    if (!member) throw notFound();
    const all = await data.specimens.ofExercise(exerciseId);
    const carried: string[] = [];
    const left: string[] = [];
    for (const id of specimenIds) {
      const found = all.find((one) => one.id === id);
      if (!found) throw notFound();
      const to = specimenView(found);
      const name = `“${to.text}” in ${faceName(to.pack)}`;
      const start = carrySpacing(reference.spacing, from, to);
      if (start.map.every((place) => place === null))
        throw new AppError(
          'INVALID',
          `${name} has no pair of “${from.text}”, so there is nothing to carry. Choose lines with the same text.`,
        );
      const content = {
        spacing: start.spacing,
        tolerances: moveByMap(reference.tolerances, start.map, to.pairCount, null),
        reasons: moveByMap(reference.reasons, start.map, to.pairCount, null),
        carriedFromId: referenceId,
      };
      const key = { specimenVersionId: to.versionId, authorId: member.id, slot: 1 };
      const done = await retryOnConflict(async () => {
        const there = await data.references.byKey(key);
        if (!there) return Boolean(await data.references.create(key, content, now));
        return (
          (replace || there.carriedFromId !== null) && data.references.change(there.id, there.version, content, now)
        );
      });
      (done ? carried : left).push(name);
    }
    return { exerciseId, carried, left };
  },
});

type At = { pack: Pack; size: Size; ground: Ground };

/**
 * A spacing copied from one specimen to another of the same words, as a start to be checked. In another face or weight
 * a total is kept as a share of the face's own stem gap, since gaps and counters shrink together; at another size the
 * tracking follows the expected response of a reading face. Offsets are limited to ±2000.
 */
export function carrySpacing(spacing: Spacing, from: At, to: At): { spacing: Spacing; map: (number | null)[] } {
  const map = pairMap(lineOf(from.pack), lineOf(to.pack));
  const pairs = to.pack.letters.length - 1;
  const share = stemGapOf(to) / stemGapOf(from);
  const totals = spacing.offsets.map((offset, pair) => (builtIn(from.pack, pair) + offset) * share);
  const carried = moveByMap<number | null>(totals, map, pairs, null);
  const tracking = spacing.tracking * share + responseAt(to) - responseAt(from);
  return {
    map,
    spacing: {
      tracking: held(tracking),
      offsets: carried.map((total, pair) => (total === null ? 0 : held(total - builtIn(to.pack, pair)))),
    },
  };
}

/**
 * What a face made for reading asks for beside its spacing at 16 px, in 1/1000 em: −10 for every doubling above, +15
 * for every halving below. Measured on the optical-size axes of five open-licence faces; a start, with a wide band. A
 * face that is drawn for its size asks for nothing.
 */
function responseAt({ pack, size }: At): number {
  if (pack.face?.drawnFor) return 0;
  const doublings = Math.log2(inPixels(size) / readingSize);
  return doublings > 0 ? doublings * -10 : doublings * -15;
}

const readingSize = 16;

const builtIn = (pack: Pack, pair: number): number => (pack.builtIn[pair]! * 1000) / pack.unitsPerEm;

/** 1 where a face has no H: then nothing is scaled. */
function stemGapOf({ pack, size, ground }: At): number {
  const untouched = { tracking: 0, offsets: pack.builtIn.map(() => 0) };
  return measureLine(pack, untouched, { size, ground }).line.stemGap ?? 1;
}

const held = (value: number): number => Math.max(-2000, Math.min(2000, Math.round(value)));
