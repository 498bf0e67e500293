/** A role as it stands in a list. */
export function roleWords(role: string): string {
  return words[role] ?? role;
}

const words: Record<string, string> = { instructor: 'Instructor', assistant: 'Assistant', student: 'Student' };

export const roleChoices = [
  { value: 'student', label: 'Student', hint: 'spaces lines and sends proofs; doesn’t see other students’ work.' },
  { value: 'assistant', label: 'Assistant', hint: 'sees everyone’s proofs, writes notes and gives marks.' },
  {
    value: 'instructor',
    label: 'Instructor',
    hint: 'all of that, and plans exercises, releases marks and manages people.',
  },
];
