import { Disclosure } from '@/app/_ui/Disclosure';
import { buttonClasses } from '@/app/_ui/Button';

/** Takes one line out as a file. Outlines belong to the face, so its licence is asked about before they leave. */
export function ExportLine({ proofId, specimenId, text }: { proofId: string; specimenId: string; text: string }) {
  const address = `/api/exports/spacing/${encodeURIComponent(proofId)}/${encodeURIComponent(specimenId)}`;
  const box = `licence-${specimenId}`;
  return (
    <Disclosure summary={<>Take “{text}” out as a file</>}>
      <p>
        <a href={`${address}?as=css`} download>
          CSS
        </a>{' '}
        and{' '}
        <a href={`${address}?as=json`} download>
          JSON
        </a>{' '}
        hold the spacing alone, without the letters.
      </p>
      <form action={address} method="get">
        <input type="hidden" name="as" value="svg" />
        <p className="note-size">
          SVG holds the outlines of the letters, which belong to the face. A face needs a licence that allows this use;
          the licence is named in the file. If in doubt, ask whoever is responsible for faces at your school.
        </p>
        <p className="choice">
          <input type="checkbox" id={box} name="licence" value="read" required />{' '}
          <label htmlFor={box}>I have read the licence of the face, and it allows this.</label>
        </p>
        <button type="submit" className={buttonClasses({ small: true })}>
          SVG with outlines
        </button>
      </form>
    </Disclosure>
  );
}
