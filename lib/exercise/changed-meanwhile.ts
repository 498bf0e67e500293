import { AppError } from '@/lib/access/errors';

/** For who comes second: nothing of theirs is lost and nothing of the other's was overwritten. */
export const changedMeanwhile = (what: string): AppError =>
  new AppError(
    'CONFLICT',
    `Somebody else changed ${what} after you opened this page, so yours was not saved. What you typed is still here, and what is saved now is shown beside it. Save again to put yours in its place.`,
  );
