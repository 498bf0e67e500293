import * as z from 'zod/mini';
import type { ScopedData } from '@/lib/data';
import { type Pack, packSchema } from '@/shared/schemas/pack';
import { specimenDetailsSchema } from '@/shared/schemas/specimen';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import { faceName } from '@/lib/rows/specimen';

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
};

/** The lines of an exercise as they are in use now, in order. */
export async function currentLines(data: ScopedData, exerciseId: string): Promise<CurrentLine[]> {
  const specimens = await data.specimens.ofExercise(exerciseId);
  return specimens.flatMap(({ id: specimenId, versions: [version] }) => {
    if (!version) return [];
    const { id, number, text, size, unit, ground } = version;
    const { remark } = z.parse(specimenDetailsSchema, JSON.parse(version.details));
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
        pack: z.parse(packSchema, JSON.parse(version.pack.payload)),
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
  ...sizeAndGroundOf(line),
});
