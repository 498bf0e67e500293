'use client';
import { firstSingleKeys } from '@/app/_bench/hands/keys';
import type { Look } from '@/app/_line/looks';

/** Ways of looking that a wall has, each under the key it has at the bench. */
export const wallLooks = [
  'white',
  'counters',
  'hidden',
  'three',
  'blur',
  'head',
  'mirror',
  'opposite',
] as const satisfies readonly Look[];
export type WallLook = (typeof wallLooks)[number];
export const lookKeys = Object.fromEntries(wallLooks.map((look) => [look, firstSingleKeys[`look ${look}`]])) as Record<
  WallLook,
  string
>;

/** The wall's other keys, each for one thing. */
export const wallKeys = {
  next: '.',
  before: ',',
  front: 'f',
  leaveOut: 'x',
  one: '1',
  two: '2',
  turn: 'a',
  pause: 'p',
  median: 'd',
  reference: 'r',
  on: '>',
  back: '<',
  larger: '+',
  smaller: '-',
  fresh: 'n',
  room: 'v',
  link: 'q',
  strip: 'b',
} as const;
