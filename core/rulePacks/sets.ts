import type { PathBudget } from '../links/types.ts';
import type { PartOf, RadioClass, StandaloneClass } from '../model/part.ts';
import type { Item } from '../model/project.ts';
import { stands } from '../redundancy/build.ts';
import type { PackInput } from './types.ts';

/** A set that stands, with its part, overrides applied. */
export interface RadioSet {
  readonly item: Item;
  readonly part: PartOf<'radio'>;
}

/** Fitted sets that are not marked for removal, of the classes asked for. */
export function radioSets(input: PackInput, ...classes: readonly RadioClass[]): readonly RadioSet[] {
  return input.project.items.flatMap((item) => {
    const part = input.index.effective.get(item.id);
    if (part?.kind !== 'radio' || !stands(item) || !classes.includes(part.radioClass)) return [];
    return [{ item, part }];
  });
}

/** Sets with their own battery and antenna, not marked for removal, of the classes asked for. */
export function standaloneSets(input: PackInput, ...classes: readonly StandaloneClass[]): readonly Item[] {
  return input.project.items.filter((item) => {
    const part = input.index.effective.get(item.id);
    return part?.kind === 'standalone' && stands(item) && classes.includes(part.standaloneClass);
  });
}

/** Fixed sets with marine VHF voice, those of them first that are made for nothing else. */
export function vhfSets(input: PackInput): readonly RadioSet[] {
  const both = radioSets(input, 'mf-hf').filter(({ part }) => (part.figures.vhfTxPowerW?.value ?? 0) > 0);
  return [...radioSets(input, 'vhf-fixed'), ...both];
}

/** What a set puts out on the marine VHF channels, W. */
export const vhfPowerW = ({ part }: RadioSet): number =>
  part.radioClass === 'vhf-fixed' ? part.figures.txPowerW.value : (part.figures.vhfTxPowerW?.value ?? 0);

/** Paths on which a set may send, for voice on VHF. */
export function vhfPaths(input: PackInput, { item }: RadioSet): readonly PathBudget[] {
  return input.paths.filter((path) => path.radioId === item.id && path.service === 'vhf-voice' && path.canTransmit);
}

/** VHF sets that have an antenna they may send into. */
export const vhfOnAir = (input: PackInput): readonly RadioSet[] =>
  vhfSets(input).filter((set) => vhfPaths(input, set).length > 0);

/** MF/HF sets that have an antenna they may send into. */
export function hfOnAir(input: PackInput): readonly RadioSet[] {
  return radioSets(input, 'mf-hf').filter(({ item }) =>
    input.paths.some((path) => path.radioId === item.id && path.service === 'mf-hf' && path.canTransmit),
  );
}

export const hasDsc = ({ part }: RadioSet): boolean => part.traits.dsc;

/** Satellite sets of the boat: fitted L-band sets with a way of long range, and handheld ones. */
export function satelliteSets(input: PackInput): readonly Item[] {
  const withWay = new Set(
    input.redundancy.ways
      .filter(({ serviceId, carried }) => serviceId === 'long-range' && !carried)
      .map((way) => way.itemId),
  );
  const fitted = radioSets(input, 'l-band-messenger', 'l-band-voice')
    .map(({ item }) => item)
    .filter(({ id }) => withWay.has(id));
  return [...fitted, ...standaloneSets(input, 'handheld-satellite')];
}

/** Part of the catalogue that is described as giving a distress alert and safety information by satellite. */
const DISTRESS_TERMINAL = 'radio-l-band-fixed';

/** Whether a satellite set is known to carry distress traffic with priority; most are not recorded as such. */
export const isDistressTerminal = (item: Item): boolean => item.partId === DISTRESS_TERMINAL;

export const ids = (things: readonly (Item | RadioSet)[]): readonly string[] =>
  things.map((thing) => ('item' in thing ? thing.item.id : thing.id));
