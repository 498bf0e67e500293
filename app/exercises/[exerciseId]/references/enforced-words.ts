import { counted } from '@/shared/text/number';

type Enforced = {
  number: number;
  fresh: boolean;
  compared: { proofLines: number; outsideBefore: number; outsideNow: number; newlyCompared: number } | null;
};

/** What putting the references in force did, in words. */
export function enforcedWords({ number, fresh, compared }: Enforced): string {
  if (!fresh) return 'Nothing has changed since the last set, so nothing was compared again.';
  if (!compared || compared.proofLines === 0)
    return `Set ${number} is in force. No line of a proof has a reference in it, so nothing was compared.`;
  const { proofLines, outsideBefore, outsideNow, newlyCompared } = compared;
  const first = newlyCompared > 0 ? `, ${newlyCompared} of them for the first time` : '';
  return `Set ${number} is in force. ${counted(proofLines, 'line')} of proofs ${proofLines === 1 ? 'was' : 'were'} compared with it${first}: ${counted(outsideNow, 'remark')} outside a tolerance now, ${outsideBefore} before.`;
}
