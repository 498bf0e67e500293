import { AppError } from '@/lib/access/errors';

/** For forms behind a link: it was good when the page was opened, and is not now. */
export const linkIsOver = (): AppError =>
  new AppError(
    'EXPIRED',
    'This link has been used or revoked, or it has expired. Ask the person who gave it to you for a new one.',
  );

/** Told only to people who hold a valid link. */
export const addressTaken = (): AppError =>
  new AppError('INVALID', 'Nothing was made yet.', {
    fields: {
      email: 'There is an account with this address already. If it is yours, sign in with it and open the link again.',
    },
  });

/** For commands of whoever runs the server. */
export const nobodyHere = (email: string): AppError =>
  new AppError('NOT_FOUND', `There is no account with the address “${email}”.`);
