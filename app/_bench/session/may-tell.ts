import type { Tells } from '../props';

const order: readonly Tells[] = ['nothing', 'contact', 'evenness', 'everything'];

/** Whether the exercise lets the bench tell this much. */
export function mayTell(tells: Tells, what: Tells): boolean {
  return order.indexOf(tells) >= order.indexOf(what);
}
