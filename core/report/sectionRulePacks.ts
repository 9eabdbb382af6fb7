import { holdAgainst } from '../rulePacks/holdAgainst.ts';
import { STANDING } from '../rulePacks/packs.ts';
import type { PackResult, RuleResult, Verdict } from '../rulePacks/types.ts';
import { formatText } from '../units/format.ts';
import type { SheetContext } from './context.ts';
import type { Block, SheetSection } from './types.ts';

/** Verdicts in words; the sign only helps the eye. */
export const VERDICT_WORDS: Readonly<Record<Verdict, { readonly sign: string; readonly words: string }>> = {
  met: { sign: '✓', words: 'met' },
  'not-met': { sign: '✗', words: 'not met' },
  'cannot-tell': { sign: '?', words: 'cannot tell' },
  'does-not-apply': { sign: '–', words: 'does not apply' },
};

/** How the text of a rule is known, as printed beside it. */
export const RULE_BASIS_WORDS = {
  read: 'read in the text',
  'second-hand': 'read second-hand',
  memory: 'from memory, not seen',
} as const;

/** `11 met, 8 not met, 8 cannot tell, 6 do not apply`. */
export function countWords({ counts }: Pick<PackResult, 'counts'>): string {
  const apply = counts['does-not-apply'] === 1 ? 'does not apply' : 'do not apply';
  return `${counts.met} met, ${counts['not-met']} not met, ${counts['cannot-tell']} cannot tell, ${counts['does-not-apply']} ${apply}`;
}

/** The rule packs that are switched on, each rule with its verdict and why; nothing where none is on. */
export function rulePacksSection(context: SheetContext): SheetSection {
  const { project, assessment } = context;
  const packs = holdAgainst(project, assessment);
  const { seaArea } = project.settings.redundancy;
  const asks = packs.some(({ pack }) => pack.asksSeaArea);
  return {
    id: 'rule-packs',
    title: 'Held against rule packs',
    page: 'flow',
    ownPage: false,
    blocks:
      packs.length === 0
        ? []
        : [
            { kind: 'paragraph', text: asks ? `${STANDING} Sea area: ${seaArea}.` : STANDING, tone: 'strong' },
            ...packs.flatMap((result) => packBlocks(context, result)),
          ],
  };
}

function packBlocks(context: SheetContext, result: PackResult): readonly Block[] {
  const { name, edition, binds, source } = result.pack;
  return [
    { kind: 'heading', level: 2, text: name },
    { kind: 'paragraph', text: `${edition}. ${binds} Source: ${source}.`, tone: 'quiet' },
    {
      kind: 'table',
      caption: countWords(result),
      columns: [
        { header: 'Rule', weight: 30, align: 'start' },
        { header: 'Clause and how it is known', weight: 22, align: 'start' },
        { header: 'Verdict', weight: 11, align: 'start' },
        { header: 'Because', weight: 37, align: 'start' },
      ],
      rows: result.results.map((each) => ruleRow(context, edition, each)),
      empty: 'No rule in this pack.',
    },
  ];
}

/** The edition is printed where it is another than that over the table. */
function ruleRow({ preferences }: SheetContext, packEdition: string, result: RuleResult): readonly string[] {
  const { rule, verdict, because } = result;
  const cited = rule.edition === packEdition ? rule.clause : `${rule.clause}. ${rule.edition}`;
  return [
    rule.title,
    `${cited}; ${RULE_BASIS_WORDS[rule.basis]}`,
    VERDICT_WORDS[verdict].words,
    formatText(because, preferences),
  ];
}
