'use client';
import { lookTable, looksOn } from '@/app/_line/looks';

/** Ways of looking that a wall has, each under the key it has at the bench. */
export const wallLooks = looksOn('wall').map((look) => ({ look, key: lookTable[look].key }));

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
