import { createHmac, randomBytes, randomInt } from 'node:crypto';
import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import { announce } from '@/lib/live/announce';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import { roundContext } from '@/lib/review/context';
import { roundByNumber } from '@/shared/schemas/critique';
import { openWallSchema, pointingSchema, wallOnly, wallSignCount } from '@/shared/schemas/wall';
import { canonicalJson } from '@/shared/text/canonical-json';
import { plainSigns } from '@/shared/text/plain-signs';

/** Opens a wall for one specimen in one round, or gives the one that is open; two at the same moment get the same. */
export const openWall = operation({
  name: 'open-wall',
  allow: 'wall:run',
  input: openWallSchema,
  run: ({ data, now }, { exerciseId, roundNumber, specimenId }): Promise<{ wallId: string }> =>
    retryOnConflict(async () => {
      const { round, me } = await roundContext(data, exerciseId, roundNumber);
      const specimen = await data.specimens.find(specimenId);
      if (!specimen || specimen.exerciseId !== exerciseId) throw notFound();
      const before = await data.walls.countOf(round.id, specimenId);
      const there = (await data.walls.openOf(round.id, now)).find((wall) => wall.specimenId === specimenId);
      if (there) return { wallId: there.id };
      return {
        wallId: await data.walls.open(
          {
            before,
            roundId: round.id,
            specimenId,
            code: newWallCode(),
            settings: storedWallSettings(newWallSettings()),
            openedById: me.id,
          },
          now,
        ),
      };
    }),
});

/** The specimens of a round, how many sent each, and which of them are on an open wall. */
export const listWalls = operation({
  name: 'list-walls',
  allow: 'wall:run',
  input: roundByNumber,
  run: async ({ data, now }, { exerciseId, roundNumber }) => {
    const { round, exercise, course } = await roundContext(data, exerciseId, roundNumber);
    const [specimens, walls, tallies] = await Promise.all([
      data.specimens.ofExercise(exerciseId),
      data.walls.openOf(round.id, now),
      data.roundState.tallies([round.id]),
    ]);
    const wallOf = new Map(walls.map((wall) => [wall.specimenId, wall]));
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      exercise: { id: exercise.id, title: exercise.title },
      round: { number: round.number, title: round.title },
      senders: tallies.get(round.id)?.sent ?? 0,
      specimens: specimens.flatMap(({ id, versions: [version] }) => {
        if (!version) return [];
        const wall = wallOf.get(id);
        return [
          {
            id,
            text: version.text,
            face: version.pack.face ? `${version.pack.face.family} ${version.pack.face.style}` : null,
            ...sizeAndGroundOf(version),
            wall: wall ? { id: wall.id, openedAt: wall.openedAt, by: wall.openedBy?.user?.name ?? null } : null,
          },
        ];
      }),
    };
  },
});

/** Closes a wall: its link ends at once, and where the room pointed is deleted. Notes made from it stay. */
export const closeWall = operation({
  name: 'close-wall',
  allow: 'wall:run',
  input: wallOnly,
  run: async ({ data, now }, { wallId }) => {
    const { wall } = await wallContext(data, wallId, now);
    await data.walls.close(wall.id, now);
    announce(`wall:${wallId}`);
    return { exerciseId: wall.round.exercise.id, roundNumber: wall.round.number };
  },
});

/**
 * Closes walls that were left open, and deletes where the room pointed and which key belonged to whom. Returns their
 * number.
 */
export const closeForgottenWalls = operation({
  name: 'close-forgotten-walls',
  allow: 'system',
  input: z.object({}),
  run: async ({ data, now }) => ({ closed: await data.walls.closeForgotten(now) }),
});

/** An open wall of the actor's, as staff, with its settings. */
export async function wallContext(data: ScopedData, wallId: string, now: Date) {
  const wall = await data.walls.byId(wallId, now);
  if (!wall) throw notFound();
  return { wall, settings: readWallSettings(wall.settings) };
}

/** An open wall by its code. A wrong code, a closed wall and one that was never there are the same. */
export async function wallOfCode(data: ScopedData, code: string, now: Date) {
  const wall = await data.walls.byCode(code, now);
  if (!wall) throw notFound();
  return { wall, settings: readWallSettings(wall.settings) };
}

const settingsSchema = z.strictObject({
  /** Known to the server only, and deleted when the wall is closed: without it a key can't be traced to a student. */
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
const readWallSettings = (stored: string): WallSettings => z.parse(settingsSchema, JSON.parse(stored));
export const storedWallSettings = (settings: WallSettings): string => canonicalJson(settings);

/** The code of a short link. 46 bits by chance; a clash is refused by the unique key and tried again. */
export const newWallCode = (): string =>
  Array.from({ length: wallSignCount }, () => plainSigns[randomInt(plainSigns.length)]).join('');

/** The code as it is written: two groups. */
export const spelled = (code: string): string => `${code.slice(0, 5)}-${code.slice(5)}`;

/**
 * The key of a student's line on this wall: the same when they send again, another on every wall, and in an order that
 * is neither alphabetical nor chronological. HMAC-SHA-256 of the membership under the wall's salt, ten signs of it
 * (each byte modulo 25: a slight bias to the first signs, which reveals nothing).
 */
export function lineKey(salt: string, memberId: string): string {
  const bytes = createHmac('sha256', salt).update(memberId).digest();
  return Array.from({ length: wallSignCount }, (_, index) => plainSigns[bytes[index]! % plainSigns.length]).join('');
}
