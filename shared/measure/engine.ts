/**
 * Version of everything that shared/ computes. Raise it whenever an output changes; the golden file in tests insists.
 */
export const ENGINE = 2;
