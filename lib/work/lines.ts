import * as z from 'zod/mini';
import type { ScopedData } from '@/lib/data';
import { type Pack, packSchema } from '@/shared/schemas/pack';
import { type Spacing } from '@/shared/schemas/spacing';
import { specimenDetailsSchema, type StartMade } from '@/shared/schemas/specimen';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import { faceName, startOf } from '@/lib/rows/specimen';

/** A specimen version in use, with its pack, checked on the way out. */
export type CurrentLine = {
  specimenId: string;
  id: string;
  number: number;
  text: string;
  pack: Pack;
  size: number;
  unit: string;
  ground: string;
  remark: string;
  /** From what students begin, and how it was made where it is not the face's own. */
  start: Spacing;
  startMade: StartMade | null;
};

/** The lines of an exercise as they are in use now, in order. */
export async function currentLines(data: ScopedData, exerciseId: string): Promise<CurrentLine[]> {
  const specimens = await data.specimens.ofExercise(exerciseId);
  return specimens.flatMap(({ id: specimenId, versions: [version] }) => {
    if (!version) return [];
    const { id, number, text, size, unit, ground } = version;
    const { remark, start } = z.parse(specimenDetailsSchema, JSON.parse(version.details));
    const pack = z.parse(packSchema, JSON.parse(version.pack.payload));
    return [
      {
        specimenId,
        id,
        number,
        text,
        size,
        unit,
        ground,
        remark,
        pack,
        start: startOf(version, pack.letters.length - 1),
        startMade: start?.made ?? null,
      },
    ];
  });
}

/** A line as a page gets it. */
export const lineView = (line: CurrentLine) => ({
  specimenId: line.specimenId,
  versionId: line.id,
  text: line.text,
  remark: line.remark,
  /** As it is named on screens, e.g. `Lato Bold`. */
  face: faceName(line.pack),
  pack: line.pack,
  /** A spacing that is wrong on purpose, from which the line begins; null: the face's own. */
  began: line.startMade === null ? null : { made: line.startMade, spacing: line.start },
  ...sizeAndGroundOf(line),
});
