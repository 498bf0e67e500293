import type { ProofInHand } from '@/lib/critique/proof-in-hand';
import { firstSlot } from '@/lib/critique/mark-tasks';

type Note = { taskId: string | null; authorId: string | null };

/**
 * Whether a note may be read by whoever has the proof before them. While two mark it, each reads the notes of their own
 * marking and those they wrote; a note from before any marking belongs to the first.
 */
export function mayBeRead(
  note: Note,
  { sight, slot, task, me }: Pick<ProofInHand, 'sight' | 'slot' | 'task' | 'me'>,
): boolean {
  if (sight === 'all' || note.authorId === me.id) return true;
  if (sight === 'none') return false;
  return note.taskId === (task?.id ?? null) || (slot === firstSlot && note.taskId === null);
}
