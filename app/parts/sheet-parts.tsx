import { untouchedSpacing } from '@/shared/outline/place-letters';
import { drawnPack } from '@/tests/fixtures/drawn-pack';
import { LineDrawing } from '../_line/LineDrawing';
import { LineWhite } from '../_line/LineWhite';
import { Section } from '../_ui/Section';
import { SheetFrame } from '../_ui/SheetFrame';

export function SheetParts() {
  const pack = drawnPack('HOLLAnVOLT');
  const plain = untouchedSpacing(pack);
  const moved = { tracking: -10, offsets: plain.offsets.map((_, index) => (index === 2 ? -80 : index === 5 ? 90 : 0)) };
  const marks = [
    { gap: 2, look: 'tight', strength: 3 },
    { gap: 5, look: 'loose', strength: 2 },
  ] as const;
  return (
    <Section title="Sheets">
      <SheetFrame ground="light" caption="Drawn letters, light ground, with marks and ties">
        <LineDrawing
          pack={pack}
          spacing={moved}
          under={plain}
          marks={[...marks]}
          ties={[
            { from: 2, to: 2, sign: '1' },
            { from: 4, to: 7, sign: '2' },
          ]}
          baseline
        />
      </SheetFrame>
      <SheetFrame ground="dark" caption="True size: 48 px, on dark">
        <LineDrawing pack={pack} spacing={moved} size={{ value: 48, unit: 'px' }} marks={[...marks]} />
      </SheetFrame>
      <SheetFrame ground="light" caption="White between (hatch) and inside (dots)">
        <LineDrawing pack={pack} spacing={moved} behind={<LineWhite pack={pack} spacing={moved} inside />} />
      </SheetFrame>
      <SheetFrame ground="dark" caption="The same on dark">
        <LineDrawing pack={pack} spacing={moved} behind={<LineWhite pack={pack} spacing={moved} inside />} />
      </SheetFrame>
    </Section>
  );
}
