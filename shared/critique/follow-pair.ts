/**
 * Where a pair stands in a later version of its line. `maps` are the versions' pair maps from then to now:
 * maps[k][i] is where pair i of one version stands in the next, null where it is gone.
 */
export function followPair(pair: number, maps: readonly (readonly (number | null)[])[]): number | null {
  let at: number | null = pair;
  for (const map of maps) {
    if (at === null) return null;
    at = map[at] ?? null;
  }
  return at;
}
