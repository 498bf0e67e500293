/** The first notice of an attribution; some files repeat theirs once for every weight, with the file's name before it. */
export function makerOf(attribution: string): string {
  const first = attribution.split(/(?=Copyright)/).find((part) => part.startsWith('Copyright')) ?? attribution;
  return first.replace(/\s*\S+\.(ttf|otf):\s*$/, '').trim();
}
