import { randomInt } from 'node:crypto';

/** No vowels, so that no words arise; no letters or figures that are read for one another. */
const signs = 'BCDFGHJKMNPQRTVWXZ2346789';

/** A name that tells nothing: `K7M-2QX`. 25^6 = 244 million of them; a clash is refused by the unique key and tried again. */
export function makeAlias(pick: (below: number) => number = randomInt): string {
  const some = () => Array.from({ length: 3 }, () => signs[pick(signs.length)]).join('');
  return `${some()}-${some()}`;
}
