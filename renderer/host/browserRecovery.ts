import type { Recovered, Recovery, Request } from '../../electron/contract.ts';

interface KeptCopy extends Omit<Request<'keepRecovery'>, 'handle'> {
  readonly keptAt: string;
}

const COPIES = 'copies';

/**
 * Recovery copies in the browser's own storage. A document open in some tab holds a lock by its name, which the browser
 * lets go of when the tab closes or crashes; copies whose lock is held are not up for recovery.
 */
export class BrowserRecovery {
  readonly #storage: IDBFactory;
  readonly #locks: LockManager;
  #database: Promise<IDBDatabase> | null = null;
  readonly #held = new Set<string>();

  constructor(storage: IDBFactory, locks: LockManager) {
    this.#storage = storage;
    this.#locks = locks;
  }

  /** Keeps the last state of a document in place of the one kept before. */
  async keep({ documentId, name, title, text }: Request<'keepRecovery'>): Promise<void> {
    this.#hold(documentId);
    const copy: KeptCopy = { documentId, name, title, text, keptAt: new Date().toISOString() };
    await this.#do('readwrite', (copies) => copies.put(copy));
  }

  async drop(documentId: string): Promise<void> {
    await this.#do('readwrite', (copies) => copies.delete(documentId));
  }

  /** The copies nobody has open, the newest first. */
  async list(): Promise<Recovery[]> {
    const copies = await this.#do<KeptCopy[]>('readonly', (store) => store.getAll());
    const held = new Set(((await this.#locks.query()).held ?? []).map(({ name }) => name));
    return copies
      .filter(({ documentId }) => !held.has(lockName(documentId)))
      .sort((a, b) => b.keptAt.localeCompare(a.keptAt))
      .map(({ documentId, name, title, text, keptAt }) => ({
        id: documentId,
        name,
        title,
        keptAt,
        bytes: new Blob([text]).size,
        summary: summaryOf(text),
      }));
  }

  async read(id: string): Promise<Recovered> {
    const copy = await this.#do<KeptCopy | undefined>('readonly', (copies) => copies.get(id));
    if (!copy) throw new Error('That recovery copy is no longer there.');
    // A file handle does not outlive its tab: what is recovered is saved with Save as.
    return { text: copy.text, title: copy.title, name: copy.name, handle: null };
  }

  /** Held until the tab is gone. */
  #hold(documentId: string): void {
    if (this.#held.has(documentId)) return;
    this.#held.add(documentId);
    void this.#locks.request(lockName(documentId), { mode: 'shared' }, () => new Promise(() => {}));
  }

  async #do<T>(mode: IDBTransactionMode, work: (copies: IDBObjectStore) => IDBRequest<T>): Promise<T> {
    this.#database ??= openDatabase(this.#storage);
    const database = await this.#database;
    return settled(work(database.transaction(COPIES, mode).objectStore(COPIES)));
  }
}

const lockName = (documentId: string): string => `backstay-document-${documentId}`;

function openDatabase(storage: IDBFactory): Promise<IDBDatabase> {
  const opening = storage.open('backstay-recovery', 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore(COPIES, { keyPath: 'documentId' });
  return settled(opening);
}

const settled = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () =>
      reject(new Error('The browser’s storage took no recovery copy. Save your work to a file now.'));
  });

/** What a document holds, in a few words; the text may be anything. */
function summaryOf(text: string): string {
  try {
    const { items, runs } = JSON.parse(text) as Record<string, unknown>;
    if (Array.isArray(items) && Array.isArray(runs)) return `${count(items, 'part')}, ${count(runs, 'cable run')}`;
  } catch {
    // Said below.
  }
  return 'Not a whole document';
}

const count = ({ length }: readonly unknown[], noun: string): string => `${length} ${noun}${length === 1 ? '' : 's'}`;
