import type { Assessment } from '../assess.ts';
import { scaleText } from '../drawing/titleBlock.ts';
import type { Project } from '../model/project.ts';
import { CAUTIONS, GOVERNS } from './cautions.ts';
import type { SheetContext } from './context.ts';
import { cableSection } from './sectionCables.ts';
import { commissioningSection } from './sectionCommissioning.ts';
import { conditionSection } from './sectionConditions.ts';
import { drawingSection } from './sectionDrawing.ts';
import { equipmentSection } from './sectionEquipment.ts';
import { failureStudySection } from './sectionFailureStudy.ts';
import { feedSection } from './sectionFeeds.ts';
import { findingSection } from './sectionFindings.ts';
import { gnssSection } from './sectionGnss.ts';
import { hfSection } from './sectionHf.ts';
import { lossSection } from './sectionLosses.ts';
import { materialsSection } from './sectionMaterials.ts';
import { measurementSection } from './sectionMeasurements.ts';
import { raftSection } from './sectionRaft.ts';
import { rangeSection } from './sectionRanges.ts';
import { redundancySection } from './sectionRedundancy.ts';
import { rulePacksSection } from './sectionRulePacks.ts';
import { satelliteSection } from './sectionSatellites.ts';
import { scopeSection } from './sectionScope.ts';
import { strongSignalSection } from './sectionStrongSignals.ts';
import { printedDate } from './sheetDate.ts';
import { SECTION_IDS, type SectionId, type Sheet, type SheetOptions, type SheetSection } from './types.ts';

/** Sections that no choice can leave out: what this is, what can hurt, and who answers for the work. */
const ALWAYS: readonly SectionId[] = ['scope', 'cautions', 'signatures'];

/**
 * The install sheet of one layout as data: text final, units and decimal mark the reader's. Pure; the date is given.
 * @throws RangeError when the date is not an ISO date
 */
export function installSheet(project: Project, assessment: Assessment, options: SheetOptions): Sheet {
  const { paper, preferences, date } = options;
  const context: SheetContext = { project, assessment, preferences, paper, date };
  const wanted = new Set<SectionId>([...ALWAYS, ...(options.sections ?? SECTION_IDS)]);
  const sections = SECTION_IDS.filter((id) => wanted.has(id))
    .map((id) => SECTION_BUILDERS[id](context))
    .filter((section) => section.blocks.length > 0);
  return {
    title: 'Radio installation sheet',
    subtitle: project.title,
    paper,
    titleBlock: {
      boat: project.boat.name,
      layout: project.layoutName,
      revision: project.revision,
      preparedBy: project.preparedBy,
      date: printedDate(date),
      scale: drawingScale(sections),
      governs: GOVERNS,
    },
    sections,
  };
}

/** Scale of the drawing page, empty when the drawing is left out. */
function drawingScale(sections: readonly SheetSection[]): string {
  const page = sections.find((section) => section.id === 'drawing');
  const block = page?.blocks.find((each) => each.kind === 'drawing');
  return block ? scaleText(block.drawing.projection) : '';
}

/** A section without a block has nothing to say about this boat and is left out. */
const SECTION_BUILDERS: Readonly<Record<SectionId, (context: SheetContext) => SheetSection>> = {
  scope: scopeSection,
  cautions: cautionSection,
  drawing: drawingSection,
  equipment: equipmentSection,
  cables: cableSection,
  feeds: feedSection,
  losses: lossSection,
  conditions: conditionSection,
  ranges: rangeSection,
  hf: hfSection,
  satellites: satelliteSection,
  gnss: gnssSection,
  'strong-signals': strongSignalSection,
  redundancy: redundancySection,
  'failure-study': failureStudySection,
  raft: raftSection,
  'rule-packs': rulePacksSection,
  findings: findingSection,
  measurements: measurementSection,
  commissioning: commissioningSection,
  materials: materialsSection,
  signatures: signatureSection,
};

function cautionSection(): SheetSection {
  return {
    id: 'cautions',
    title: 'Cautions: read before starting work',
    page: 'flow',
    ownPage: true,
    blocks: [{ kind: 'cautions', items: CAUTIONS }],
  };
}

function signatureSection(): SheetSection {
  return {
    id: 'signatures',
    title: 'Signatures',
    page: 'flow',
    ownPage: false,
    blocks: [
      {
        kind: 'paragraph',
        text: `${GOVERNS} A signature below says who did or saw the work named here, on that date, and no more.`,
        tone: 'plain',
      },
      { kind: 'signatures', roles: ['Designed by', 'Installed by', 'Tested by', 'Received by owner or skipper'] },
    ],
  };
}
