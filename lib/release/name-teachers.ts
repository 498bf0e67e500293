import type { ScopedData } from '@/lib/data';
import { withNamedAuthors } from '@/lib/reference/named-author';
import type { ReleaseSnapshot } from '@/shared/schemas/release';

/** A snapshot with the names of those whose references it speaks of; a release itself keeps none. */
export async function nameTeachers(data: ScopedData, snapshot: ReleaseSnapshot): Promise<ReleaseSnapshot> {
  const named = await withNamedAuthors(
    data,
    snapshot.lines.map(({ deviations }) => deviations),
  );
  return { ...snapshot, lines: snapshot.lines.map((line, index) => ({ ...line, deviations: named[index] ?? null })) };
}
