/** Lets one holder at a time through, in the order of asking. */
export class Mutex {
  #last: Promise<void> = Promise.resolve();

  /** Waits for its turn; the returned function passes it on, and does so once however often it is called. */
  async take(): Promise<() => void> {
    let pass = () => {};
    const before = this.#last;
    this.#last = new Promise((resolve) => {
      pass = resolve;
    });
    await before;
    return pass;
  }

  async run<T>(work: () => Promise<T>): Promise<T> {
    const pass = await this.take();
    try {
      return await work();
    } finally {
      pass();
    }
  }
}
