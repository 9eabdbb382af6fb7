import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Assessment, assess } from '../../../core/assess.ts';
import type { Finding } from '../../../core/audit/types.ts';
import type { Project } from '../../../core/model/project.ts';
import { projectSchema } from '../../../core/model/project.ts';
import { SERVICES } from '../../../core/model/services.ts';
import { formatText } from '../../../core/units/format.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';

/**
 * The demo boats against the matrices and remarks that were written for them by hand before the program (invented boats;
 * no outside source). F full, R reduced, - lost.
 */
function boat(name: string): Project {
  const file = new URL(`../../../assets/demo/${name}.backstay`, import.meta.url);
  return projectSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
}

/** The layout kept as the mended alternative, in place of the one found. */
function mended(project: Project): Project {
  const [alternative] = project.alternatives;
  if (!alternative) throw new Error('No alternative');
  const { items, runs, feeds, dataLinks } = alternative;
  return { ...project, items, runs, feeds, dataLinks };
}

const LETTERS = { full: 'F', reduced: 'R', lost: '-' } as const;
const COLUMNS = ['VF', 'VH', 'DA', 'AT', 'AR', 'SI', 'LR', 'BC'];

/** The row of an event as the letters of the eight columns. */
function row({ redundancy }: Assessment, eventLabel: string): string {
  const found = redundancy.matrix.find(({ event }) => event.label === eventLabel);
  if (!found)
    throw new Error(`No event ${eventLabel}: ${redundancy.matrix.map(({ event }) => event.label).join(', ')}`);
  const letterOf = (code: string): string => {
    const id = SERVICES.find((service) => service.code === code)?.id;
    const state = found.states.find((each) => each.serviceId === id);
    return state ? LETTERS[state.grade] : '?';
  };
  return COLUMNS.map(letterOf).join(' ');
}

function cell(assessment: Assessment, eventLabel: string, code: string): string {
  return row(assessment, eventLabel).split(' ')[COLUMNS.indexOf(code)] ?? '?';
}

const found = {
  'brannoch-tern': assess(boat('brannoch-tern')),
  pelluna: assess(boat('pelluna')),
  vessarine: assess(boat('vessarine')),
};
const proposed = {
  'brannoch-tern': assess(mended(boat('brannoch-tern'))),
  pelluna: assess(mended(boat('pelluna'))),
  vessarine: assess(mended(boat('vessarine'))),
};

describe('failure matrix of the steel ketch, as found', () => {
  it.each([
    // event                                            VF VH DA AT AR SI LR BC
    ['Nothing failed', 'R F R - R F R F'],
    ['Main mast lost', '- F - - - R R F'],
    ['Both masts lost', '- F - - - R R F'],
    ['Breaker B7 opens', '- F - - - R R F'],
    ['Splitter SP-1 fails', '- F - - - R R F'],
    ['House bank flat', '- F - - - R R F'],
    ['Saloon and bilge under its sole floods over B1', '- F - - - R R F'],
    // The long-range cell of lightning is lost, or reduced if the terminal was unplugged: next test.
    ['Lightning on the main mast', '- F - - - R - F'],
  ])('%s', (label, letters) => {
    expect(row(found['brannoch-tern'], label)).toBe(letters);
  });

  it('keeps text by satellite after a strike only if the terminal was unplugged', () => {
    const project = boat('brannoch-tern');
    const items = project.items.map((item) =>
      item.tag === 'SAT-1' ? { ...item, facts: { ...item.facts, unpluggedInStorms: true } } : item,
    );
    expect(row(assess({ ...project, items }), 'Lightning on the main mast')).toBe('- F - - - R R F');
  });
});

describe('failure matrix of the catamaran, as found', () => {
  it.each([
    // event                               VF VH DA AT AR SI LR BC
    ['Nothing failed', 'F F F - F F F R'],
    ['Mast lost', 'R F R - F R F R'],
    ['Stern arch lost', 'F F F - - F - R'],
    ['Breaker N1 opens', '- F R - - R R R'],
    ['House bank flat', '- F R - - R R R'],
    ['Starboard hull floods over B1', '- F R - - R R R'],
    ['Lightning on the mast', '- F R - - R R R'],
    ['Abandon to the raft', '- F R - - R R R'],
  ])('%s', (label, letters) => {
    expect(row(found.vessarine, label)).toBe(letters);
  });

  it('says in the arch cell that the terminal would serve carried on deck', () => {
    const { matrix } = found.vessarine.redundancy;
    const arch = matrix.find(({ event }) => event.kind === 'structure');
    const longRange = arch?.states.find((state) => state.serviceId === 'long-range');
    expect(longRange?.reason).toMatch(/SAT-2, carried on deck, it would still serve, reduced/);
  });

  it('gives the reasons the survey gave', () => {
    const reason = (label: string, serviceId: string) =>
      found.vessarine.redundancy.matrix
        .find(({ event }) => event.label === label)
        ?.states.find((state) => state.serviceId === serviceId)?.reason;
    expect(reason('Mast lost', 'voice-fixed')).toMatch(/VHF-2/);
    expect(reason('Breaker N1 opens', 'digital-alert')).toMatch(/VHF-3.*short reach/);
    expect(reason('Breaker N1 opens', 'long-range')).toMatch(/router is dead/);
  });
});

