/** A browser stays signed in for this long at most, from the moment of signing in. */
export const sessionDays = 14;
