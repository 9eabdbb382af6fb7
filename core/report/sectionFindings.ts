import type { Finding } from '../audit/types.ts';
import { formatText } from '../units/format.ts';
import type { SheetContext } from './context.ts';
import type { SheetFinding, SheetSection } from './types.ts';
import { subjectLabel } from './words.ts';

const STRENGTH_WORDS = {
  law: 'law',
  guide: 'guidance',
  race: 'race rule',
  maker: 'maker’s figure',
  practice: 'common practice',
  computed: 'computed',
} as const;

/** Findings in order of class, each standing alone. */
export function findingSection(context: SheetContext): SheetSection {
  return {
    id: 'findings',
    title: 'Findings',
    page: 'flow',
    ownPage: false,
    blocks: [
      {
        kind: 'paragraph',
        text:
          'A: safety, before use. B: soon. C: note. Each stands alone. A finding is what the stated facts and figures ' +
          'show; what nobody stated or saw cannot be found here.',
        tone: 'plain',
      },
      {
        kind: 'findings',
        items: sortedFindings(context.assessment.findings).map((finding) => sheetFinding(context, finding)),
        empty: 'No findings. That says the stated facts meet the rules checked, not that nothing is wrong.',
      },
    ],
  };
}

/** A before B before C; within a class as the engine numbered them. */
export function sortedFindings(findings: readonly Finding[]): Finding[] {
  return findings.toSorted((a, b) => (a.severity < b.severity ? -1 : a.severity > b.severity ? 1 : 0));
}

export function sheetFinding(context: SheetContext, finding: Finding): SheetFinding {
  const { project, preferences } = context;
  const { overruled } = finding;
  return {
    mark: finding.mark,
    severity: finding.severity,
    title: finding.title,
    concerns: [...new Set(finding.subjects.map((subject) => subjectLabel(project, subject)))].join(', '),
    measured: formatText(finding.measured, preferences),
    limit: formatText(finding.limit, preferences),
    authority: authorityText(finding),
    action: formatText(finding.action, preferences),
    overruled:
      overruled === null ? null : overruled.by === '' ? overruled.reason : `${overruled.reason} (${overruled.by})`,
  };
}

/** Whose rule, and how binding, said once. */
function authorityText({ authority }: Finding): string {
  const strength = STRENGTH_WORDS[authority.strength];
  return authority.name.toLowerCase().includes(strength) ? authority.name : `${authority.name} (${strength})`;
}
