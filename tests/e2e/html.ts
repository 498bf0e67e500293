import { HtmlValidate } from 'html-validate';

/** Conformance with the HTML standard as html-validate reads it; no matters of taste. */
const validator = new HtmlValidate({ extends: ['html-validate:standard'] });

/**
 * What the framework writes itself and can't be told otherwise: `as="style"` on the style sheet of a part that is loaded
 * later, which browsers pass over, and an empty address on a form of an action until the page is alive, which means the
 * page itself. (An address given to it would mix up the answers of several forms of one action where there is no
 * JavaScript.)
 */
const ofFramework = /^"as" attribute cannot be used on <link>|^Attribute "action" has invalid value ""/;

/** What is wrong with a page as the server sent it. */
export async function htmlFaults(html: string): Promise<string[]> {
  const { results } = await validator.validateString(html);
  return results.flatMap(({ messages }) =>
    messages
      .filter(({ message }) => !ofFramework.test(message))
      .map(({ ruleId, message, selector }) => `html ${ruleId}: ${message} (${selector ?? 'page'})`),
  );
}
