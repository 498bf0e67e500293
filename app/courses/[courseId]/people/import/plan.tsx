'use client';

import { Button, ButtonLink } from '@/app/_ui/Button';
import { Notice, Section } from '@/app/_ui/Page';
import { Table } from '@/app/_ui/Table';
import type { RosterLink, RosterPlan, RosterRow } from '@/shared/schemas/roster';
import { counted } from '@/shared/text/number';

const words: Record<RosterRow['becomes'], string> = {
  'new person': 'a new account',
  invited: 'is invited: has an account',
  'here already': 'here already',
  'was removed': 'stays out',
  fault: 'has to be corrected',
};

/** What will happen with each row; those that need attention come first. */
export function Plan({ plan, byMail }: { plan: RosterPlan; byMail: boolean }) {
  const { counts } = plan;
  const rows = plan.rows.toSorted(
    (one, other) => Number(other.becomes === 'fault') - Number(one.becomes === 'fault') || one.line - other.line,
  );
  return (
    <Section title="What will happen" id="plan">
      <ul>
        <li>
          {counted(counts.newPeople, 'new account')};{' '}
          {byMail
            ? 'each is mailed a link to set a password'
            : 'mail isn’t set up here, so you’ll get a list of links to hand over'}
        </li>
        <li>
          {counted(counts.invited, 'person has', 'people have')} an account here already: you get a link for each, by
          which they join with it
        </li>
        <li>
          {counted(counts.here, 'person is', 'people are')} here already and stay as they are
          {counts.removed > 0 && `; ${counts.removed} were removed and stay out`}
        </li>
        {counts.faults > 0 && (
          <li>
            <strong>
              {counted(counts.faults, 'row has', 'rows have')} to be corrected before anything is imported
            </strong>
          </li>
        )}
      </ul>
      <Table caption={`${counted(rows.length, 'row')}, by line of the text`}>
        <thead>
          <tr>
            <th scope="col" className="number">
              Line
            </th>
            <th scope="col">Name</th>
            <th scope="col">E-mail</th>
            <th scope="col">Role</th>
            <th scope="col">Section</th>
            <th scope="col">What happens</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.line}>
              <td className="number">{row.line}</td>
              <th scope="row">{row.name || '–'}</th>
              <td>{row.email || '–'}</td>
              <td>{row.role}</td>
              <td>{row.section || '–'}</td>
              <td>
                {words[row.becomes]}
                {row.says.map((message) => (
                  <p key={message} className="note-size">
                    {message}
                  </p>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </Table>
    </Section>
  );
}

type Props = {
  courseId: string;
  message: string;
  links: readonly RosterLink[];
  invitations: readonly RosterLink[];
  byMail: boolean;
  expires: string;
};

/** The outcome; without mail, a link for each person, to be passed on. */
export function Links({ courseId, message, links, invitations, byMail, expires }: Props) {
  return (
    <>
      <Notice live="polite" title="Done">
        {message}
      </Notice>
      {byMail && (
        <p>
          Links are being sent by mail. A person who gets none can ask for one by “Forgotten your password?” on the
          sign-in page.
        </p>
      )}
      <LinkList
        id="links"
        title="Links to hand over"
        lead={`Each works once, until ${expires}, and lets its holder set that person’s password: give it to that person only. They can’t be shown again; you can create a new one on the person’s page.`}
        caption="Links to set a password"
        links={links}
      />
      <LinkList
        id="invitations"
        title="People who have an account"
        lead={`They are not in the course yet. Give each their link, until ${expires}: they sign in, open it and accept. It says which role and section they get, so an assistant’s link is for assistants only. It can’t be shown again.`}
        caption="Links to join with the account one has"
        links={invitations}
      />
      <div className="actions">
        <ButtonLink kind="main" href={`/courses/${courseId}/people`}>
          To the people of the course
        </ButtonLink>
      </div>
    </>
  );
}

type ListProps = { id: string; title: string; lead: string; caption: string; links: readonly RosterLink[] };

function LinkList({ id, title, lead, caption, links }: ListProps) {
  if (links.length === 0) return null;
  return (
    <Section title={title} id={id} lead={lead}>
      <div className="actions">
        <Button kind="usual" onClick={() => window.print()}>
          Print this list
        </Button>
      </div>
      <Table caption={caption}>
        <thead>
          <tr>
            <th scope="col">Name</th>
            <th scope="col">E-mail</th>
            <th scope="col">Link</th>
          </tr>
        </thead>
        <tbody>
          {links.map(({ name, email, address }) => (
            <tr key={email}>
              <th scope="row">{name}</th>
              <td>{email}</td>
              <td>
                <code className="whole-address">{address}</code>
              </td>
            </tr>
          ))}
        </tbody>
      </Table>
    </Section>
  );
}
