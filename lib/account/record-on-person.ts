import type { ScopedData } from '@/lib/data';
import type { Act } from '@/lib/data/audit';

/** Writes down an act on a person in every course they are or were in; without any, in the installation's own log. */
export async function recordOnPerson(
  data: ScopedData,
  userId: string,
  act: Pick<Act, 'verb' | 'details'>,
  now: Date,
): Promise<void> {
  const parts = await data.members.everywhere(userId);
  const acts: Act[] = parts.map(({ id, courseId }) => ({ courseId, subject: `member:${id}`, ...act }));
  await data.audit.recordAll(acts.length > 0 ? acts : [{ courseId: null, subject: `user:${userId}`, ...act }], now);
}
