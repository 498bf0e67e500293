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
    subject: 'A new password for Kerncrit',
    text: [
      `Dear ${name},`,
      `Someone (probably you) asked to reset your Kerncrit password. Open this address to choose a new one:`,
      link,
      `It works once, and until ${expires}. Setting a new password signs you out everywhere.`,
      `If it wasn’t you, do nothing: your password stays the same.`,
    ].join('\n\n'),
  };
}

/** Sent after the fact, so that a change made by another person is noticed. */
export function passwordChangedLetter({ to, name, at }: { to: string; name: string; at: string }): Letter {
  return {
    to,
    subject: 'Your password for Kerncrit was changed',
    text: [
      `Dear ${name},`,
      `your password was changed at ${at}, and all browsers were signed out.`,
      `If this was not you, ask for a new password on the sign-in page at once, and tell your instructor.`,
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
      `It works once, and until ${expires}. After that, ask for a new one with “Forgotten your password?” on the sign-in page.`,
      `If you do not belong in this course, do nothing and tell the school.`,
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
    subject: `The work of ${course} is kept until ${until}`,
    text: [
      `Dear ${name},`,
      `the work of the course “${course}” is kept until ${until}, ${days === 0 ? 'which is today' : days === 1 ? 'which is tomorrow' : `${days} days from now`}.`,
      `Nothing is deleted by itself. After that day you can end retention on this page, which takes the names of all students and what was written off the work; or set a later day in the course's settings, if your school's rule allows it:`,
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
