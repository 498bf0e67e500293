/**
 * Another writer was quicker. Carries the code of a write conflict, so that `retryOnConflict` runs the work again, from
 * reading on.
 */
export class Overtaken extends Error {
  readonly code = 'P2034';
  constructor(what: string) {
    super(`${what} was changed by another person meanwhile.`);
    this.name = 'Overtaken';
  }
}

/** Every compare and swap names the version it builds on; exactly one row must have had it. @throws Overtaken */
export function swapped({ count }: { count: number }, what: string): void {
  if (count !== 1) throw new Overtaken(what);
}
