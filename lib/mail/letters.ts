import { logError } from '@/lib/log';
import { mailIsSetUp, sendMail, type Letter } from './send';

/** The mail with a link to set a new password. Only the link in it is secret. */
export function passwordLetter({
  to,
  name,
  link,
  expires,
}: {
  to: string;
  name: string;
  link: string;
  expires: string;
}): Letter {
  return {
    to,
    subject: 'Reset your Kerncrit password',
    text: [
      `Dear ${name},`,
      `Someone (probably you) asked to reset your Kerncrit password. Open this address to choose a new one:`,
      link,
      `It works once, until ${expires}. Setting a new password signs you out everywhere.`,
      `If it wasn’t you, do nothing: your password stays the same.`,
    ].join('\n\n'),
  };
}

/** Sent after the fact, so that a change made by another person is noticed. */
export function passwordChangedLetter({ to, name, at }: { to: string; name: string; at: string }): Letter {
  return {
    to,
    subject: 'Your Kerncrit password was changed',
    text: [
      `Dear ${name},`,
      `Your Kerncrit password was changed at ${at}, and all browsers were signed out.`,
      `If it wasn’t you, ask for a new password on the sign-in page at once, and tell your instructor.`,
    ].join('\n\n'),
  };
}

/** To a person whom an instructor added to a course by a roster. */
export function welcomeLetter({
  to,
  name,
  course,
  link,
  expires,
}: {
  to: string;
  name: string;
  course: string;
  link: string;
  expires: string;
}): Letter {
  return {
    to,
    subject: `Your account for ${course}`,
    text: [
      `Dear ${name},`,
      `You have been added to the course “${course}” in Kerncrit. Open this address to choose your password:`,
      link,
      `It works once, until ${expires}. After that, ask for a new one with “Forgotten your password?” on the sign-in page.`,
      `If you don’t belong in this course, do nothing and tell your school.`,
    ].join('\n\n'),
  };
}

/** Before the last day of a course's retention. */
export function retentionLetter({
  to,
  name,
  course,
  until,
  days,
  link,
}: {
  to: string;
  name: string;
  course: string;
  until: string;
  days: number;
  link: string;
}): Letter {
  return {
    to,
    subject: `Retention of ${course} ends on ${until}`,
    text: [
      `Dear ${name},`,
      `The work of the course “${course}” is kept until ${until}, ${days === 0 ? 'which is today' : days === 1 ? 'which is tomorrow' : `${days} days from now`}.`,
      `Nothing is deleted automatically. After that day you can end retention on this page, which removes all students’ names and everything written about their work. If your school’s policy allows it, you can set a later day in the course’s settings instead:`,
      link,
    ].join('\n\n'),
  };
}

/**
 * Informs the owner of an account that its password was changed, where mail is set up. The change is valid whether or
 * not the mail arrives.
 */
export function tellPasswordChanged(person: { emailNorm: string; name: string }, now: Date): void {
  if (!mailIsSetUp()) return;
  const at = `${now.toISOString().slice(0, 16).replace('T', ' ')} UTC`;
  void sendMail(passwordChangedLetter({ to: person.emailNorm, name: person.name, at })).catch(logError);
}
