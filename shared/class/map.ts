import * as z from 'zod/mini';
import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Spacing } from '@/shared/schemas/spacing';

/**
 * One line as a class set it in a round, a row a member. `tenths`: per pair, in tenths of 1/1000 em, what is left of
 * the deviation from the nearest reference after tightness is taken out; where there is no reference, how far the pair
 * is beyond what half of the designers would give it. Above 0 is wider; null where nothing is held against anything.
 */
export const mapLineSchema = z.strictObject({
  version: z.literal(1),
  specimenVersionId: z.string(),
  specimenId: z.string(),
  text: z.string(),
  letters: z.array(z.string()),
  /** Tolerances per pair, one list for each reference that was nearest to a student, in 1/1000 em. */
  tolerances: z.array(z.array(z.number())),
  /** The frozen set that most rows were compared with. */
  setId: z.nullable(z.string()),
  rows: z.array(
    z.strictObject({
      memberId: z.string(),
      proofId: z.string(),
      tracking: z.int(),
      offsets: z.array(z.int()),
      /** Which list of tolerances holds; null where the row is held against its own middle. */
      against: z.nullable(z.int()),
      /** Member whose reference was nearest. */
      author: z.nullable(z.string()),
      tightness: z.nullable(z.number()),
      evenness: z.nullable(z.number()),
      tenths: z.array(z.nullable(z.int())),
    }),
  ),
});
export type MapLine = z.infer<typeof mapLineSchema>;
export type MapRow = MapLine['rows'][number];

/** The map as it goes to the browser: students once, then each line with columns of numbers in the students’ order. */
export type ClassMap = {
  students: {
    name: string;
    /** The proof's token in the desk’s address; null where it may not be opened yet. */ token: string | null;
  }[];
  namesShown: boolean;
  lines: MapLineShown[];
};
export type MapLineShown = {
  specimenVersionId: string;
  specimenId: string;
  text: string;
  letters: string[];
  pack: Pack;
  ground: Ground;
  /** What holds where there is no reference, in 1/1000 em. */
  ownTolerance: number;
  tolerances: number[][];
  references: { author: string; spacing: Spacing }[];
  /** Null for a student who has not set this line. */
  rows: (null | {
    tracking: number;
    offsets: number[];
    against: number | null;
    nearest: number | null;
    tenths: (number | null)[];
  })[];
};
