/** Joins class names and leaves out what is not wanted. @example classes('button', main && 'button-main') */
export function classes(...names: (string | false | null | undefined)[]): string | undefined {
  return names.filter(Boolean).join(' ') || undefined;
}
