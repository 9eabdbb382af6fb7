import { placeOf } from '../../catalogue/lookup.ts';
import type { Material } from '../../model/boat.ts';
import type { Item, Run } from '../../model/project.ts';
import { stands } from '../../redundancy/build.ts';
import { q } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { AuditInput, Remark, Rule } from '../rule.ts';
import { distanceM, itemSubject, itemsOf, listInWords, runSubject, tagOf, vhfBandAntennas } from '../rule.ts';

export const jointWet: Rule = {
  id: 'joint-wet',
  summary: 'A joint or run was found wet, or a joint stands outdoors without a proper seal.',
  severity: 'B',
  authority: AUTHORITIES.joint,
  check: (input) => [...wetJoints(input), ...wetRuns(input)],
};

function wetJoints(input: AuditInput): readonly Remark[] {
  return itemsOf(input, 'inline').flatMap(([item, part]) => {
    if (part.deviceClass !== 'joint' && part.deviceClass !== 'adapter') return [];
    const outdoors = item.facts.outdoors ?? placeOf(input.project, item)?.outdoors ?? false;
    const unsealed = item.facts.seal === 'none' || item.facts.seal === 'tape';
    const wet = item.facts.wet === true;
    return wet || (outdoors && unsealed) ? [wetRemark(item, outdoors)] : [];
  });
}

function wetRemark(item: Item, outdoors: boolean): Remark {
  const { wet, seal } = item.facts;
  const seen = [
    wet ? 'found wet or corroded' : '',
    outdoors ? 'outdoors' : '',
    seal === 'tape' ? 'tape only' : '',
    seal === 'none' ? 'no seal' : '',
  ];
  return {
    subjects: [itemSubject(item.id)],
    title: `Joint ${item.tag} lets water in`,
    measured: [`${item.tag}: ${listInWords(seen.filter((word) => word !== ''))}.`],
    limit: [
      'A joint outdoors is sealed: tape, self-amalgamating tape and tape again, or sleeve with sealant. Dry, it costs next to nothing.',
    ],
    action: [
      'Cut back to bright braid, re-make the joint, seal it or bring it below deck, and measure the feeder again.',
    ],
  };
}

function wetRuns(input: AuditInput): readonly Remark[] {
  return input.project.runs.flatMap((run) => {
    if (!stands(run) || run.facts.wet !== true) return [];
    return [
      {
        subjects: [runSubject(run.id)],
        title: `Cable ${run.number} is wet`,
        measured: [`${run.number}: water found in the cable or its plug.`],
        limit: ['Dry throughout: wet cable loses more every month, and reads a better VSWR as it does.'],
        action: ['Replace the cable; drying it does not bring it back.'],
      },
    ];
  });
}

/** Surplus up to this is a service loop, m. */
const SERVICE_LOOP_M = 1;
/** Loss of a coil from which it is worth a remark of its own class, dB. */
const COIL_WORTH_DB = 0.5;

export const surplusCable: Rule = {
  id: 'surplus-cable',
  summary: 'Cable is coiled up or clearly longer than its way; above half a decibel of loss the class is B.',
  severity: 'C',
  authority: AUTHORITIES.tidyCable,
  check: (input) => input.project.runs.flatMap((run) => (stands(run) ? surplusOf(input, run) : [])),
};

function surplusOf(input: AuditInput, run: Run): readonly Remark[] {
  const { coiledM = 0, neededLengthM } = run.facts;
  const over = run.measuredLengthM === null || neededLengthM === undefined ? 0 : run.measuredLengthM - neededLengthM;
  const surplusM = Math.max(coiledM, over);
  if (surplusM <= SERVICE_LOOP_M) return [];
  const costDb = surplusLossDb(input, run, surplusM);
  const cost = costDb === null ? [] : [', costing ', q(costDb, 'dB'), ' at the working frequency'];
  return [
    {
      subjects: [runSubject(run.id)],
      severity: costDb !== null && costDb > COIL_WORTH_DB ? 'B' : 'C',
      title: `${run.number} is longer than its way`,
      measured: [q(surplusM, 'm'), coiledM > 0 ? ' coiled up' : ' more than needed', ...cost, '.'],
      limit: ['No more than a service loop.'],
      action: ['Cut it to length and re-make the plug, keeping a loop long enough to re-make it once more.'],
    },
  ];
}

