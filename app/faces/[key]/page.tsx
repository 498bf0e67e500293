import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { listFaces } from '@/lib/face/catalogue';
import { examplePack } from '@/lib/face/example-pack';
import { untouchedSpacing } from '@/shared/outline/place-letters';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { Page, PageHeader, Section } from '@/app/_ui/Page';
import { SheetFrame } from '../../_ui/SheetFrame';
import { makerOf } from '../family';

type Props = { params: Promise<{ key: string }> };

const faceOf = (key: string) => listFaces().find((face) => face.key === key);

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const face = faceOf((await params).key);
  return { title: face ? `${face.family} and its licence` : 'Not here' };
}

/** One family: every weight of it in a line, and its licence in full. */
export default async function FacePage({ params }: Props) {
  const face = faceOf((await params).key);
  if (!face) notFound();
  const siblings = listFaces().filter((one) => one.source.package === face.source.package);
  const lines = await Promise.all(
    siblings.map(async (one) => ({ one, pack: await examplePack(one.key, 'Hamlet of Navy') })),
  );
  return (
    <Page>
      <PageHeader
        trail={[{ href: '/faces', label: 'Faces and licences' }]}
        title={face.family}
        lead={makerOf(face.licence.attribution)}
      />
      <SheetFrame ground="light">
        {lines.map(({ one, pack }) => (
          <div key={one.key}>
            <p className="sheet-label">{one.style}</p>
            <LineDrawing
              pack={pack}
              spacing={untouchedSpacing(pack)}
              room={pack.unitsPerEm * 9}
              label={`A line in ${one.family} ${one.style}`}
            />
          </div>
        ))}
      </SheetFrame>
      <Section
        title={face.licence.name}
        lead={
          <>
            From the package {face.source.package} {face.source.version}. The text below is the one that came with it.
          </>
        }
      >
        <pre className="licence" tabIndex={0}>
          {face.licence.text}
        </pre>
      </Section>
    </Page>
  );
}
