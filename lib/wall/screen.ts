import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict, swapped } from '@/lib/data/retry';
import type { ShownWall } from '@/lib/data/walls';
import { announce } from '@/lib/live/announce';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import { countedProofs } from '@/lib/review/counted';
import { writeNote } from '@/lib/review/notes';
import { spacingOf } from '@/lib/rows/spacing';
import { readPack } from '@/lib/rows/specimen';
import { signsOf } from '@/shared/class/wall';
import {
  changeWallSchema,
  type GapCount,
  saveAsNoteSchema,
  type WallChange,
  type WallLine,
  wallOnly,
  type WallPack,
  type WallState,
} from '@/shared/schemas/wall';
import { lineKey, spelled, storedWallSettings, wallContext, type WallSettings } from './walls';

/**
 * A wall as its projector has it when the page is opened: what it is of, what it is drawn with, and its present state.
 */
export const getWall = operation({
  name: 'get-wall',
  allow: 'wall:run',
  input: wallOnly,
  run: async ({ data, now }, { wallId }) => {
    const { wall, settings } = await wallContext(data, wallId, now);
    const state = await presentState(data, wall, settings);
    const { round } = wall;
    return {
      id: wall.id,
      code: wall.code,
      spelled: spelled(wall.code),
      roundId: round.id,
      round: { number: round.number, title: round.title },
      exercise: { id: round.exercise.id, title: round.exercise.title },
      course: round.exercise.course,
      packs: await packsOfWall(data, wall, new Set(state.lines.map(({ version }) => version))),
      state,
    };
  },
});

/** Its present state alone, asked again at every change. */
export const watchWall = operation({
  name: 'watch-wall',
  allow: 'wall:run',
  input: wallOnly,
  run: async ({ data, now }, { wallId }): Promise<WallState> => {
    const { wall, settings } = await wallContext(data, wallId, now);
    return presentState(data, wall, settings);
  },
});

type Settings = Awaited<ReturnType<typeof wallContext>>['settings'];

async function presentState(data: ScopedData, wall: ShownWall, settings: Settings): Promise<WallState> {
  const [lines, versions, points] = await Promise.all([
    linesOfWall(data, wall, settings),
    data.walls.versionNumbers(wall),
    data.walls.pointsOf(wall),
  ]);
  const newest = versions.at(-1);
  const references = newest ? await data.walls.references(wall, newest.id) : null;
  const counts = countsOf(lines, points);
  return {
    pointing: settings.pointing,
    front: lines.some(({ line }) => line.key === settings.front && !line.out) ? settings.front : null,
    lines: lines.map(({ line }) => line),
    counts: settings.pointing === 'show' ? counts : [],
    pointed: counts.reduce((sum, { count }) => sum + count, 0),
    references: (references?.items ?? []).map(spacingOf),
    newest: newest?.number ?? 0,
  };
}

/** Points at settings that were replaced since are not counted: the gap they meant may be another now. */
function countsOf(
  lines: readonly OnWall[],
  points: readonly { proofItemId: string; pair: number; _count: { _all: number } }[],
): GapCount[] {
  const keyOf = new Map(lines.filter(({ line }) => !line.out).map(({ line, item }) => [item.id, line.key]));
  return points.flatMap(({ proofItemId, pair, _count }) => {
    const line = keyOf.get(proofItemId);
    return line ? [{ line, pair, count: _count._all }] : [];
  });
}

/**
 * Changes what is on the wall and on the phones. Each change is independent, so that two people at one wall lose
 * nothing.
 */
export const changeWall = operation({
  name: 'change-wall',
  allow: 'wall:run',
  input: changeWallSchema,
  run: async ({ data, now }, { wallId, change }): Promise<{ changed: true }> => {
    await retryOnConflict(async () => {
      const { wall, settings } = await wallContext(data, wallId, now);
      const next =
        change.kind === 'leave all out'
          ? {
              ...settings,
              front: null,
              out: change.out ? (await linesOfWall(data, wall, settings)).map(({ line }) => line.key) : [],
            }
          : changed(settings, change);
      swapped(await data.walls.change(wall.id, wall.version, storedWallSettings(next)), 'The wall');
      if (change.kind === 'ask anew') await data.walls.forgetPoints(wall);
    });
    announce(`wall:${wallId}`);
    return { changed: true };
  },
});

