import { examplePack } from '@/lib/face/example-pack';
import { placeLetters } from '@/shared/outline/place-letters';
import { LineDrawing } from '../_line/LineDrawing';
import { SheetFrame } from '../_ui/SheetFrame';
import type { Drawing, DrawnLine } from './glossary';

/** One or more spacings of a word on a small sheet, all to one scale. */
export async function WordDrawing({ face = 'libre-franklin-500', lines, caption }: Drawing) {
  const set = await Promise.all(lines.map(async (line) => ({ line, pack: await examplePack(face, line.text) })));
  const drawn = set.map(({ line, pack }) => ({ line, pack, spacing: spacingOf(line, pack.builtIn.length) }));
  const room = Math.max(
    ...drawn.map(({ pack, spacing }) => placeLetters(pack, spacing).width),
    drawn[0]!.pack.unitsPerEm * 6.4,
  );
  return (
    <SheetFrame ground="light" caption={caption}>
      <div className="word-lines">
        {drawn.map(({ line, pack, spacing }, index) => (
          <LineDrawing
            key={index}
            pack={pack}
            spacing={spacing}
            room={room}
            label={line.label ?? line.text}
            marks={line.marks}
            looks={{
              white: line.white === 'between' || line.white === 'both',
              counters: line.white === 'inside' || line.white === 'both',
            }}
          />
        ))}
      </div>
    </SheetFrame>
  );
}

function spacingOf(line: DrawnLine, gaps: number) {
  return { tracking: line.tracking ?? 0, offsets: Array.from({ length: gaps }, (_, gap) => line.offsets?.[gap] ?? 0) };
}
