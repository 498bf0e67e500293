import type { Metadata } from 'next';
import { EyePractice } from '@/app/_bench/eye-practice';
import { Page } from '@/app/_ui/Page';
import { PageHeader } from '@/app/_ui/PageHeader';
import { forPage } from '@/lib/http/page';
import { openPractice } from '@/lib/draft/open-practice';

export const metadata: Metadata = { title: 'Practice' };

export default async function PracticePage() {
  const { personKey, packs } = await forPage(openPractice, {});
  return (
    <Page width="wide">
      <PageHeader title="Practice" lead="How small a fault can you see? Nothing of this is sent or marked; it stays on this device." />
      <EyePractice packs={packs} personKey={personKey} />
    </Page>
  );
}
