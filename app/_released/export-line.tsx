import { Fragment } from 'react';
import { buttonClasses } from '@/app/_ui/Button';
import { Disclosure } from '@/app/_ui/Disclosure';
import { holdsOutlines, type SpacingFormat, spacingFormats } from '@/shared/schemas/export';
import { withUnit } from '@/shared/text/number';

/** Exports one line as a file. Its outlines come from the face, so the person confirms the licence first. */
export function ExportLine({ proofId, specimenId, text }: { proofId: string; specimenId: string; text: string }) {
  const address = `/api/exports/spacing/${encodeURIComponent(proofId)}/${encodeURIComponent(specimenId)}`;
  const boxOf = (format: SpacingFormat) => `licence-${format}-${specimenId}`;
  return (
    <Disclosure summary={<>Export “{text}”</>}>
      <p>
        {formats(false).map((format, index) => (
          <Fragment key={format}>
            {index > 0 && ' and '}
            <a href={`${address}?as=${format}`} download>
              {names[format]}
            </a>
          </Fragment>
        ))}{' '}
        hold the spacing alone, without the letters.
      </p>
      {formats(true).map((format) => (
        <form key={format} action={address} method="get">
          <input type="hidden" name="as" value={format} />
          <p className="note-size">
            {names[format]} holds the outlines of the letters, which belong to the face. A face needs a licence that
            allows this use; the licence is named in the file. If in doubt, ask the person responsible for faces at your
            school.
          </p>
          <p className="choice">
            <input type="checkbox" id={boxOf(format)} name="licence" value="read" required />{' '}
            <label htmlFor={boxOf(format)}>I have read the licence of the face, and it allows this.</label>
          </p>
          <button type="submit" className={buttonClasses({ small: true })}>
            {names[format]} with outlines
          </button>
        </form>
      ))}
    </Disclosure>
  );
}

const names: Record<SpacingFormat, string> = { svg: 'SVG', css: 'CSS', json: 'JSON' };
const formats = (withOutlines: boolean) => spacingFormats.filter((format) => holdsOutlines[format] === withOutlines);

type Props = {
  /** Where the file is, and what its address needs besides paper and licence. */
  action: string;
  fields?: Record<string, string>;
  summary: string;
  button: string;
};

/**
 * Exports a critique sheet, or a set of them, as PDF. The outlines come from the faces, so the person confirms their
 * licences first.
 */
export function TakeSheet({ action, fields = {}, summary, button }: Props) {
  const id = `sheet-${action.replace(/\W+/g, '-')}`;
  return (
    <Disclosure summary={summary}>
      <form action={action} method="get">
        {Object.entries(fields).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        <p>
          Each line at its true size, with its notes in the margin. Print it at {withUnit(100, '%')}, not fitted to the
          paper; a rule at the foot of each page shows whether it came out right.
        </p>
        <p className="choice">
          <label htmlFor={`${id}-paper`}>Paper</label>{' '}
          <select id={`${id}-paper`} name="paper" defaultValue="a4">
            <option value="a4">A4</option>
            <option value="letter">US Letter</option>
          </select>
        </p>
        <p className="note-size">
          The outlines of the letters belong to their faces. A face needs a licence that allows this use; the licences
          are named on the sheet. If in doubt, ask the person responsible for faces at your school.
        </p>
        <p className="choice">
          <input type="checkbox" id={`${id}-licence`} name="licence" value="read" required />{' '}
          <label htmlFor={`${id}-licence`}>I have read the licences of the faces, and they allow this.</label>
        </p>
        <button type="submit" className={buttonClasses({ small: true })}>
          {button}
        </button>
      </form>
    </Disclosure>
  );
}