describe('the mended layouts', () => {
  it('ketch: the mizzen whip serves when the main mast is gone', () => {
    const after = proposed['brannoch-tern'];
    for (const code of ['VF', 'DA', 'AT', 'AR']) expect(cell(after, 'Main mast lost', code)).toBe('R');
    expect(row(after, 'Nothing failed')).toBe('F F F F F F F F');
  });

  it('ketch: the splitter row disappears, and the radio battery outlives the house bank', () => {
    const after = proposed['brannoch-tern'];
    expect(after.redundancy.matrix.some(({ event }) => event.label.startsWith('Splitter'))).toBe(false);
    expect(cell(after, 'House bank flat', 'VF')).toBe('F');
    expect(cell(after, 'Saloon and bilge under its sole floods over B1', 'VF')).toBe('F');
  });

  it('catamaran: breaker N1 no longer takes voice, alert or AIS', () => {
    for (const code of ['VF', 'DA', 'AT']) expect(cell(proposed.vessarine, 'Breaker N1 opens', code)).toBe('F');
  });

  it('leaves none of the grave findings the layouts were meant to mend', () => {
    expect(proposed['brannoch-tern'].findings.filter(({ severity }) => severity !== 'C')).toEqual([]);
    expect(proposed.vessarine.findings.filter(({ severity }) => severity === 'A')).toEqual([]);
  });
});

/** A planted flaw: class, rule, and the tag or number of something it must point at. */
type Planted = readonly [severity: string, ruleId: string, about: string];

const PLANTED: Readonly<Record<keyof typeof found, readonly Planted[]>> = {
  'brannoch-tern': [
    ['A', 'ais-no-fix', 'AIS-1'],
    ['A', 'dsc-no-position', 'VHF-1'],
    ['A', 'emergency-antenna-missing', 'A1'],
    ['A', 'shared-single-point', 'A1'],
    ['A', 'shared-single-point', 'W01'],
    ['A', 'shared-single-point', 'J1'],
    ['A', 'shared-single-point', 'W02'],
    ['A', 'shared-single-point', 'SP-1'],
    ['A', 'shared-single-point', 'B7'],
    ['B', 'feeder-loss', 'VHF-1'],
    ['B', 'vswr-masked', 'VHF-1'],
    ['B', 'joint-wet', 'J1'],
    ['B', 'batteries-low', 'B1'],
    ['B', 'hf-insulator-low', 'A2'],
    ['B', 'hf-lead-in-inside', 'W08'],
    ['B', 'hf-earth', 'ATU-1'],
    ['B', 'feeder-loss', 'W06'],
    ['B', 'surplus-cable', 'W06'],
    ['C', 'metal-mount', 'A1'],
    ['C', 'led-near-antenna', 'L1'],
    ['C', 'surplus-cable', 'W01'],
    ['C', 'run-unsupported', 'W01'],
  ],
  pelluna: [
    ['A', 'feed-unfused', 'VHF-B'],
    ['A', 'radar-at-eye-height', 'RAD-1'],
    ['A', 'person-near-antenna', 'A2'],
    ['A', 'transmit-rating', 'TS-1'],
    ['A', 'dsc-no-position', 'VHF-B'],
    ['B', 'volt-drop', 'VHF-A'],
    ['B', 'cable-impedance', 'W12'],
    ['B', 'surplus-cable', 'W11E'],
    ['B', 'bend-radius', 'W11'],
    ['B', 'metal-mount', 'A1'],
    ['B', 'ais-near-metal', 'A3'],
    ['B', 'repeater-feedback', 'CEL-1'],
    ['C', 'bundle-gap', 'W14'],
    ['C', 'dead-cables', 'X4'],
    ['C', 'folded-whip', 'A1'],
  ],
  vessarine: [
    ['A', 'shared-single-point', 'N1'],
    ['A', 'shared-single-point', 'B1'],
    ['A', 'flood-takes-all', 'B1'],
    ['A', 'ais-no-fix', 'AIS-1'],
    ['A', 'dsc-no-position', 'VHF-2'],
    ['A', 'beacon-registration', 'BC-1'],
    ['A', 'emergency-antenna-unusable', 'EM-1'],
    ['B', 'feeder-measured', 'W31'],
    ['B', 'satellite-no-sky', 'A4'],
    ['B', 'feeder-loss', 'W34'],
    ['B', 'long-range-one-supply', 'INV-1'],
    ['B', 'antenna-too-near', 'A2'],
    ['B', 'pole-shadow', 'SAT-1'],
    ['C', 'bundle-gap', 'W32'],
    ['C', 'duplicate-label', 'W32'],
    ['C', 'undated-record', 'VHF-1'],
    ['C', 'lightning-multihull', 'SAT-2'],
  ],
};

