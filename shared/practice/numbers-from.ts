/**
 * Numbers from 0 to under 1, the same each time for one seed: a linear congruential generator with the constants of
 * Numerical Recipes, chapter 7.1. Its first numbers still show how near two seeds are and are left out.
 * @param seed a whole number from 0 to under 2³².
 */
export function numbersFrom(seed: number): () => number {
  let state = seed;
  const next = () => {
    state = (state * 1_664_525 + 1_013_904_223) % PERIOD;
    return state / PERIOD;
  };
  for (let i = 0; i < LEFT_OUT; i += 1) next();
  return next;
}

const PERIOD = 4_294_967_296;
const LEFT_OUT = 6;
