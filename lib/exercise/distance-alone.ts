import { AppError } from '@/lib/access/errors';

/** Distance from the teacher is evidence; by itself it would mark taste. */
export function refuseDistanceAlone(criteria: readonly { basis: string }[]): void {
  if (!isDistanceAlone(criteria)) return;
  const said =
    'Distance from the references can’t be the only criterion: two spacings can both be right. Add a criterion that a person judges by eye.';
  throw new AppError('INVALID', said, { fields: { basis: said } });
}

export const isDistanceAlone = (criteria: readonly { basis: string }[]): boolean =>
  criteria.length > 0 && criteria.every(({ basis }) => basis === 'distance');
