import { buttonClasses } from '@/app/_ui/Button';
import { Disclosure } from '@/app/_ui/Disclosure';
import { holdsOutlines, type SpacingFormat, spacingFormats } from '@/shared/schemas/export';
import { withUnit } from '@/shared/text/number';

type Line = { specimenId: string; text: string; words: string };

/**
 * Exports the lines of a proof as files, once for the page. Outlines come from the face, so the person confirms the
 * licence first.
 */
export function ExportLines({ proofId, lines }: { proofId: string; lines: readonly Line[] }) {
  const addressOf = ({ specimenId }: Line) =>
    `/api/exports/spacing/${encodeURIComponent(proofId)}/${encodeURIComponent(specimenId)}`;
  const [outlined, plain] = [formats(true), formats(false)];
  const box = `licence-${proofId}`;
  return (
    <Disclosure summary="The spacing of a line as a file">
      <form method="get">
        <p>
          {listed(plain)} hold the spacing alone, without the letters. {listed(outlined)} holds the outlines of the
          letters, which belong to the face.
        </p>
        <input type="hidden" name="as" value={outlined[0]} />
        <p className="note-size">
          A face needs a licence that allows this use; the licence is named in the file. If in doubt, ask the person
          responsible for faces at your school.
        </p>
        <p className="choice">
          <input type="checkbox" id={box} name="licence" value="read" required />{' '}
          <label htmlFor={box}>I have read the licence of the face, and it allows this.</label>
        </p>
        <ul className="export-lines">
          {lines.map((line) => (
            <li key={line.specimenId}>
              <span>
                <strong>{line.text}</strong> <span className="quiet">{line.words}</span>
              </span>
              {plain.map((format) => (
                <a key={format} href={`${addressOf(line)}?as=${format}`} download>
                  {names[format]}
                  <span className="visually-hidden">
                    {' '}
                    of “{line.text}”, {line.words}
                  </span>
                </a>
              ))}
              {outlined.map((format) => (
                <button
                  key={format}
                  type="submit"
                  formAction={addressOf(line)}
                  className={buttonClasses({ small: true })}
                >
                  {names[format]} with outlines
                  <span className="visually-hidden">
                    {' '}
                    of “{line.text}”, {line.words}
                  </span>
                </button>
              ))}
            </li>
          ))}
        </ul>
      </form>
    </Disclosure>
  );
}

const listed = (of: readonly SpacingFormat[]) => of.map((format) => names[format]).join(' and ');
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
