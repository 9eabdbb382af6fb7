import { mkdir, writeFile } from 'node:fs/promises';
import { basename, dirname, resolve } from 'node:path';
import { runAudit } from './audit.ts';
import { readDocument } from './documents.ts';

/** npm runs scripts in the package's folder; paths on the command line are meant from where the user stands. */
const HERE = process.env.INIT_CWD ?? process.cwd();

async function read(path: string): Promise<string> {
  try {
    return await readDocument(resolve(HERE, path));
  } catch (error) {
    if (codeOf(error) === 'EISDIR') throw new Error(`${basename(path)} is a folder. Name a .backstay file.`);
    throw error;
  }
}

async function write(path: string, content: Uint8Array | string): Promise<void> {
  const whole = resolve(HERE, path);
  try {
    await mkdir(dirname(whole), { recursive: true });
    await writeFile(whole, content);
  } catch (error) {
    throw new Error(`${path} could not be written (${codeOf(error)}). Choose another folder with --out.`);
  }
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : String(error);
}

/** The day where the user is, which is the day they would write. */
function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

// A reader that stops early (`| head`) is no error.
process.stdout.on('error', (error) => {
  if (codeOf(error) !== 'EPIPE') throw error;
});

const outcome = await runAudit(process.argv.slice(2), { readFile: read, writeFile: write, now: today });
process.stderr.write(outcome.stderr);
process.stdout.write(outcome.stdout);
process.exitCode = outcome.exitCode;
