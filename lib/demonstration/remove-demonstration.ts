import { operation } from '@/lib/access/operation';
import { removeDemonstrationInput } from '@/shared/schemas/demonstration';
import { changeDemonstration } from './change-demonstration';

/** Puts a demonstration aside, or back where it was; nothing is deleted. */
export const removeDemonstration = operation({
  name: 'remove-demonstration',
  allow: 'reference:set',
  input: removeDemonstrationInput,
  run: async (context, { demonstrationId, version, removed }) => ({
    ...(await changeDemonstration(context, demonstrationId, version, { removedAt: removed ? context.now : null })),
    removed,
  }),
});
