/** Something that the person at the keyboard can put right. Exit code 2 means that the command was not understood. */
export class CommandError extends Error {
  constructor(
    message: string,
    readonly exitCode: 1 | 2 = 1,
  ) {
    super(message);
    this.name = 'CommandError';
  }
}
