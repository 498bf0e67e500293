import Link from 'next/link';
import { Notice } from '@/app/_ui/Notice';
import type { showReleasePlan } from '@/lib/release/show-release-plan';
import { counted } from '@/shared/text/number';

type Rows = Awaited<ReturnType<typeof showReleasePlan>>['rows'];

/** A warning where a level would go out that only one of two markers gave; it says which level that is. */
export function UnsettledNotice({ rows, agreement }: { rows: Rows; agreement: string }) {
  const differing = rows.filter((row) => row.differing > 0).length;
  const waiting = rows.filter((row) => row.secondWaits).length;
  if (differing + waiting === 0) return null;
  return (
    <Notice kind="warning" title="Two markers">
      {differing > 0 && (
        <p>
          {counted(differing, 'proof')} on this page: the two markers differ and nobody has settled it. In a release the
          first marker’s level would count. <Link href={agreement}>Settle them first</Link>, or tick them knowingly.
        </p>
      )}
      {waiting > 0 && (
        <p>
          {counted(waiting, 'proof')} on this page: the second marker has not finished. In a release the first marker’s
          level would count.
        </p>
      )}
    </Notice>
  );
}
