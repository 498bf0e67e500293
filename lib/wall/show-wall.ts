import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import type { ShownWall } from '@/lib/data/walls';
import { spacingOf } from '@/lib/rows/spacing';
import { wallOnly, type GapCount, type WallState } from '@/shared/schemas/wall';
import { linesOfWall, type OnWall } from './lines-of-wall';
import { packsOfWall } from './packs-of-wall';
import { wallInHand } from './wall-in-hand';
import { spelled } from './wall-settings';

/** A wall as its projector has it when the page is opened: what it is of, what it is drawn with, and its present state. */
export const showWall = operation({
  name: 'show-wall',
  allow: 'wall:run',
  input: wallOnly,
  run: async ({ data, now }, { wallId }) => {
    const { wall, settings } = await wallInHand(data, wallId, now);
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
    const { wall, settings } = await wallInHand(data, wallId, now);
    return presentState(data, wall, settings);
  },
});

type Settings = Awaited<ReturnType<typeof wallInHand>>['settings'];

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