const NAMES = ['brannoch-tern', 'pelluna', 'vessarine'] as const;

function namesOf(project: Project, finding: Finding): string[] {
  return finding.subjects.map(({ kind, id }) => {
    if (kind === 'run') return project.runs.find((run) => run.id === id)?.number ?? id;
    return project.items.find((item) => item.id === id)?.tag ?? id;
  });
}

function about(name: (typeof NAMES)[number], tag: string): Finding[] {
  return found[name].findings.filter((finding) => namesOf(boat(name), finding).includes(tag));
}

describe.each(NAMES)('planted flaws of %s', (name) => {
  it.each(PLANTED[name])('%s %s: %s', (severity, ruleId, tag) => {
    const hits = about(name, tag).filter((finding) => finding.ruleId === ruleId);
    expect(hits.map((finding) => finding.severity)).toContain(severity);
  });
});

describe('figures in the findings', () => {
  const text = (name: (typeof NAMES)[number], ruleId: string, part: 'measured' | 'limit' = 'measured') =>
    found[name].findings
      .filter((finding) => finding.ruleId === ruleId)
      .map((finding) => formatText(finding[part], METRIC_PREFERENCES))
      .join(' ');

  it('reads as a surveyor would write them down', () => {
    expect(text('brannoch-tern', 'feeder-loss')).toMatch(
      /VHF-1 at 156.8 MHz loses 5\.3\d dB, 7[01] %: 7\.[34] W of 25 W arrive/,
    );
    expect(text('brannoch-tern', 'vswr-masked', 'limit')).toMatch(/1\.8[45]/);
    expect(text('pelluna', 'volt-drop')).toMatch(/0\.96 V lost on 5\.5 A, 7\.6 %/);
    expect(text('pelluna', 'bend-radius', 'limit')).toMatch(/25 mm/);
    expect(text('pelluna', 'radar-at-eye-height')).toMatch(/0\.05 m.*1\.9 m/);
    expect(text('pelluna', 'radar-at-eye-height', 'limit')).toMatch(/0\.42 m/);
    expect(text('vessarine', 'feeder-measured')).toMatch(/4\.26 dB, 9\.4 W/);
    expect(text('vessarine', 'feeder-measured', 'limit')).toMatch(/7\.1 with the antenna off/);
    expect(text('vessarine', 'emergency-antenna-unusable')).toMatch(
      /4\.0 m, with a BNC plug.*7\.5 m away with a SO-239/,
    );
    expect(text('vessarine', 'pole-shadow', 'limit')).toMatch(/2\.9 m/);
  });
});

describe('what must not be flagged', () => {
  const rulesAbout = (name: (typeof NAMES)[number], tag: string) => about(name, tag).map((finding) => finding.ruleId);
  const rules = (name: (typeof NAMES)[number]) => found[name].findings.map((finding) => finding.ruleId);

  it('ketch: radar height, the HF feeder, the supply, a joint’s loss as such', () => {
    expect(rulesAbout('brannoch-tern', 'RAD-1')).toEqual([]);
    expect(rulesAbout('brannoch-tern', 'W07')).toEqual([]);
    for (const rule of [
      'volt-drop',
      'measured-sag',
      'fuse-too-large',
      'fuse-too-far',
      'fuse-too-small',
      'feed-unfused',
    ]) {
      expect(rules('brannoch-tern')).not.toContain(rule);
    }
    expect(rulesAbout('brannoch-tern', 'J1').sort()).toEqual(['joint-wet', 'shared-single-point']);
  });

  it('trawler: the captive lead of the second whip, the spacing of the whips as a fault', () => {
    expect(rulesAbout('pelluna', 'W13')).toEqual([]);
    expect(rules('pelluna')).not.toContain('antenna-too-near');
    const spacing = found.pelluna.findings.find((finding) => finding.ruleId === 'antenna-spacing');
    expect(spacing).toMatchObject({
      severity: 'C',
      title: 'Antenna spacing: good for small craft, below the ship guide',
    });
  });

  it('catamaran: the cable type, a joint’s loss as such, the masthead antenna, the handheld', () => {
    expect(rulesAbout('vessarine', 'W31').sort()).toEqual(['feeder-measured']);
    expect(rulesAbout('vessarine', 'W31A').sort()).toEqual(['feeder-measured']);
    expect(rulesAbout('vessarine', 'J3').sort()).toEqual(['feeder-measured', 'joint-wet']);
    expect(rulesAbout('vessarine', 'A1')).toEqual(['vswr-masked']);
    expect(rulesAbout('vessarine', 'VHF-3')).toEqual(['lightning-multihull']);
  });
});
