import { randomInt } from 'node:crypto';
import { plainSigns as signs } from '@/shared/text/plain-signs';

/** A name that tells nothing: `K7M-2QX`. 25^6 = 244 million of them; a clash is refused by the unique key and tried again. */
export function makeAlias(pick: (below: number) => number = randomInt): string {
  const some = () => Array.from({ length: 3 }, () => signs[pick(signs.length)]).join('');
  return `${some()}-${some()}`;
}