function surplusLossDb(input: AuditInput, run: Run, surplusM: number): number | null {
  for (const path of input.paths) {
    if (!path.runIds.includes(run.id)) continue;
    const cable = path.elements.find((element) => element.kind === 'cable' && element.subject.id === run.id);
    if (cable && run.measuredLengthM) return (cable.lossDb * surplusM) / run.measuredLengthM;
  }
  return null;
}

export const runUnsupported: Rule = {
  id: 'run-unsupported',
  summary: 'A run hangs unsupported.',
  severity: 'C',
  authority: AUTHORITIES.support,
  check: (input) =>
    input.project.runs
      .filter((run) => stands(run) && run.facts.supported === false)
      .map((run) => ({
        subjects: [runSubject(run.id)],
        title: `${run.number} hangs unsupported`,
        measured: [`${run.number} is not held along its way.`],
        limit: [
          'Held at the top and at short steps, so that its weight does not hang on the plug and it does not chafe.',
        ],
        action: [
          'Hold it with ties and foam or a conduit. In a mast this is rigger’s work, done with the mast down or from a bosun’s chair with a second line.',
        ],
      })),
};

export const bendRadius: Rule = {
  id: 'bend-radius',
  summary: 'A cable is bent tighter than five times its outside diameter.',
  severity: 'B',
  authority: AUTHORITIES.cableRoute,
  check: (input) =>
    input.project.runs.flatMap((run) => {
      const cable = input.index.parts.get(run.cableId);
      const radiusMm = run.facts.bendRadiusMm;
      if (!stands(run) || radiusMm === undefined || cable?.kind !== 'coax') return [];
      const limitMm = 5 * cable.figures.outsideDiameterMm.value;
      if (radiusMm >= limitMm) return [];
      return [
        {
          subjects: [runSubject(run.id)],
          title: `${run.number} is bent too tightly`,
          measured: ['Bend of ', q(radiusMm, 'mm'), ' radius.'],
          limit: [
            'At least ',
            q(limitMm, 'mm'),
            ', five times the outside diameter of ',
            q(cable.figures.outsideDiameterMm.value, 'mm', 1),
            '.',
          ],
          action: ['Re-lead it in a wider bend. A cable that has been kinked is replaced, not straightened.'],
        },
      ];
    }),
};

const BUNDLE_GAP_MM = 100;

export const bundleGap: Rule = {
  id: 'bundle-gap',
  summary: 'An antenna cable runs beside a power cable with less than 100 mm between them.',
  severity: 'C',
  authority: AUTHORITIES.cableRoute,
  check: (input) =>
    input.project.runs.flatMap((run) => {
      const { powerCableGapMm: gapMm, powerCableAlongM: alongM } = run.facts;
      if (!stands(run) || gapMm === undefined || gapMm >= BUNDLE_GAP_MM) return [];
      const along = alongM === undefined ? [] : [' for ', q(alongM, 'm')];
      return [
        {
          subjects: [runSubject(run.id)],
          title: `${run.number} lies beside a power cable`,
          measured: ['Gap of ', q(gapMm, 'mm'), ...along, '.'],
          limit: ['At least ', q(BUNDLE_GAP_MM, 'mm'), '; crossings at right angles.'],
          action: [
            'Move one of them. Until then listen on a quiet channel, squelch just closed, and switch the charger or inverter on and off.',
          ],
        },
      ];
    }),
};

export const deadCables: Rule = {
  id: 'dead-cables',
  summary: 'Cables or gear out of use are still in the boat.',
  severity: 'C',
  authority: AUTHORITIES.tidyCable,
  check: (input) => {
    const cables = itemsOf(input, 'equipment')
      .filter(([, part]) => part.equipmentClass === 'dead-cable')
      .map(([item]) => item);
    const runs = input.project.runs.filter((run) => run.status === 'remove');
    if (cables.length + runs.length === 0) return [];
    const names = [...cables.map((item) => item.tag), ...runs.map((run) => run.number)];
    return [
      {
        subjects: [...cables.map((item) => itemSubject(item.id)), ...runs.map((run) => runSubject(run.id))],
        title: 'Dead cables left in the boat',
        measured: [`Out of use: ${listInWords(names)}.`],
        limit: ['What serves nothing is taken out, or capped and labelled as spare.'],
        action: ['Trace them at both ends, isolate the supply, then pull them out; keep a messenger line in the tube.'],
      },
    ];
  },
};

