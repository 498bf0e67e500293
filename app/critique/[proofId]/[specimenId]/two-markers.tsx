import Link from 'next/link';
import { Notice } from '@/app/_ui/Page';
import type { CritiqueLine } from '@/lib/review/desk';

type Props = { line: Pick<CritiqueLine, 'two' | 'proof'>; agreement: string };

/** What it means here that two people mark this proof; empty where only one does. */
export function TwoMarkers({ line: { two, proof }, agreement }: Props) {
  if (two.state === 'none') return null;
  if (two.state === 'done')
    return (
      <Notice>
        <p>
          Two people have marked this proof, and this is the {two.slot} marking. Their marks remain as given;{' '}
          <Link href={`${agreement}/${proof.token}`}>both are shown side by side</Link>, where a difference is settled.
        </p>
      </Notice>
    );
  if (two.sight === 'none')
    return (
      <Notice>
        Two people mark this proof independently. Until both have finished, their marks and notes are hidden from
        everyone else. To be the second marker, start from the second marking page.
      </Notice>
    );
  return (
    <Notice>{`Two people mark this proof without each other, and this is the ${two.slot} marking. The other’s marks and notes are hidden until both have finished; so are yours for them. Both markers’ notes go out with the release.`}</Notice>
  );
}
