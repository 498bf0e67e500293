'use client';
import { Button, ButtonLink } from '@/app/_ui/Button';
import { Notice } from '@/app/_ui/Notice';
import { Section } from '@/app/_ui/Section';
import { Table } from '@/app/_ui/Table';
import type { RosterLink } from '@/shared/schemas/roster';

type Props = { courseId: string; said: string; links: readonly RosterLink[]; byMail: boolean; expires: string };

/** What came of it; without mail, the links to hand over, each to its person. */
export function Links({ courseId, said, links, byMail, expires }: Props) {
  return (
    <>
      <Notice live="polite" title="Done">
        {said}
      </Notice>
      {byMail && (
        <p>Letters with links are on their way. Whoever gets none asks for one by “Forgotten?” on the sign-in page.</p>
      )}
      {links.length > 0 && (
        <Section
          title="Links to hand over"
          id="links"
          lead={`Each works once, until ${expires}, and lets whoever holds it set the password of that person: give it to nobody else. They can’t be shown again; on a person’s page you can make a new one.`}
        >
          <div className="actions">
            <Button kind="usual" onClick={() => window.print()}>
              Print this list
            </Button>
          </div>
          <Table caption="Links to set a password">
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
      )}
      <div className="actions">
        <ButtonLink kind="main" href={`/courses/${courseId}/people`}>
          To the people of the course
        </ButtonLink>
      </div>
    </>
  );
}
