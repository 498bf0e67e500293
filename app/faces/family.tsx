import Link from 'next/link';
import type { CatalogueFace } from '@/lib/face/catalogue';
import { examplePack } from '@/lib/face/example-pack';
import { untouchedSpacing } from '@/shared/outline/place-letters';
import { numberText } from '@/shared/text/number';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { Section } from '../_ui/Page';
import { SheetFrame } from '../_ui/SheetFrame';

/** One family: a line in it, its weights or axes, its source and its licence. */
export async function Family({ faces }: { faces: CatalogueFace[] }) {
  const shown = faces.find((face) => !face.italic && face.weight === 400) ?? faces[0]!;
  const pack = await examplePack(shown.key, 'Hamlet of Navy');
  return (
    <Section title={shown.axes.length > 0 ? `${shown.family}, variable` : shown.family}>
      <SheetFrame ground="light">
        <LineDrawing
          pack={pack}
          spacing={untouchedSpacing(pack)}
          room={pack.unitsPerEm * 8}
          label={`A line in ${shown.family} ${shown.style}`}
        />
      </SheetFrame>
      <dl className="facts">
        <dt>Kind</dt>
        <dd>{shown.design}</dd>
        {shown.axes.length > 0 ? (
          <>
            <dt>Axes</dt>
            <dd>
              {shown.axes
                .map((axis) => `${axisName(axis.tag)} ${numberText(axis.least)}–${numberText(axis.most)}`)
                .join(', ')}
            </dd>
          </>
        ) : (
          <>
            <dt>Weights</dt>
            <dd>{weights(faces, false)}</dd>
          </>
        )}
        {faces.some((face) => face.italic) && shown.axes.length === 0 && (
          <>
            <dt>Italic</dt>
            <dd>{weights(faces, true)}</dd>
          </>
        )}
        <dt>Licence</dt>
        <dd>
          <Link href={`/faces/${shown.key}`}>{shown.licence.name}</Link>
        </dd>
        <dt>Made by</dt>
        <dd>{makerOf(shown.licence.attribution)}</dd>
        <dt>From</dt>
        <dd>
          {shown.source.package} {shown.source.version}
        </dd>
      </dl>
    </Section>
  );
}

function weights(faces: CatalogueFace[], italic: boolean): string {
  return faces
    .filter((face) => face.italic === italic)
    .map((face) => face.weight)
    .join(', ');
}

const axisNames: Record<string, string> = {
  opsz: 'optical size',
  wght: 'weight',
  wdth: 'width',
  slnt: 'slant',
  ital: 'italic',
};
const axisName = (tag: string) => axisNames[tag] ?? tag;

/**
 * Who made a face: the first holder that its notices name, without year, address and licence. Some files repeat their
 * notice for every weight, after the file's name.
 *
 * @example makerOf('Copyright (c) 2010-2011 by A. Maker (a@maker.example) with Reserved Font Name "A".') // 'A. Maker'
 */
export function makerOf(attribution: string): string {
  const holders = attribution.split(/(?=Copyright)/).map((notice) =>
    notice
      .replace(/^Copyright\s*(\(c\)|©)?\s*/i, '')
      .replace(/^[\d\s,–-]+/, '')
      .replace(/^by\s+/i, '')
      .replace(/\s*\([^)]*(@|\.)[^)]*\)/g, '')
      .replace(/[\s,.]*(with Reserved Font Name|Licensed under|All rights reserved|<http|https?:)[\s\S]*$/i, '')
      .replace(/\s*\S+\.(ttf|otf):\s*$/, '')
      .replace(/^The (.+ Authors)$/, '$1')
      .replace(/[\s,]+$/, '')
      .trim(),
  );
  return holders.find((holder) => holder !== '') ?? attribution;
}
