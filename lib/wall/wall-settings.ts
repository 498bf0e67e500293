import { createHmac, randomBytes, randomInt } from 'node:crypto';
import * as z from 'zod/mini';
import { canonicalJson } from '@/shared/text/canonical-json';
import { pointingSchema, wallSignCount } from '@/shared/schemas/wall';
import { plainSigns } from '@/shared/text/plain-signs';

const settingsSchema = z.strictObject({
  /** Known to the server only, and gone when the wall is closed: without it nobody can tell whose a key is. */
  salt: z.string(),
  pointing: pointingSchema,
  front: z.nullable(z.string()),
  out: z.array(z.string()),
  asking: z.int(),
});
export type WallSettings = z.infer<typeof settingsSchema>;

export const newWallSettings = (): WallSettings => ({
  salt: randomBytes(24).toString('base64url'),
  pointing: 'collect',
  front: null,
  out: [],
  asking: 0,
});
export const readWallSettings = (stored: string): WallSettings => z.parse(settingsSchema, JSON.parse(stored));
export const storedWallSettings = (settings: WallSettings): string => canonicalJson(settings);

/** The code of a short link. 46 bits by chance; a clash is refused by the unique key and tried again. */
export const newWallCode = (): string =>
  Array.from({ length: wallSignCount }, () => plainSigns[randomInt(plainSigns.length)]).join('');

/** The code as it is written: two groups. */
export const spelled = (code: string): string => `${code.slice(0, 5)}-${code.slice(5)}`;

/**
 * What stands for a student's line on this wall: the same when they send again, another on every wall, and in an order
 * that is neither the alphabet's nor time's. HMAC-SHA-256 of the membership under the wall's salt, ten signs of it
 * (each byte modulo 25: a slight lean to the first signs, which tells nothing).
 */
export function lineKey(salt: string, memberId: string): string {
  const bytes = createHmac('sha256', salt).update(memberId).digest();
  return Array.from({ length: wallSignCount }, (_, index) => plainSigns[bytes[index]! % plainSigns.length]).join('');
}
