import { basename, join } from 'node:path';
import { type Assessment, assess } from '../../core/assess.ts';
import type { Severity } from '../../core/audit/types.ts';
import { parseProject, problemSentence } from '../../core/document/load.ts';
import { swapAlternative } from '../../core/edit/alternatives.ts';
import type { Project } from '../../core/model/project.ts';
import { profileSvg } from '../../core/report/profileSheet.ts';
import { cableScheduleCsv, pathLossCsv } from '../../core/report/schedules.ts';
import { installSheet } from '../../core/report/sheet.ts';
import { textReport } from '../../core/report/text.ts';
import { AUDIT_USAGE, type AuditArguments, parseAuditArguments } from './auditArguments.ts';
import { sheetPdf } from './pdf.ts';

/** The machine as the command needs it; errors carry a sentence for the user. */
export interface AuditMachine {
  /** The document's text. */
  readonly readFile: (path: string) => Promise<string>;
  /** Writes a whole file, making its folder where there is none. */
  readonly writeFile: (path: string, content: Uint8Array | string) => Promise<void>;
  /** Today as an ISO date. */
  readonly now: () => string;
}

export interface AuditOutcome {
  /** 0 done, 1 findings at or above the level asked for, 2 bad input. */
  readonly exitCode: 0 | 1 | 2;
  readonly stdout: string;
  readonly stderr: string;
}

/** The audit command: reads a document, assesses it, prints and writes what was asked for. Never throws. */
export async function runAudit(argv: readonly string[], machine: AuditMachine): Promise<AuditOutcome> {
  try {
    const options = parseAuditArguments(argv);
    if (options === null) return { exitCode: 0, stdout: AUDIT_USAGE, stderr: '' };
    const { project, notes } = await readProject(options, machine);
    const assessment = assess(project);
    const written = options.out === null ? [] : await writeAll(options.out, project, assessment, options, machine);
    const remarks = [...notes, ...written.map((path) => `Wrote ${path}`)].map((line) => `${line}\n`).join('');
    return {
      exitCode: fails(assessment, options.failOn) ? 1 : 0,
      stdout: options.json ? assessmentJson(project, assessment) : textReport(project, assessment, options.preferences),
      stderr: remarks,
    };
  } catch (error) {
    return { exitCode: 2, stdout: '', stderr: `${error instanceof Error ? error.message : String(error)}\n` };
  }
}

async function readProject(
  options: AuditArguments,
  machine: AuditMachine,
): Promise<{ project: Project; notes: readonly string[] }> {
  const loaded = parseProject(await machine.readFile(options.file));
  if (!loaded.ok) {
    const sentences = loaded.problems.map((problem) => `${basename(options.file)}: ${problemSentence(problem)}`);
    throw new Error(sentences.join('\n'));
  }
  return { project: layoutOf(loaded.project, options.alternative), notes: loaded.notes };
}

/** The document with the named layout as the current one. */
function layoutOf(project: Project, name: string | null): Project {
  if (name === null || name === project.layoutName) return project;
  const chosen = project.alternatives.find((alternative) => alternative.name === name);
  if (chosen) return swapAlternative(project, chosen.id);
  const names = [project.layoutName, ...project.alternatives.map((alternative) => alternative.name)];
  throw new Error(`There is no layout "${name}". The document has ${names.map((each) => `"${each}"`).join(', ')}.`);
}

async function writeAll(
  folder: string,
  project: Project,
  assessment: Assessment,
  options: AuditArguments,
  machine: AuditMachine,
): Promise<string[]> {
  const { paper, preferences } = options;
  const sheet = installSheet(project, assessment, { paper, preferences, date: machine.now() });
  const files: [name: string, content: Uint8Array | string][] = [
    ['install-sheet.pdf', await sheetPdf(sheet)],
    ['cable-schedule.csv', cableScheduleCsv(project, assessment, preferences)],
    ['path-losses.csv', pathLossCsv(project, assessment, preferences)],
    ['profile.svg', profileSvg(project, assessment, paper, preferences)],
    ['assessment.json', assessmentJson(project, assessment)],
  ];
  const paths: string[] = [];
  for (const [name, content] of files) {
    const path = join(folder, name);
    await machine.writeFile(path, content);
    paths.push(path);
  }
  return paths;
}

/** The whole assessment in core's own units, headed by what it is of. */
function assessmentJson(project: Project, assessment: Assessment): string {
  const { boat, layoutName, revision, title } = project;
  return `${JSON.stringify({ title, boat: boat.name, layoutName, revision, ...assessment }, null, 2)}\n`;
}

function fails(assessment: Assessment, level: Severity | null): boolean {
  // The letters are in order of gravity: A is the gravest.
  return (
    level !== null && assessment.findings.some((finding) => finding.overruled === null && finding.severity <= level)
  );
}
