import type { Metadata } from 'next';
import { forPage } from '@/lib/http/page';
import { getPointing } from '@/lib/wall/pointing';
import { Pointer } from '../_pointer/pointer';

export const metadata: Metadata = { title: 'Point at a gap', referrer: 'no-referrer', robots: { index: false } };

/** The short link of a wall, for phones that are not signed in. A wrong code and an ended wall are both not found. */
export default async function PointPage({ params }: { params: Promise<{ code: string }> }) {
  const { code } = await params;
  const shown = await forPage(getPointing, { code });
  return <Pointer code={shown.code} packs={shown.packs} first={shown.state} />;
}
