/** What went wrong on the way through another sign-in, by the word that comes back in the address. Unknown words say little. */
export function problemWords(error: string | string[] | undefined): string | null {
  if (typeof error !== 'string' || error === '') return null;
  return known[error] ?? 'Signing in did not work this time. Please try once more.';
}

const known: Record<string, string> = {
  NotVerified:
    'Your school’s sign-in did not confirm an e-mail address for you, so it can’t be tied to an account here. Ask the people who run it to confirm your address, or sign in with a password.',
  CredentialsSignin: 'This e-mail address and this password do not fit together.',
  AccessDenied: 'Your school’s sign-in said no. Try again, or ask the people who run it.',
  OAuthSignin: 'Your school’s sign-in could not be reached. Try again in a minute, or sign in with a password.',
  OAuthCallback: 'Your school’s sign-in gave no usable answer, or it took too long. Please start again.',
  Configuration: 'Signing in is not set up rightly on this server. Whoever runs it finds the reason in its log.',
};
