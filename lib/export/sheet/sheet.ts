import type { DrawnLine } from '@/lib/release/released';
import type { NoteEntryView } from '@/shared/schemas/note';
import type { ReleaseSnapshot } from '@/shared/schemas/release';

/** The whole content of one student's critique sheet. */
export type Sheet = {
  course: string;
  exercise: string;
  round: { number: number; title: string };
  /** The student's name, or the alias where names are hidden. */
  who: string;
  proof: number;
  /** Null where it would identify the student. */
  received: string | null;
  /** When it went out, or that it has not. */
  state: string;
  preview: boolean;
  reasoning: string;
  snapshot: ReleaseSnapshot;
  answers: Readonly<Record<string, NoteEntryView[]>>;
  /** The lines of the proof, in order, with the licence of each one's face. */
  lines: (DrawnLine & { licence: string })[];
};
