import { HtmlValidate } from 'html-validate';

/** Conformance with the HTML standard as html-validate reads it; no matters of taste. */
const validator = new HtmlValidate({ extends: ['html-validate:standard'] });

/**
 * The framework writes `as="style"` on the style sheet of a part that is loaded later; browsers pass over it, and it
 * can't be changed from here.
 */
const ofFramework = /^"as" attribute cannot be used on <link>/;

/** What is wrong with a page as the server sent it. */
export async function htmlFaults(html: string): Promise<string[]> {
  const { results } = await validator.validateString(html);
  return results.flatMap(({ messages }) =>
    messages
      .filter(({ message }) => !ofFramework.test(message))
      .map(({ ruleId, message, selector }) => `html ${ruleId}: ${message} (${selector ?? 'page'})`),
  );
}
