import { systemCaller } from '@/lib/access/actor';
import { makeFirstLink } from './make-first-link';

/**
 * For the command that starts the server: the address to print for the first instructor, or null when there is one.
 * @param origin e.g. https://type.school.example
 */
export async function firstLink(origin: string): Promise<{ address: string; expiresAt: Date } | null> {
  const made = await makeFirstLink(systemCaller('printing the first instructor’s link at start'), {});
  return made && { address: `${origin}${made.path}`, expiresAt: made.expiresAt };
}
