'use client';
import { Fragment, useContext } from 'react';
import { FormContext } from '@/app/_ui/form-context';

type Props = { saved: { name: string; label: string; value: string }[] };

/** After a conflict: the saved values of the fields that differ from what was typed here. */
export function SavedNow({ saved }: Props) {
  const state = useContext(FormContext);
  const refused = state.status === 'failed' && Object.keys(state.fields).length === 0;
  const differs = refused
    ? saved.filter(
        ({ name, value }) =>
          state.values[name] !== undefined && String(state.values[name]).replaceAll('\r\n', '\n') !== value,
      )
    : [];
  if (differs.length === 0) return null;
  return (
    <div className="notice">
      <p>
        <strong>Just saved by another person</strong>
      </p>
      <dl className="facts">
        {differs.map(({ name, label, value }) => (
          <Fragment key={name}>
            <dt>{label}</dt>
            <dd>{value === '' ? 'empty' : value}</dd>
          </Fragment>
        ))}
      </dl>
    </div>
  );
}
