/**
 * Mutants that change no possible answer, each with the reason. They are named by the file in shared/, the text that is
 * changed and its replacement. At most three in a hundred may be listed here.
 */
export const equivalent: readonly { file: string; from: string; to: string; why: string }[] = [];