const METALS: ReadonlySet<Material> = new Set<Material>(['aluminium', 'steel']);

export const metalMount: Rule = {
  id: 'metal-mount',
  summary:
    'An antenna on a metal bracket on a metal boat may close a DC path into the hull; on aluminium the class is B.',
  severity: 'C',
  authority: AUTHORITIES.dcPath,
  check: (input) => {
    const { hullMaterial } = input.project.boat;
    if (!METALS.has(hullMaterial)) return [];
    const mounted = itemsOf(input, 'antenna')
      .map(([item]) => item)
      .filter((item) => item.facts.mount === 'metal');
    if (mounted.length === 0) return [];
    return [
      {
        subjects: mounted.map((item) => itemSubject(item.id)),
        severity: hullMaterial === 'aluminium' ? 'B' : 'C',
        title: 'Metal antenna mounts tie the cable shield to the hull',
        measured: [`Metal mount: ${listInWords(mounted.map((item) => item.tag))}; hull of ${hullMaterial}.`],
        limit: [
          'No direct current in the shield: hull, mast and radio negative meet at one point, or not at all in an isolated system.',
        ],
        action: [
          'With the radio disconnected measure from shield to hull and to battery negative. Where there is a path, fit an insulated mount; have a qualified electrician judge the bonding.',
        ],
      },
    ];
  },
};

/** Lamps nearer than this to a VHF or AIS antenna are worth the test, m. The alert names no distance; common practice. */
const LAMP_NEAR_M = 1;

export const ledNearAntenna: Rule = {
  id: 'led-near-antenna',
  summary: 'A lamp stands within a metre of a VHF or AIS antenna: LED lamps can raise its noise.',
  severity: 'C',
  authority: AUTHORITIES.led,
  check: (input) => {
    const lamps = itemsOf(input, 'equipment')
      .filter(([, part]) => part.equipmentClass === 'lamp')
      .map(([item]) => item);
    return [...vhfBandAntennas(input).keys()].flatMap((antennaId) => {
      const antenna = input.index.items.get(antennaId);
      if (!antenna) return [];
      return lamps.flatMap((lamp) => {
        const gapM = distanceM(lamp.position, antenna.position);
        return gapM < LAMP_NEAR_M ? [lampRemark(input, lamp, antenna, gapM)] : [];
      });
    });
  },
};

function lampRemark(input: AuditInput, lamp: Item, antenna: Item, gapM: number): Remark {
  return {
    subjects: [itemSubject(lamp.id), itemSubject(antenna.id)],
    title: `Lamp ${lamp.tag} close to ${tagOf(input, antenna.id)}`,
    measured: [q(gapM, 'm', 2), ' apart.'],
    limit: ['No noise heard when the lamp is switched on.'],
    action: [
      'Lamp off, quiet channel, squelch just closed; lamp on. Noise means interference to VHF and AIS: change the lamp or move it.',
    ],
  };
}

export const foldedWhip: Rule = {
  id: 'folded-whip',
  summary: 'An antenna is folded down at times, and then reaches less far.',
  severity: 'C',
  authority: AUTHORITIES.foldedWhip,
  check: (input) => {
    const folding = itemsOf(input, 'antenna')
      .map(([item]) => item)
      .filter((item) => item.facts.foldsDown === true);
    if (folding.length === 0) return [];
    return [
      {
        subjects: folding.map((item) => itemSubject(item.id)),
        title: 'Antennas laid down under bridges',
        measured: [`Folds down: ${listInWords(folding.map((item) => item.tag))}.`],
        limit: ['Upright whenever the radio is relied on.'],
        action: [
          'Treat the radio as reduced while the antenna lies down, raise it at once after the bridge, and keep the handheld at the helm.',
        ],
      },
    ];
  },
};
