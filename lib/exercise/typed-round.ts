import { AppError } from '@/lib/access/errors';
import type { RoundFields } from '@/lib/data/rounds';
import type { TypedRound } from '@/shared/schemas/exercise';
import { meantTime, type MeantTime } from './local-time';

/**
 * The columns of a round from what was typed, in the course's zone, and what had to be decided about the clocks.
 * @throws AppError INVALID with a text per field when the dates are out of order.
 */
export function typedRound(typed: TypedRound, timeZone: string): { fields: RoundFields; remarks: string[] } {
  const opens = meant(typed.opensLocal, timeZone, 'opensLocal', 'opens');
  const due = meant(typed.dueLocal, timeZone, 'dueLocal', 'due');
  const until = typed.accept === 'until' ? meant(typed.untilLocal, timeZone, 'untilLocal', 'due') : null;
  if (opens && due && due.at <= opens.at)
    throw wrong(
      'dueLocal',
      `The round would be due (${said(due)}) before it opens (${said(opens)}). Give a later due date.`,
    );
  if (typed.accept === 'until' && !due)
    throw wrong('dueLocal', 'A last date for late proofs needs a due date before it.');
  if (typed.accept === 'until' && !until)
    throw wrong('untilLocal', 'Give the last date on which a late proof is taken, or choose another rule.');
  if (until && due && until.at <= due.at)
    throw wrong(
      'untilLocal',
      `The last date for late proofs (${said(until)}) is not after the due date (${said(due)}).`,
    );
  const lateRule = {
    accept: typed.accept,
    untilLocal: until?.local ?? null,
    untilAt: until?.at.toISOString() ?? null,
    deductPerDay: typed.accept === 'none' ? 0 : typed.deductPerDay,
  };
  return {
    fields: {
      title: typed.title,
      opensLocal: opens?.local ?? null,
      opensAt: opens?.at ?? null,
      dueLocal: due?.local ?? null,
      dueAt: due?.at ?? null,
      lateRule,
    },
    remarks: [opens, due, until].flatMap((time) => time?.remark ?? []),
  };
}

function meant(local: string, zone: string, field: string, use: 'opens' | 'due'): MeantTime | null {
  if (local === '') return null;
  try {
    return meantTime(local, zone, use);
  } catch (error) {
    if (error instanceof RangeError) throw wrong(field, error.message);
    throw error;
  }
}

const said = ({ local }: MeantTime): string => local.replace('T', ' ');

const wrong = (field: string, text: string): AppError => new AppError('INVALID', text, { fields: { [field]: text } });
