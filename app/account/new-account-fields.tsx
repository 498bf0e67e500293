import Link from 'next/link';
import { Field } from '@/app/_ui/Field';

/** Name, address and password of a new account. */
export function NewAccountFields() {
  return (
    <>
      <Field
        name="name"
        label="Name"
        hint="As it should appear on the class list. Only instructors and assistants of the course see it."
        autoComplete="name"
      />
      <Field
        name="email"
        label="E-mail address"
        type="email"
        autoComplete="username"
        inputMode="email"
        spellCheck={false}
      />
      <NewPasswordField name="password" label="Password" />
      <p className="hint">
        What is kept about you, for how long, and who can see it: <Link href="/records">records and privacy</Link>.
      </p>
    </>
  );
}

export function NewPasswordField({ name, label }: { name: string; label: string }) {
  return (
    <Field
      name={name}
      label={label}
      type="password"
      autoComplete="new-password"
      hint="At least 10 characters. A few words in a row are good; no signs or figures are asked for."
    />
  );
}
