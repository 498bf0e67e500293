import { CourseBar } from '../_ui/Tabs';
import { Page, PageHeader } from '../_ui/Page';
import { ChartParts } from './chart-parts';
import { FormParts } from './form-parts';
import { SheetParts, TextParts } from './text-parts';

export const metadata = { title: 'Parts' };

/** Every component that pages are made of, to look at. Exists in development only (next.config.mjs). */
export default function Parts() {
  return (
    <>
      <CourseBar
        name="Lettering II, Harbour School"
        current="/parts"
        tabs={[
          { href: '/parts', label: 'Exercises', count: 4 },
          { href: '/parts?class', label: 'Class' },
          { href: '/parts?people', label: 'People', count: 23 },
        ]}
      />
      <Page width="wide">
        <PageHeader
          trail={[
            { href: '/', label: 'Lettering II' },
            { href: '/parts', label: 'Exercises' },
          ]}
          title="Parts"
          lead="What pages are made of, on one page."
        />
        <TextParts />
        <FormParts />
        <SheetParts />
        <ChartParts />
      </Page>
    </>
  );
}
