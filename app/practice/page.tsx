import type { Metadata } from 'next';
import { EyePractice } from '@/app/_bench/eye-practice';
import { Page, PageHeader } from '@/app/_ui/Page';
import { forPage } from '@/lib/http/page';
import { getPractice } from '@/lib/account/practice-results';

export const metadata: Metadata = { title: 'Practice' };

export default async function PracticePage() {
  const { personKey, packs, results } = await forPage(getPractice, {});
  return (
    <Page width="wide">
      <PageHeader
        title="Practice"
        lead="How small a difference can you see? Nothing of this is marked. Your results are kept with your account, and only you can see them: no instructor and no other student."
      />
      <EyePractice packs={packs} personKey={personKey} results={results} save="/api/practice-results" />
    </Page>
  );
}