function changed(settings: WallSettings, change: Exclude<WallChange, { kind: 'leave all out' }>): WallSettings {
  switch (change.kind) {
    case 'pointing':
      return { ...settings, pointing: change.to };
    case 'front':
      return { ...settings, front: change.line };
    case 'ask anew':
      return { ...settings, asking: settings.asking + 1 };
    case 'leave out': {
      const others = settings.out.filter((key) => key !== change.line);
      return {
        ...settings,
        out: change.out ? [...others, change.line] : others,
        front: change.out && settings.front === change.line ? null : settings.front,
      };
    }
  }
}

/** Saves what was discussed about a gap as a note on its proof: a note like any other, released with the rest. */
export const saveAsNote = operation({
  name: 'save-as-note',
  allow: 'critique:write',
  input: saveAsNoteSchema,
  run: async ({ data, caller, now }, { wallId, line, pair, body, requestKey }): Promise<{ counts: boolean }> => {
    const { wall, settings } = await wallContext(data, wallId, now);
    const meant = (await linesOfWall(data, wall, settings)).find((one) => one.line.key === line);
    if (!meant) throw notFound();
    const { proof, specimenVersionId } = meant.item;
    await writeNote(
      caller,
      { proofId: proof.id, specimenVersionId, requestKey, fromPair: pair, toPair: pair, body, suggestion: null },
      { now },
    );
    const counted = await countedProofs(data, wall.round);
    // The wall shows the newest proof; what counts may be an earlier one, and then the note waits until the instructor
    // picks this proof.
    return { counts: counted.some((one) => one.proof?.id === proof.id) };
  },
});

type Item = Awaited<ReturnType<ScopedData['walls']['spacingsOf']>>[number];
type OnWall = { line: WallLine; item: Item };

/** The newest spacing of each student, with its key on the wall, in the order of the keys. */
export async function linesOfWall(data: ScopedData, wall: ShownWall, settings: WallSettings): Promise<OnWall[]> {
  const newest = new Map<string, Item>();
  for (const item of await data.walls.spacingsOf(wall)) {
    const known = newest.get(item.proof.memberId);
    if (!known || known.proof.number < item.proof.number) newest.set(item.proof.memberId, item);
  }
  const keyed = [...newest]
    .map(([memberId, item]) => ({ key: lineKey(settings.salt, memberId), item }))
    .sort((one, other) => (one.key < other.key ? -1 : 1));
  const signs = signsOf(keyed.map(({ key }) => key));
  return keyed.map(({ key, item }) => ({
    item,
    line: {
      key,
      sign: signs.get(key)!,
      version: item.specimenVersion.number,
      spacing: spacingOf(item),
      sent: item.proof.number,
      out: settings.out.includes(key),
    },
  }));
}

/** What phones see of them: not those left out, and only the one in front if there is one. */
export function onPhones(lines: readonly OnWall[], { front }: WallSettings): OnWall[] {
  const seen = lines.filter(({ line }) => !line.out);
  return seen.some(({ line }) => line.key === front) ? seen.filter(({ line }) => line.key === front) : seen;
}

/** What the lines are drawn with: one pack for each version of the specimen that is on the wall. */
export async function packsOfWall(
  data: ScopedData,
  wall: ShownWall,
  versions: ReadonlySet<number>,
): Promise<WallPack[]> {
  const rows = await data.walls.versionsOf(wall);
  return rows
    .filter(({ number }, index) => versions.has(number) || index === rows.length - 1)
    .map((row) => ({ version: row.number, pack: readPack(row.packSha, row.pack.payload), ...sizeAndGroundOf(row) }));
}
