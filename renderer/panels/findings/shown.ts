import type { Finding, Severity } from '../../../core/audit/types.ts';
import type { Subject } from '../../../core/model/project.ts';

/** Whether a remark is about any of these things. */
export function isAbout({ subjects }: Pick<Finding, 'subjects'>, things: readonly Subject[]): boolean {
  return subjects.some(({ kind, id }) => things.some((thing) => thing.kind === kind && thing.id === id));
}

/** Remarks to list: of one severity, and about what is selected where only those are wanted. */
export function shownFindings(
  findings: readonly Finding[],
  severity: Severity,
  about: readonly Subject[] | null,
): readonly Finding[] {
  return findings.filter((finding) => finding.severity === severity && (about === null || isAbout(finding, about)));
}

/** How many remarks of a severity still stand. */
export function standingCount(findings: readonly Finding[], severity: Severity): number {
  return findings.filter((finding) => finding.severity === severity && finding.overruled === null).length;
}

/** What to say where a severity lists nothing. */
export function emptyWords(findings: readonly Finding[], severity: Severity): string {
  return findings.some((finding) => finding.severity === severity) ? 'None about what is selected.' : 'None.';
}
