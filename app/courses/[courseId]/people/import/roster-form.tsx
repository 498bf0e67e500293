'use client';
import { useState } from 'react';
import { Button } from '@/app/_ui/Button';
import { Checkbox, TextArea } from '@/app/_ui/Field';
import { FormContext } from '@/app/_ui/form-context';
import { FormError, SubmitButton } from '@/app/_ui/Form';
import { useFormAction } from '@/app/_ui/use-form-action';
import { counted } from '@/shared/text/number';
import { decodeText } from '@/shared/text/decode-bytes';
import { newForm } from '@/shared/schemas/form-state';
import type { RosterLink, RosterPlan } from '@/shared/schemas/roster';
import { importRosterAction, previewRosterAction } from '../actions';
import { Links, Plan } from './plan';

type Props = { courseId: string; byMail: boolean };

/** Paste or choose, preview, then import. What was pasted stays in the field whatever happens. */
export function RosterForm({ courseId, byMail }: Props) {
  const [text, setText] = useState('');
  const [remark, setRemark] = useState<string | null>(null);
  const [looked, look] = useFormAction(previewRosterAction, newForm);
  const [imported, bring] = useFormAction(importRosterAction, newForm);
  const [seen, setSeen] = useState('');
  const plan = looked.status === 'done' && looked.shown?.plan ? (JSON.parse(looked.shown.plan) as RosterPlan) : null;
  const current = plan !== null && seen === text;

  async function choose(file: File | undefined) {
    if (!file) return;
    const decoded = decodeText(new Uint8Array(await file.arrayBuffer()));
    setText(decoded.text);
    setRemark(decoded.remark);
  }

  if (imported.status === 'done')
    return (
      <Links
        courseId={courseId}
        message={imported.message}
        links={JSON.parse(imported.shown?.links ?? '[]') as RosterLink[]}
        invitations={JSON.parse(imported.shown?.invitations ?? '[]') as RosterLink[]}
        byMail={imported.shown?.byMail === 'yes'}
        expires={imported.shown?.expires ?? ''}
      />
    );
  return (
    <>
      <FormContext value={looked}>
        <form action={look} onSubmit={() => setSeen(text)} className="form" aria-label="The roster" noValidate>
          <FormError state={looked} />
          <input type="hidden" name="courseId" value={courseId} />
          <div className="field">
            <label htmlFor="roster-file">A file</label>
            <p className="hint" id="roster-file-hint">
              CSV, with commas, semicolons or tabs. It is read in your browser into the field below.
            </p>
            <input
              id="roster-file"
              type="file"
              accept=".csv,.tsv,.txt,text/csv,text/plain"
              aria-describedby="roster-file-hint"
              onChange={(event) => void choose(event.target.files?.[0])}
            />
          </div>
          {remark && <p role="status">{remark}</p>}
          <TextArea
            name="text"
            label="The rows"
            rows={8}
            value={text}
            onChange={(event) => setText(event.target.value)}
            spellCheck={false}
            hint="With the names of the columns first: name (or first name and last name), e-mail, and if you like role (student or assistant) and section. Other columns are left out."
          />
          {plan && current && <Columns plan={plan} />}
          <div className="actions">
            <SubmitButton kind={current && plan.unclear === null ? 'usual' : 'main'} pending="Looking…">
              Preview the import
            </SubmitButton>
          </div>
        </form>
      </FormContext>
      {plan && !current && <p role="status">The rows were changed since; look again before you import.</p>}
      {plan && current && plan.unclear && (
        <p role="status">
          <strong>{plan.unclear}</strong>
        </p>
      )}
      {plan && current && !plan.unclear && <Plan plan={plan} byMail={byMail} />}
      {plan && current && !plan.unclear && (
        <FormContext value={imported}>
          <form action={bring} className="form" aria-label="Import" noValidate>
            <FormError state={imported} />
            <input type="hidden" name="courseId" value={courseId} />
            <input type="hidden" name="text" value={text} />
            {plan.columns.map(({ use }, index) => (
              <input key={index} type="hidden" name="column" value={use} />
            ))}
            {plan.newSections.length > 0 && plan.counts.faults === 0 && (
              <Checkbox
                name="makeSections"
                label={
                  <>
                    Make {counted(plan.newSections.length, 'new section')}: {plan.newSections.join(', ')}
                  </>
                }
              />
            )}
            {plan.counts.faults === 0 && (
              <div className="actions">
                <SubmitButton pending="Importing…">Import</SubmitButton>
              </div>
            )}
          </form>
        </FormContext>
      )}
      {plan && (
        <p>
          <Button
            kind="usual"
            small
            onClick={() => {
              setText('');
              setRemark(null);
            }}
          >
            Start again with an empty field
          </Button>
        </p>
      )}
    </>
  );
}

const uses: readonly [RosterPlan['columns'][number]['use'], string][] = [
  ['ignored', 'left out'],
  ['name', 'name'],
  ['first name', 'first name'],
  ['last name', 'last name'],
  ['email', 'e-mail'],
  ['role', 'role'],
  ['section', 'section'],
];

/** The assumed meaning of each column, to be corrected. */
function Columns({ plan }: { plan: RosterPlan }) {
  return (
    <fieldset className="field">
      <legend>What the columns are</legend>
      <p className="hint">
        Read as separated by {plan.delimiter === '\t' ? 'tabs' : `“${plan.delimiter}”`}
        {plan.hasHead ? '' : ', without names of columns'}.
        {plan.columns.some(({ use }) => use === 'ignored') &&
          ` Left out: ${plan.columns
            .map(({ head, use }, index) => (use === 'ignored' ? head || `column ${index + 1}` : null))
            .filter(Boolean)
            .join(', ')}.`}
      </p>
      {plan.columns.map(({ head, example, use }, index) => (
        <p key={`${index}-${use}`} className="choice">
          <label htmlFor={`column-${index}`}>
            {head || `Column ${index + 1}`}
            {example && <span className="quiet"> (e.g. “{example.slice(0, 40)}”)</span>}
          </label>{' '}
          <select id={`column-${index}`} name="column" defaultValue={use}>
            {uses.map(([value, label]) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </select>
        </p>
      ))}
    </fieldset>
  );
}
