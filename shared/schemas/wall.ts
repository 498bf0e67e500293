import * as z from 'zod/mini';
import { plainSign } from '@/shared/text/plain-signs';
import { idSchema } from './id';
import { roundNumberSchema } from './critique';
import type { Pack } from './pack';
import type { Ground, Size, Spacing } from './spacing';

/** Keys of lines and codes of walls: 25^10 = 9.5 × 10^13 of them, 46 bits. */
export const wallSignCount = 10;
const tenSigns = new RegExp(`^${plainSign}{${wallSignCount}}$`);

/** The key of a line on one wall: ten characters that reveal nothing of the proof, its author or its time. */
const lineKey = z.string().check(z.regex(tenSigns, 'This line is not on the wall.'));
const pair = z.int('A gap has a number.').check(z.gte(0), z.lte(198));

/** The code of the short link as people type it: case, spaces and hyphens do not matter. */
export const wallCodeSchema = z.pipe(
  z.pipe(
    z.string().check(z.maxLength(40)),
    z.transform((typed: string) => typed.toUpperCase().replace(/[\s-]/g, '')),
  ),
  z.string().check(z.regex(tenSigns, 'A wall’s code has ten letters and figures.')),
);

/** A random code of one phone for one wall, made on the phone: 16 bytes in base64url. It identifies no one. */
const phone = z.string().check(z.regex(/^[\w-]{22}$/, 'This phone has no word of its own yet; open the link again.'));

export const wallOnly = z.strictObject({ wallId: idSchema });
export const wallCodeOnly = z.strictObject({ code: wallCodeSchema });
export const openWallSchema = z.strictObject({
  exerciseId: idSchema,
  roundNumber: roundNumberSchema,
  specimenId: idSchema,
});

/** `collect` hides where the room looks until it is asked for. */
export const pointingSchema = z.enum(['off', 'collect', 'show'], 'Pointing can be off, collected or shown.');
type Pointing = z.infer<typeof pointingSchema>;

/** One change at a time, each meaning the same whatever was changed before it. */
export const changeWallSchema = z.strictObject({
  wallId: idSchema,
  change: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('pointing'), to: pointingSchema }),
    z.strictObject({ kind: z.literal('front'), line: z.nullable(lineKey) }),
    z.strictObject({ kind: z.literal('leave out'), line: lineKey, out: z.boolean() }),
    z.strictObject({ kind: z.literal('leave all out'), out: z.boolean() }),
    z.strictObject({ kind: z.literal('ask anew') }),
  ]),
});
export type WallChange = z.infer<typeof changeWallSchema>['change'];

/** A null line takes the phone's point back. */
export const pointSchema = z.strictObject({
  code: wallCodeSchema,
  phone,
  at: z.nullable(z.strictObject({ line: lineKey, pair })),
});

export const saveAsNoteSchema = z.strictObject({
  wallId: idSchema,
  line: lineKey,
  pair,
  body: z.string().check(z.minLength(1, 'Write what is worth keeping.'), z.maxLength(4000)),
  /** Made in the browser: saved again with the same key it is the same note. */
  requestKey: z.string().check(z.minLength(8), z.maxLength(64)),
});

/** One version of the specimen, as all lines that were set on it are drawn. */
export type WallPack = { version: number; pack: Pack; ground: Ground; size: Size };

export type PhoneLine = {
  key: string;
  /** Its name in the room: the first signs of its key, as many as distinguish it from the others. */
  sign: string;
  /** Number of the specimen's version it was set on. */
  version: number;
  spacing: Spacing;
};

/**
 * `sent` counts how often its author has sent: it goes up when the setting is replaced. `out`: left out of the wall and
 * of the phones.
 */
export type WallLine = PhoneLine & { sent: number; out: boolean };
export type GapCount = { line: string; pair: number; count: number };

/** The whole present state of a wall, as its projector has it. */
export type WallState = {
  pointing: Pointing;
  front: string | null;
  lines: WallLine[];
  /** Empty unless they are shown. */
  counts: GapCount[];
  /** How many phones point at something now. */
  pointed: number;
  /** For the specimen's newest version. */
  references: Spacing[];
  newest: number;
};

/**
 * The whole present state of a wall, as every phone has it. `asking` goes up when the instructor asks anew: points made
 * before are gone.
 */
export type PhoneState = { pointing: boolean; asking: number; lines: PhoneLine[] };
