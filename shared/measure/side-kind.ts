import type { SideKind } from '@/shared/schemas/measure';
import { heightOfBand } from '@/shared/outline/grid';

/** Depth (1/1000 em) up to which a side counts as flush with its outermost point. */
const FLUSH = 30;

/**
 * The kind of a letter's side, from its edge profile alone (so that it holds for Ø, Щ, & and 7).
 * @param profile white per band on that side, 1/1000 em; Infinity without ink.
 */
export function sideKind(profile: Float64Array): SideKind {
  const depths: number[] = [];
  let least = Infinity;
  profile.forEach((white, band) => { if (white < Infinity && heightOfBand(band) > -40) least = Math.min(least, white); });
  profile.forEach((white, band) => { if (white < Infinity && heightOfBand(band) > -40) depths.push(white - least); });
  if (depths.length < 3) return 'straight';
  const flush = share(depths, (depth) => depth <= FLUSH);
  const third = Math.floor(depths.length / 3);
  const low = mean(depths.slice(0, third)), middle = mean(depths.slice(third, depths.length - third)), high = mean(depths.slice(depths.length - third));
  if (flush >= 0.8) return 'straight';
  if (middle < low && middle < high && Math.max(...depths) < 320) return flush < 0.75 && low > FLUSH / 2 ? 'round' : 'straight';
  if (middle > low && middle > high && Math.min(low, high) < 120) return 'open';
  const steady = steadiness(depths);
  if (steady > 0.8 && low < high) return flush > 0.35 ? (high > 100 ? 'open' : 'arched') : 'slanted-in';
  if (steady > 0.8) return flush > 0.35 ? (low > 100 ? 'open' : 'arched') : 'slanted-out';
  if (flush > 0.45) return Math.max(low, high) > 100 ? 'open' : 'arched';
  return 'open';
}

function share(values: number[], test: (value: number) => boolean): number {
  return values.filter(test).length / values.length;
}

function mean(values: number[]): number {
  let sum = 0;
  for (const value of values) sum += value;
  return values.length === 0 ? 0 : sum / values.length;
}

/** Share of the way up that goes one way only: 1 for a plain slant. */
function steadiness(depths: number[]): number {
  let up = 0, down = 0;
  for (let i = 1; i < depths.length; i += 1) {
    up += Math.max(0, depths[i]! - depths[i - 1]!);
    down += Math.max(0, depths[i - 1]! - depths[i]!);
  }
  return up + down === 0 ? 0 : Math.max(up, down) / (up + down);
}
