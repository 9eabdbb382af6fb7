import type { PathBudget } from '../links/types.ts';
import type { Figure } from '../model/figure.ts';
import type { Part, PartOf } from '../model/part.ts';
import type { Item } from '../model/project.ts';
import { q, type RichText } from '../units/quantity.ts';
import { lossTerm, type Term } from './terms.ts';
import { type Lean, leanOf, stackOf } from './trial.ts';
import type { TrialState } from './types.ts';

export interface OwnAntenna {
  readonly path: PathBudget;
  readonly antenna: Item;
  /** The radio itself where the antenna is inside it. */
  readonly antennaPart: Part;
  readonly heightM: number;
  readonly state: TrialState;
}

/** Gain of the own antenna and what leaning takes from it, gain first. */
export function antennaTerms(own: OwnAntenna): readonly Term[] {
  const { antenna, antennaPart, path, heightM, state } = own;
  if (antennaPart.kind !== 'antenna') {
    return [insideTerm(antenna, path.antennaGainDbi, heightM)];
  }
  const lean = leanOf(state, antennaPart);
  return [
    gainTerm(antenna, antennaPart.figures.gainDbi, [height(heightM), ...seen(lean)]),
    tiltTerm(antenna, antennaPart, lean),
    polarisationTerm(antenna, lean),
  ];
}

/** Gain of the antenna of a set complete with its own. It is held, or floats, upright. */
export function ownGainTerm(item: Item, gainDbi: Figure, heightM: number, inHand: boolean): Term {
  const how = inHand ? ', held upright' : ', used from the raft or the water, upright';
  return gainTerm(item, gainDbi, [height(heightM), how]);
}

const height = (heightM: number): RichText[number] => q(heightM, 'm');
const seen = ({ worstHeelDeg }: Lean): RichText =>
  worstHeelDeg === 0 ? [' above the water'] : [' above the water, heeled'];

function gainTerm(antenna: Item, gainDbi: Figure, formula: RichText): Term {
  return {
    key: 'gain',
    value: gainDbi.value,
    unit: 'dBi',
    toleranceDb: gainDbi.tolerance,
    text: () => ({
      label: [`${antenna.tag}, antenna gain`],
      subject: { kind: 'item', id: antenna.id },
      basis: gainDbi.basis,
      formula: ['towards the horizon when upright; ', ...formula],
      source: gainDbi.source,
    }),
  };
}

function insideTerm(item: Item, gainDbi: number, heightM: number): Term {
  const source = 'an antenna inside the set whose pattern nobody states';
  return gainTerm(item, { value: gainDbi, tolerance: 0, basis: 'assumed', source }, [
    height(heightM),
    ' above the water',
  ]);
}

function tiltTerm(antenna: Item, part: PartOf<'antenna'>, lean: Lean): Term {
  return lossTerm('tilt', lean.tiltDb, lean.tiltToleranceDb, () => {
    const stack = stackOf(part.figures);
    const by: RichText = stack
      ? [
          `${stack.elements} half ${stack.elements === 1 ? 'wave' : 'waves'}, pitch ${stack.pitchWavelengths} wavelengths`,
        ]
      : ['12 (angle / ', q(part.figures.hpbwDeg.value, 'degree'), ')²'];
    return {
      label: [`${antenna.tag}, heel takes the beam off the horizon`],
      subject: { kind: 'item', id: antenna.id },
      basis: 'computed',
      formula: [
        'horizon ',
        q(Math.abs(lean.elevationDeg), 'degree', 1),
        ' off the beam at ',
        ...leaning(lean),
        '; ',
        ...by,
      ],
      source: stack
        ? 'pattern of half waves in a row, fed alike; nulls filled to 20 dB (common practice)'
        : 'parabola through the half-power points (from memory)',
    };
  });
}

function polarisationTerm(antenna: Item, lean: Lean): Term {
  return lossTerm('polarisation', lean.polarisationDb, 0, () => ({
    label: [`${antenna.tag}, leans across the other's polarisation`],
    subject: { kind: 'item', id: antenna.id },
    basis: 'computed',
    formula: ['cos² of the lean over what of it is seen, at ', ...leaning(lean)],
    source: 'field of a leaning dipole against an upright one',
  }));
}

const leaning = ({ worstHeelDeg }: Lean): RichText => [
  q(Math.abs(worstHeelDeg), 'degree', 0),
  worstHeelDeg === 0 ? ' of heel' : worstHeelDeg > 0 ? ' to starboard' : ' to port',
];
