import { basename } from 'node:path';
import { shownName } from './names.ts';

/** Why a file operation failed, as part of a sentence, and what helps. */
interface Reason {
  readonly what: string;
  readonly mend: string;
}

const ELSEWHERE = 'Use Save as and choose another folder';
const DRIVE_GONE: Reason = {
  what: 'the drive does not answer',
  mend: `Connect it again and repeat, or ${ELSEWHERE.charAt(0).toLowerCase()}${ELSEWHERE.slice(1)}.`,
};

/** By the system's own code. */
const REASONS: Readonly<Record<string, Reason>> = {
  ENOENT: {
    what: 'there is no such file or folder',
    mend: 'If it is on a removable or network drive, connect that again.',
  },
  ENOTDIR: { what: 'part of its folder is not a folder', mend: `${ELSEWHERE}.` },
  EACCES: { what: 'permission was refused', mend: 'Check who may write there, or choose another folder.' },
  EPERM: { what: 'the system does not allow it', mend: 'Check who may write there, or choose another folder.' },
  EROFS: { what: 'the drive is read-only', mend: `${ELSEWHERE}.` },
  ENOSPC: { what: 'the disk is full', mend: 'Make room on it, or use Save as and choose another disk.' },
  EDQUOT: {
    what: 'your share of the disk is used up',
    mend: 'Make room in your own folders, or use Save as and choose another disk.',
  },
  EFBIG: { what: 'it is larger than this disk or account allows', mend: 'Use Save as and choose another disk.' },
  EXDEV: { what: 'its folder and the file lie on different drives', mend: `${ELSEWHERE}.` },
  ENAMETOOLONG: { what: 'the name is too long for this disk', mend: 'Use Save as and choose a shorter name.' },
  EINVAL: { what: 'this disk does not take that name', mend: 'Use Save as and choose a plainer name.' },
  EILSEQ: { what: 'this disk does not take that name', mend: 'Use Save as and choose a plainer name.' },
  EISDIR: { what: 'it is a folder', mend: 'Choose a file.' },
  EBUSY: { what: 'another program is holding it', mend: 'Close it there and repeat.' },
  ETXTBSY: { what: 'another program is holding it', mend: 'Close it there and repeat.' },
  ELOOP: { what: 'its links lead in a circle', mend: `${ELSEWHERE}.` },
  EMFILE: { what: 'too many files are open', mend: 'Close other programs and repeat.' },
  ENFILE: { what: 'too many files are open', mend: 'Close other programs and repeat.' },
  ...Object.fromEntries(
    ['EIO', 'ENODEV', 'ENXIO', 'ENOTCONN', 'ESTALE', 'EHOSTDOWN', 'EHOSTUNREACH', 'ETIMEDOUT', 'ENETDOWN'].map(
      (code) => [code, DRIVE_GONE],
    ),
  ),
};

/** A failure whose message is whole sentences for the user; `code` is the system's, empty where it gave none. */
export class FileProblem extends Error {
  readonly code: string;
  constructor(message: string, code = '') {
    super(message);
    this.name = 'FileProblem';
    this.code = code;
  }
}

/** The system's code of an error, such as ENOSPC; empty when it has none. */
export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

/** The reason behind a system's code. An unforeseen one keeps its code for whoever has to look it up. */
export function reasonFor(code: string): Reason {
  return REASONS[code] ?? { what: `the system answered ${code === '' ? 'with a fault of its own' : code}`, mend: '' };
}

/**
 * Sentences for a failed operation on a file: what could not be done and why, what stays, what helps.
 * @param what without its subject, e.g. `could not be saved`
 * @param stays a whole sentence on what is not lost, or empty
 */
export function problemWith(path: string, what: string, error: unknown, stays = ''): FileProblem {
  if (error instanceof FileProblem) return error;
  const code = codeOf(error);
  const { what: why, mend } = reasonFor(code);
  const sentences = [`${shownName(basename(path))} ${what}: ${why}.`, stays, mend];
  return new FileProblem(sentences.filter((sentence) => sentence !== '').join(' '), code);
}
