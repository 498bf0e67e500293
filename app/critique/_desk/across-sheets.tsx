'use client';
import Link from 'next/link';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import type { AcrossFault, AcrossLine, AcrossVersion } from '@/shared/critique/desk';
import { faultWords } from '@/shared/critique/faults';
import { lettersOf, spacedLetters } from '@/shared/critique/run';
import type { Size } from '@/shared/schemas/spacing';
import { counted, withUnit } from '@/shared/text/number';
import { ChosenPlace, marksOf } from './sheet';
import type { Looks } from '@/shared/line/looks';
import { quoted } from '@/shared/text/quoted';
import { groundOf } from './looks';
import style from './desk.module.css';

export const sizes = {
  true: { label: 'true size', by: 1 },
  half: { label: 'half of it', by: 0.5 },
  twice: { label: 'twice of it', by: 2 },
} as const;
export type SizeName = keyof typeof sizes;

type Props = {
  lines: readonly AcrossLine[];
  versions: readonly AcrossVersion[];
  chosen: AcrossFault | null;
  deviations: boolean;
  size: SizeName;
  first: number;
  looks: Looks;
  decided: Readonly<Record<string, 'left' | 'passed'>>;
};

/** All spacings below each other at one size, on one sheet: one sheet for each version of the line that was sent. */
export function AcrossSheets({ lines, versions, size, ...rest }: Props) {
  const shown = versions.filter(({ id }) => lines.some(({ specimenVersionId }) => specimenVersionId === id));
  return shown.map((version) => (
    <SheetFrame
      key={version.id}
      ground={groundOf(rest.looks, version.ground)}
      scrolls
      caption={
        <>
          {sizes[size].label === 'true size'
            ? 'True size'
            : `${withUnit(version.size.value * sizes[size].by, version.size.unit, 1)}, ${sizes[size].label}`}
          , {withUnit(version.size.value, version.size.unit)}
          {shown.length > 1 && `, version ${version.number} of the line`}
        </>
      }
    >
      <ol className={style.acrossList} start={rest.first}>
        {lines
          .filter(({ specimenVersionId }) => specimenVersionId === version.id)
          .map((line) => (
            <Row
              key={line.token}
              line={line}
              version={version}
              size={{ ...version.size, value: version.size.value * sizes[size].by } as Size}
              {...rest}
            />
          ))}
      </ol>
    </SheetFrame>
  ));
}

type RowProps = Omit<Props, 'lines' | 'versions' | 'size' | 'first'> & {
  line: AcrossLine;
  version: AcrossVersion;
  size: Size;
};

function Row({ line, version, size, chosen, deviations, decided, looks }: RowProps) {
  const { pack, text } = version;
  const letters = spacedLetters(pack);
  const here = chosen
    ? line.notes.filter(({ fromPair, toPair }) => fromPair === chosen.first && toPair === chosen.last)
    : [];
  return (
    <li className={style.acrossRow}>
      <LineDrawing
        pack={pack}
        spacing={line.spacing}
        size={size}
        label={`${text}, set by ${line.shownAs}`}
        marks={deviations ? marksOf(line.faults) : []}
        looks={looks}
        chosen={chosen?.first ?? null}
        behind={chosen && <ChosenPlace pack={pack} spacing={line.spacing} run={chosen} />}
      />
      <p className="sheet-label">
        <Link href={`/critique/${line.token}/${version.specimenId}`} prefetch={false}>
          {line.shownAs}
        </Link>
        {line.notes.length > 0 && (
          <>
            {' '}
            · {counted(line.notes.length, 'note')}
            {here.length > 0 && <>, here: {quoted(here[0]!.body)}</>}
          </>
        )}
        {decided[line.token] && <strong> · {decided[line.token] === 'left' ? 'remark left' : 'passed over'}</strong>}
        {deviations && (
          <>
            {' '}
            ·{' '}
            {line.faults.length === 0
              ? 'nothing conspicuous'
              : line.faults.map((fault) => `${lettersOf(letters, fault)} ${faultWords[fault.fault]}`).join('; ')}
          </>
        )}
      </p>
    </li>
  );
}
