const SCRIPTS = [/^\p{Script=Latin}/u, /^\p{Script=Greek}/u, /^\p{Script=Cyrillic}/u];

/**
 * Whether the fit covers this pair: two letters of one of the three scripts, with or without accents, and not a capital
 * after a small letter, which running text does not have. Figures, marks and everything else are not covered.
 */
export function isCovered(left: string, right: string): boolean {
  if (!isLetter(left) || !isLetter(right)) return false;
  if (isSmall(left) && !isSmall(right)) return false;
  return SCRIPTS.some((script) => script.test(left) && script.test(right));
}

function isLetter(cluster: string): boolean {
  return /^[\p{Lu}\p{Ll}]\p{M}*$/u.test(cluster);
}

function isSmall(cluster: string): boolean {
  return /^\p{Ll}/u.test(cluster);
}
