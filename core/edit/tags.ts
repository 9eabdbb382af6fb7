import type { Part, PlaceablePart } from '../model/part.ts';

import type { Project } from '../model/project.ts';

/** Letters of the designation by what a part is; the trade's own where it has them. */
const RADIO_TAGS: Readonly<Record<Extract<Part, { kind: 'radio' }>['radioClass'], string>> = {
  'vhf-fixed': 'VHF-',
  'ais-class-a': 'AIS-',
  'ais-class-b-cs': 'AIS-',
  'ais-class-b-so': 'AIS-',
  'ais-receiver': 'AIS-',
  'mf-hf': 'HF-',
  'navtex-receiver': 'NX-',
  'l-band-messenger': 'SAT-',
  'l-band-voice': 'SAT-',
  'broadband-terminal': 'SAT-',
  'gnss-receiver': 'GNSS-',
  'cellular-repeater': 'CEL-',
  'cellular-router': 'CEL-',
  'wifi-bridge': 'WIFI-',
  'broadcast-receiver': 'FM-',
};
const DEVICE_TAGS: Readonly<Record<Extract<Part, { kind: 'inline' }>['deviceClass'], string>> = {
  'splitter-active': 'SP-',
  'splitter-passive': 'SP-',
  diplexer: 'DX-',
  switch: 'SW-',
  arrestor: 'AR-',
  tuner: 'ATU-',
  amplifier: 'AMP-',
  joint: 'J',
  adapter: 'AD-',
  filter: 'FL-',
};
const POWER_TAGS: Readonly<Record<Extract<Part, { kind: 'power' }>['powerClass'], string>> = {
  'battery-bank': 'BAT-',
  'starter-battery': 'BAT-',
  panel: 'P',
  breaker: 'B',
  'fuse-holder': 'F',
  inverter: 'INV-',
  converter: 'CON-',
  charger: 'CH-',
};
const STANDALONE_TAGS: Readonly<Record<Extract<Part, { kind: 'standalone' }>['standaloneClass'], string>> = {
  'beacon-406': 'BC-',
  'personal-beacon': 'PLB-',
  'radar-sart': 'SART-',
  'ais-sart': 'SART-',
  'handheld-vhf': 'VHF-',
  'handheld-vhf-dsc': 'VHF-',
  'ais-mob': 'MOB-',
  'handheld-satellite': 'SAT-',
};
const EQUIPMENT_TAGS: Readonly<Record<Extract<Part, { kind: 'equipment' }>['equipmentClass'], string>> = {
  radar: 'RAD-',
  display: 'PL-',
  'data-bus': 'BUS-',
  router: 'NET-',
  lamp: 'L',
  compass: 'CMP-',
  autopilot: 'AP-',
  'wind-generator': 'WG-',
  'earth-plate': 'E',
  'dead-cable': 'X',
};

function tagPrefix(part: PlaceablePart): string {
  switch (part.kind) {
    case 'radio':
      return RADIO_TAGS[part.radioClass];
    case 'antenna':
      return 'A';
    case 'inline':
      return DEVICE_TAGS[part.deviceClass];
    case 'position-source':
      return 'GNSS-';
    case 'power':
      return POWER_TAGS[part.powerClass];
    case 'standalone':
      return STANDALONE_TAGS[part.standaloneClass];
    case 'equipment':
      return EQUIPMENT_TAGS[part.equipmentClass];
  }
}

/** The lowest free designation for a part, e.g. `VHF-2`, `A1`, `J3`. `taken` is every tag in use and gains the new one. */
export function freeTag(part: PlaceablePart, taken: Set<string>): string {
  const prefix = tagPrefix(part);
  for (let number = 1; ; number += 1) {
    const tag = `${prefix}${number}`;
    if (taken.has(tag)) continue;
    taken.add(tag);
    return tag;
  }
}

export const tagsOf = (project: Project): Set<string> => new Set(project.items.map((item) => item.tag));

/**
 * A maker of numbers after the highest in use, e.g. `W08`. Alternatives count too: a number stands on a label in the boat
 * and must not come to mean another cable.
 */
export function numberMaker(project: Project, letter: 'W' | 'F' | 'D'): () => string {
  let highest = 0;
  for (const layout of [project, ...project.alternatives]) {
    for (const { number } of [...layout.runs, ...layout.feeds, ...layout.dataLinks]) {
      const match = /^([A-Z])(\d{1,6})$/.exec(number);
      if (match?.[1] === letter) highest = Math.max(highest, Number(match[2]));
    }
  }
  return () => {
    highest += 1;
    return `${letter}${String(highest).padStart(2, '0')}`;
  };
}
