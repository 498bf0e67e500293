import type { ScopedData } from '@/lib/data';

/** What a teacher is called who is no longer here. */
export const formerTeacher = 'a former instructor';

/** Puts the name of the nearest reference's author into stored figures, which hold the member's id. */
export async function withNamedAuthors<Figures extends { author: string | null }>(
  data: ScopedData,
  figures: readonly (Figures | null)[],
): Promise<(Figures | null)[]> {
  const ids = figures.flatMap((one) => one?.author ?? []);
  const names = ids.length > 0 ? await data.referenceSets.authorNames(ids) : new Map<string, string>();
  return figures.map(
    (one) => one && { ...one, author: one.author === null ? null : (names.get(one.author) ?? formerTeacher) },
  );
}
