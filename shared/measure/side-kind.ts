import type { Box, Contours } from '@/shared/geometry/polygon';
import { drawnEdges, STEP } from '@/shared/outline/edge-profile';
import type { SideKind } from '@/shared/schemas/measure';

/** Depths are judged as shares of the height of the side, so that small letters and capitals meet one rule. */
const FLUSH = 0.055;
const SERIF = 0.18;
const FACING = 0.24;
const SLANT = 0.2;
/** In a condensed face everything recedes less: no required depth is more than this share of the letter's width. */
const OF_WIDTH = 0.28;
/** Parts deeper than this under the baseline don't belong to the side; a jump is measured over this many bands. */
const UNDER = -20;
const LEAST_HEIGHT = 60;
const MOST_BANDS = 600;
const JUMP = 20 / STEP;
/** Notches and chamfers up to five bands high are looked over. */
const BLUNT = 2;

/**
 * The kinds of both sides of a letter, from its outline alone, so that they also work for Ø, Щ, & and 7. The letter is
 * read in bands from its own foot (from the baseline, where more of it is above that), so that moving it changes
 * nothing.
 * @param contours the letter set upright along its slant, 1/1000 em; `box` round them.
 */
export function sideKinds(contours: Contours, box: Box): { left: SideKind; right: SideKind } {
  const overBaseline = Math.max(box.bottom, UNDER);
  const foot = box.top - overBaseline >= LEAST_HEIGHT ? overBaseline : box.bottom;
  const bands = Math.min(MOST_BANDS, Math.max(1, -Math.floor(-(box.top - foot) / STEP)));
  const { left, right } = drawnEdges(contours, box.right, bands, foot);
  const width = box.right - box.left;
  return { left: kindOf(left, width), right: kindOf(right, width) };
}

/**
 * Straight: flush, or flush between serif tips. Slanted: recedes steadily, upwards (`slanted-in`, A) or downwards
 * (`slanted-out`, V). Round: recedes towards both ends. Arched: recedes towards one end. Open: mostly recessed.
 * @param profile white per band on that side, 1/1000 em; Infinity without ink.
 * @param width of the letter's ink, 1/1000 em.
 */
function kindOf(profile: Float64Array, width: number): SideKind {
  const depths = depthsOf(profile);
  const height = depths.length * STEP;
  const inner = withoutEnds(depths, 0.14);
  if (inner.length < 2) return 'straight';
  const slant = slantOf(withoutEnds(depths, 0.06), Math.min(SLANT * height, OF_WIDTH * width));
  if (slant) return slant;
  const deepest = Math.max(...inner);
  if (
    range(inner) <= FLUSH * height &&
    (deepest <= FLUSH * height || (deepest <= SERIF * height && hasTips(depths, height)))
  )
    return endsOf(depths, height);
  // Parts close to the outermost point face the neighbour; the rest is a bay, or an ascender behind a bowl.
  const facing = longestRun(depths, Math.min(FACING * height, OF_WIDTH * width));
  if (facing.length < 0.48 * depths.length) return 'open';
  return endsOf(facing, facing.length * STEP);
}

/** How far each band with ink is behind the outermost one. */
function depthsOf(profile: Float64Array): number[] {
  const bands = [...profile.keys()].filter((band) => profile[band]! < Infinity);
  const nearest = bands.map((band) => Math.min(...profile.slice(Math.max(0, band - BLUNT), band + BLUNT + 1)));
  const least = Math.min(...nearest);
  return nearest.map((white) => white - least);
}

/** Serif tips: at both ends the side reaches its outermost point, or nearly. */
function hasTips(depths: number[], height: number): boolean {
  const end = Math.max(1, Math.floor(depths.length * 0.14));
  return Math.min(...depths.slice(0, end)) <= FLUSH * height && Math.min(...depths.slice(-end)) <= FLUSH * height;
}

/**
 * Straight, round or arched, by whether the side goes back towards its ends. A rounded end goes back over several
 * bands.
 */
function endsOf(depths: number[], height: number): SideKind {
  const end = Math.max(1, Math.floor(depths.length * 0.12));
  const flush = middleOf(depths);
  const lowGoesBack = mean(depths.slice(0, end)) - flush > FLUSH * height,
    highGoesBack = mean(depths.slice(-end)) - flush > FLUSH * height;
  if (lowGoesBack && highGoesBack) return 'round';
  return lowGoesBack || highGoesBack ? 'arched' : 'straight';
}

/** A side that goes back one way, without a jump, over much of its height. */
function slantOf(depths: number[], least: number): SideKind | null {
  let up = 0,
    down = 0,
    steepest = 0,
    moving = 0;
  for (let i = 1; i < depths.length; i += 1) {
    const step = depths[i]! - depths[i - 1]!;
    up += Math.max(0, step);
    down += Math.max(0, -step);
    steepest = Math.max(steepest, Math.abs(depths[i]! - depths[Math.max(0, i - JUMP)]!));
    if (Math.abs(step) > 0.1 * STEP) moving += 1;
  }
  const travelled = Math.max(up, down);
  const steady =
    travelled > 0.85 * (up + down) &&
    travelled > least &&
    steepest < 0.3 * travelled &&
    moving > 0.45 * (depths.length - 1);
  return !steady ? null : up > down ? 'slanted-in' : 'slanted-out';
}

function withoutEnds(depths: number[], share: number): number[] {
  const cut = Math.floor(depths.length * share);
  return depths.slice(cut, depths.length - cut);
}

function longestRun(depths: number[], limit: number): number[] {
  let best: number[] = [],
    run: number[] = [];
  for (const depth of depths) {
    run = depth <= limit ? [...run, depth] : [];
    if (run.length > best.length) best = run;
  }
  return best;
}

function middleOf(depths: number[]): number {
  const third = Math.floor(depths.length / 3);
  return Math.min(...depths.slice(third, depths.length - third));
}

function range(values: number[]): number {
  return Math.max(...values) - Math.min(...values);
}

function mean(values: number[]): number {
  let sum = 0;
  for (const value of values) sum += value;
  return values.length === 0 ? 0 : sum / values.length;
}
