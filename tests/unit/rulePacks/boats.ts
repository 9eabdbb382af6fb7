import { assess } from '../../../core/assess.ts';
import { figure } from '../../../core/model/figure.ts';
import {
  type Item,
  type Project,
  type RedundancySettings,
  redundancySettingsSchema,
} from '../../../core/model/project.ts';
import { holdAgainstRule, packInput } from '../../../core/rulePacks/holdAgainst.ts';
import { PACKS } from '../../../core/rulePacks/packs.ts';
import type { PackRule, RuleResult } from '../../../core/rulePacks/types.ts';
import { formatText } from '../../../core/units/format.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import { feed, item, run, smallBoat } from '../redundancy/smallBoat.ts';

export const RULES: readonly PackRule[] = PACKS.flatMap(({ rules }) => rules);

/** A change of a boat. */
export type Edit = (project: Project) => Project;

/** The small sloop, changed; she goes in A2 unless an edit says otherwise. */
export const boat = (...edits: readonly Edit[]): Project => edits.reduce((project, edit) => edit(project), smallBoat());

export const settings =
  (change: Partial<RedundancySettings>): Edit =>
  (project) => {
    const redundancy = redundancySettingsSchema.parse({ ...project.settings.redundancy, ...change });
    return { ...project, settings: { ...project.settings, redundancy } };
  };
export const area = (seaArea: RedundancySettings['seaArea']): Edit => settings({ seaArea });

export const add =
  (...items: readonly Item[]): Edit =>
  (project) => ({ ...project, items: [...project.items, ...items] });
export const wire =
  (...runs: readonly ReturnType<typeof run>[]): Edit =>
  (project) => ({ ...project, runs: [...project.runs, ...runs] });
export const power =
  (...feeds: readonly ReturnType<typeof feed>[]): Edit =>
  (project) => ({ ...project, feeds: [...project.feeds, ...feeds] });

/** Takes items out with all that is joined to them. */
export const drop =
  (...ids: readonly string[]): Edit =>
  (project) => {
    const keeps = ({ from, to }: { from: { itemId: string }; to: { itemId: string } }): boolean =>
      !ids.includes(from.itemId) && !ids.includes(to.itemId);
    return {
      ...project,
      items: project.items.filter(({ id }) => !ids.includes(id)),
      runs: project.runs.filter(keeps),
      feeds: project.feeds.filter(keeps),
      dataLinks: project.dataLinks.filter(keeps),
    };
  };

export const change =
  (id: string, more: Partial<Item>): Edit =>
  (project) => ({ ...project, items: project.items.map((each) => (each.id === id ? { ...each, ...more } : each)) });

/** A figure of an item's part in place of the part's own. */
export const figures =
  (id: string, values: Readonly<Record<string, number>>): Edit =>
  (project) => {
    const known = project.items.find((each) => each.id === id);
    const own = Object.entries(values).map(([key, value]) => [key, figure(value, 0, 'assumed', 'test')] as const);
    const overrides = {
      figures: { ...known?.overrides.figures, ...Object.fromEntries(own) },
      traits: known?.overrides.traits ?? {},
    };
    return change(id, { overrides })(project);
  };

export const height =
  (id: string, zM: number): Edit =>
  (project) => {
    const position = project.items.find((each) => each.id === id)?.position ?? { xM: 0, yM: 0, zM: 0 };
    return change(id, { position: { ...position, zM } })(project);
  };

/** Nothing that sends or receives. */
export const bare: Edit = drop('VHF', 'AIS', 'SP', 'A1', 'GPS', 'BUS', 'HH', 'EPIRB');

/** MF/HF with selective calling on a whip; `HF` without. */
export const hfDsc =
  (tag = 'HF', partId = 'radio-mf-hf-150w-dsc'): Edit =>
  (project) =>
    wire(run(`W-${tag}`, `${tag}.rf`, `A-${tag}.feed`, { measuredLengthM: 2 }))(
      add(item(tag, partId, 'hut'), item(`A-${tag}`, 'antenna-hf-whip-7m', null))(project),
    );

/** A satellite terminal that the catalogue describes as giving distress alerts, with sky. */
export const terminal: Edit = (project) =>
  wire(run('W-SES', 'SES.rf', 'A-SES.feed', { measuredLengthM: 2 }))(
    add(item('SES', 'radio-l-band-fixed', 'hut'), item('A-SES', 'antenna-l-band-passive', null))(project),
  );

/** A handheld satellite messenger, of whose distress service nothing is recorded. */
export const messenger: Edit = add(item('SATH', 'handheld-satellite', null));

/** A docked satellite telephone with an antenna of its own; its handset can be carried. */
export const telephone =
  (tag = 'PHONE'): Edit =>
  (project) =>
    wire(run(`W-${tag}`, `${tag}.rf`, `A-${tag}.feed`, { measuredLengthM: 2 }))(
      add(item(tag, 'radio-l-band-voice', 'hut'), item(`A-${tag}`, 'antenna-l-band-passive', null))(project),
    );

/** A second VHF set with an antenna of its own on the arch. */
export const secondVhf: Edit = (project) =>
  wire(run('W-VHF2', 'VHF2.ant', 'A2.rf', { measuredLengthM: 6 }))(
    add(item('VHF2', 'vhf', 'hut'), item('A2', 'whip', 'arch'))(project),
  );

export const navtexSet: Edit = (project) =>
  wire(run('W-NTX', 'NTX.rf', 'A-NTX.feed', { measuredLengthM: 4 }))(
    add(item('NTX', 'radio-navtex', 'hut'), item('A-NTX', 'antenna-navtex-active', 'arch'))(project),
  );

/** A second bank straight to the VHF set. */
export const secondBank: Edit = (project) =>
  power(feed('F-EM', 'EM', 'VHF'))(add(item('EM', 'bank', 'locker'))(project));

export function rule(id: string): PackRule {
  const found = RULES.find((each) => each.id === id);
  if (!found) throw new Error(`There is no rule ${id}.`);
  return found;
}

/** One rule held against one boat. */
export function held(id: string, project: Project): RuleResult {
  return holdAgainstRule(rule(id), packInput(project, assess(project)));
}

export const words = ({ because }: Pick<RuleResult, 'because'>): string => formatText(because, METRIC_PREFERENCES);
