/** Joins class names, skipping empty ones. @example classes('button', main && 'button-main') */
export function classes(...names: (string | false | null | undefined)[]): string | undefined {
  return names.filter(Boolean).join(' ') || undefined;
}
