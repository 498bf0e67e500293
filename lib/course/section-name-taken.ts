import { AppError } from '@/lib/access/errors';

export const sectionNameTaken = (name: string): AppError =>
  new AppError('INVALID', 'Nothing was changed.', {
    fields: { name: `There is a section “${name}” already. Choose another name.` },
  });
