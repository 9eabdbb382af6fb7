/** Runs work that shares a key one after another, in the order asked; different keys do not wait for each other. */
export class OneAtATime {
  readonly #last = new Map<string, Promise<unknown>>();

  async run<T>(key: string, work: () => Promise<T>): Promise<T> {
    const before = this.#last.get(key) ?? Promise.resolve();
    // What failed before has been answered to whoever asked for it, and holds nobody up.
    const mine = before.catch(() => {}).then(work);
    this.#last.set(key, mine);
    try {
      return await mine;
    } finally {
      if (this.#last.get(key) === mine) this.#last.delete(key);
    }
  }
}
