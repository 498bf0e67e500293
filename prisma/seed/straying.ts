/**
 * Numbers between −most and most, the same each time for one seed (a linear congruential generator with the constants
 * of Numerical Recipes, chapter 7.1).
 */
export function straying(seed: number, most: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) % 4_294_967_296;
    return ((state / 4_294_967_296) * 2 - 1) * most;
  };
}
