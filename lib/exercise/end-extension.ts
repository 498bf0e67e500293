import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { endExtensionInput } from '@/shared/schemas/round';

/** Takes a student's own due date away; the round's holds again. */
export const endExtension = operation({
  name: 'end-extension',
  allow: 'exercise:plan',
  input: endExtensionInput,
  run: async ({ data }, { extensionId }) => {
    if (!(await data.rounds.endExtension(extensionId))) throw notFound();
    return { extensionId };
  },
});
