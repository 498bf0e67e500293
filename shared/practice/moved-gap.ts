import { clearanceAt, prepareLine } from '@/shared/measure';
import { measureLine } from '@/shared/scoring';
import type { PairMeasure, SideKind } from '@/shared/schemas/measure';
import type { Pack } from '@/shared/schemas/pack';
import type { PracticeKind } from '@/shared/schemas/practice';
import type { Spacing } from '@/shared/schemas/spacing';
import type { PerMille } from '@/shared/units';

/** One question: a line as its designers kerned it, and the same line with one gap moved, or nothing. */
export type Question = {
  readonly pack: Pack;
  /** The face's own spacing: nothing added to it. */
  readonly unmoved: Spacing;
  /** The same as `unmoved` where nothing was moved. */
  readonly moved: Spacing;
  /** Which gap was moved; null in a question that asks whether one sees what is not there. */
  readonly gap: number | null;
  /** By how much, whole 1/1000 em; above 0 it was opened. */
  readonly by: PerMille;
  /** Of the two lines shown, whether the upper one is the moved one. */
  readonly movedAbove: boolean;
};

/** In one question of six nothing is moved. */
const NOTHING_MOVED = 1 / 6;

/**
 * Draws a question with a move of this size. The move always leads out of the pair's usual range, since within it a
 * designer could have set the gap so; where no gap of the kind can leave its range by so little, the move is the least
 * that does.
 * @param level how far the gap is moved, 1/1000 em.
 * @param random numbers from 0 to under 1 (`numbersFrom`): the same numbers draw the same question.
 * @returns null where no line has a gap of the kind that can be moved.
 */
export function drawQuestion(
  packs: readonly Pack[],
  kind: PracticeKind,
  level: number,
  random: () => number,
): Question | null {
  const moves = packs.flatMap((pack) => movesOf(pack, kind));
  const size = Math.max(Math.floor(level + 0.5), leastMove(packs, kind) ?? Infinity);
  const chosen = pick(
    moves.filter(({ least, most }) => least <= size && size <= most),
    random,
  );
  if (!chosen) return null;
  const { pack, pair, way } = chosen;
  const unmoved = { tracking: 0, offsets: pack.builtIn.map(() => 0) };
  const movedAbove = random() < 0.5;
  if (random() < NOTHING_MOVED) return { pack, unmoved, moved: unmoved, gap: null, by: 0, movedAbove };
  const by = way * size;
  const moved = { tracking: 0, offsets: unmoved.offsets.map((offset, index) => (index === pair ? by : offset)) };
  return { pack, unmoved, moved, gap: pair, by, movedAbove };
}

/** The least move of a gap of the kind that there is a choice of gaps for, whole 1/1000 em; null without any gap. */
export function leastMove(packs: readonly Pack[], kind: PracticeKind): PerMille | null {
  const leasts = packs.flatMap((pack) => movesOf(pack, kind).map(({ least }) => least)).sort((a, b) => a - b);
  return leasts[Math.min(CHOICE, leasts.length) - 1] ?? null;
}

/** With fewer gaps to choose from one would know them by heart. */
const CHOICE = 4;
/** A move this small is no fault of a gap, whatever the range says; and none is larger, 1/1000 em. */
const LEAST = 4;
const MOST = 300;

/**
 * A gap and a way that it can be moved: by `least` it is out of its range, by more than `most` its letters would cross.
 */
type Move = { pack: Pack; pair: number; way: 1 | -1; least: number; most: number; sides: readonly SideKind[] };

const known = new WeakMap<Pack, Move[]>();

function movesOf(pack: Pack, kind: PracticeKind): Move[] {
  let all = known.get(pack);
  if (!all) known.set(pack, (all = everyMove(pack)));
  return all.filter(({ sides }) => kind === 'any' || isOfKind(sides, kind));
}

/** A gap that its designers themselves set outside what is usual is left alone: there the move could be a repair. */
function everyMove(pack: Pack): Move[] {
  const line = prepareLine(pack);
  const { pairs, line: whole } = measureLine(
    pack,
    { tracking: 0, offsets: pack.builtIn.map(() => 0) },
    { size: { value: 72, unit: 'px' }, ground: 'light' },
  );
  return pairs.flatMap(({ index: pair, usual, outside, total, sides }: PairMeasure) => {
    if (usual === null || outside !== false) return [];
    const apart = total - whole.tightness;
    const out = (distance: number) => Math.max(LEAST, Math.floor(distance) + 1);
    const { distance, crossing } = clearanceAt(line, pair, total);
    const common = { pack, pair, sides: [sides.left, sides.right] };
    const opened: Move = { ...common, way: 1, least: out(usual.high - apart), most: MOST };
    // A sideways move brings letters nearer by at most the move: they can't cross within their clearance.
    const closed: Move = {
      ...common,
      way: -1,
      least: out(apart - usual.low),
      most: crossing ? 0 : Math.floor(distance),
    };
    return [opened, closed].filter(({ least, most }) => least <= most);
  });
}

function isOfKind(sides: readonly SideKind[], kind: Exclude<PracticeKind, 'any'>): boolean {
  if (kind === 'straight') return sides.every((side) => side === 'straight' || side === 'arched');
  if (kind === 'round') return sides.includes('round') && !sides.some(isOpen);
  return sides.some(isOpen);
}

function isOpen(side: SideKind): boolean {
  return side === 'open' || side === 'slanted-in' || side === 'slanted-out';
}

function pick<T>(list: readonly T[], random: () => number): T | undefined {
  return list[Math.floor(random() * list.length)];
}
