import type { PathBudget, PathElement } from '../../links/types.ts';
import type { RichText } from '../../units/quantity.ts';
import { q } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { AuditInput, Remark, Rule } from '../rule.ts';
import { itemSubject, itemsOf, listInWords, runNumber, runSubject, tagOf } from '../rule.ts';

const FEEDER_SERVICES: ReadonlySet<PathBudget['service']> = new Set(['vhf-voice', 'ais', 'l-band', 'mf-hf']);

export const feederLoss: Rule = {
  id: 'feeder-loss',
  summary:
    'A feeder loses more between the set and its antenna than the limit of the project (40 per cent by default).',
  severity: 'B',
  authority: AUTHORITIES.feeder,
  check: (input) => {
    const over = input.paths.filter(
      (path) => FEEDER_SERVICES.has(path.service) && path.lossDb > input.project.settings.feederLossLimitDb,
    );
    return [...byAntenna(over)].map(([antennaId, paths]) => feederRemark(input, antennaId, paths));
  },
};

function byAntenna(paths: readonly PathBudget[]): ReadonlyMap<string, readonly PathBudget[]> {
  const groups = new Map<string, PathBudget[]>();
  for (const path of paths) {
    const group = groups.get(path.antennaId);
    if (group) group.push(path);
    else groups.set(path.antennaId, [path]);
  }
  return groups;
}

function feederRemark(input: AuditInput, antennaId: string, paths: readonly PathBudget[]): Remark {
  const limitDb = input.project.settings.feederLossLimitDb;
  const sets = [...new Set(paths.map((path) => path.radioId))];
  const runs = [...new Set(paths.flatMap((path) => path.runIds))];
  const measured: RichText[number][] = [];
  for (const path of paths) measured.push(...pathInWords(input, path), ' ');
  return {
    subjects: [...sets.map(itemSubject), ...runs.map(runSubject), itemSubject(antennaId)],
    title: `Feeder of ${tagOf(input, antennaId)} loses too much`,
    measured: measured.slice(0, -1),
    limit: [
      'At most ',
      q(limitDb, 'dB'),
      ' from set to antenna, ',
      q(100 * (1 - 10 ** (-limitDb / 10)), 'percent'),
      ' of the power.',
    ],
    action: feederAction(input, paths),
  };
}

function pathInWords(input: AuditInput, path: PathBudget): RichText {
  const text: RichText = [
    `${tagOf(input, path.radioId)} at `,
    q(path.frequencyMhz, 'MHz', 1),
    ' loses ',
    q(path.lossDb, 'dB'),
    ', ',
    q(path.lostPercent, 'percent'),
  ];
  const { txPowerW, wattsAtAntenna } = path;
  if (txPowerW === null || wattsAtAntenna === null || txPowerW <= 0) return [...text, ' of the signal.'];
  const digits = wattsAtAntenna < 1 ? 2 : 1;
  return [
    ...text,
    ': ',
    q(wattsAtAntenna, 'W', digits),
    ' of ',
    q(txPowerW, 'W', txPowerW % 1 === 0 ? 0 : 1),
    ' arrive.',
  ];
}

/** Names the worst cable and, where one is in the way, what would be left without the devices. */
function feederAction(input: AuditInput, paths: readonly PathBudget[]): RichText {
  const [path] = paths;
  const cables = path?.elements.filter((element) => element.kind === 'cable') ?? [];
  const worst = largest(cables);
  const devices = path?.elements.filter((element) => element.kind === 'device' && element.lossDb >= 0.2) ?? [];
  const text: RichText[number][] = [];
  if (worst) {
    text.push(
      `Most of it goes in ${worst.label}: `,
      q(worst.lossDb, 'dB'),
      '. Lay a cable of lower loss, as short as the way allows.',
    );
  }
  if (path && devices.length > 0) {
    const left = path.lossDb - devices.reduce((sum, device) => sum + device.lossDb, 0);
    text.push(
      ` Without ${listInWords(devices.map((device) => tagOf(input, device.subject.id)))} it would be `,
      q(left, 'dB'),
      '.',
    );
  }
  return [...text, ' Measure the new feeder against its predicted figure before it is signed off.'];
}

function largest(elements: readonly PathElement[]): PathElement | undefined {
  return [...elements].sort((a, b) => b.lossDb - a.lossDb)[0];
}

/** A feeder may measure this much over its prediction before anything is suspected, dB; its own tolerance if larger. */
const UNEXPLAINED_DB = 1;

export const feederMeasured: Rule = {
  id: 'feeder-measured',
  summary: 'A feeder measures more loss than its cable, joints and devices explain.',
  severity: 'B',
  authority: AUTHORITIES.openEnd,
  check: (input) =>
    input.paths.flatMap((path) => {
      const { measuredLossDb, lossDb, toleranceDb } = path;
      if (measuredLossDb === null || measuredLossDb - lossDb <= Math.max(UNEXPLAINED_DB, toleranceDb)) return [];
      return [measuredRemark(input, path, measuredLossDb)];
    }),
};

function measuredRemark(input: AuditInput, path: PathBudget, measuredLossDb: number): Remark {
  const joints = path.elements
    .filter((element) => element.kind === 'joint')
    .map((element) => tagOf(input, element.subject.id));
  const suspect = joints.length > 0 ? `${listInWords(joints)} and the cable beside it` : 'the plugs and the cable';
  const arriving =
    path.txPowerW === null ? [] : [', ', q(path.txPowerW * 10 ** (-measuredLossDb / 10), 'W'), ' at the antenna'];
  return {
    subjects: [itemSubject(path.radioId), ...path.runIds.map(runSubject), ...path.deviceIds.map(itemSubject)],
    title: `Feeder of ${tagOf(input, path.radioId)} measures worse than it should`,
    measured: [
      'Measured ',
      q(measuredLossDb, 'dB'),
      ...arriving,
      '; ',
      q(measuredLossDb - path.lossDb, 'dB', 1),
      ' of it unexplained.',
    ],
    limit: [
      'Predicted ',
      q(path.lossDb, 'dB'),
      ' ± ',
      q(path.toleranceDb, 'dB'),
      ': a sound feeder would read a VSWR of ',
      q(path.openEndVswr, 'ratio', 1),
      ' with the antenna off.',
    ],
    action: [`Suspect water: open and dry ${suspect}, re-make what is green, and test again with the antenna off.`],
  };
}

/** Feeders of VHF and satellite sets are 50 ohm; anything this far off is another family of cable. */
const FEEDER_OHM = 50;
const IMPEDANCE_SLACK_OHM = 10;

export const cableImpedance: Rule = {
  id: 'cable-impedance',
  summary: 'A run in a VHF, AIS or L-band path is not 50 ohm cable.',
  severity: 'B',
  authority: AUTHORITIES.impedance,
  check: (input) => {
    const inUse = new Set(
      input.paths
        .filter((path) => FEEDER_SERVICES.has(path.service) && path.service !== 'mf-hf')
        .flatMap((path) => path.runIds),
    );
    return [...inUse].flatMap((runId) => {
      const cable = input.index.parts.get(input.index.runs.get(runId)?.cableId ?? '');
      if (cable?.kind !== 'coax') return [];
      const ohm = cable.figures.impedanceOhm.value;
      if (Math.abs(ohm - FEEDER_OHM) <= IMPEDANCE_SLACK_OHM) return [];
      return [
        {
          subjects: [runSubject(runId)],
          title: `${runNumber(input, runId)} is the wrong impedance`,
          measured: [`${cable.name}, `, q(ohm, 'ohm'), '.'],
          limit: [q(FEEDER_OHM, 'ohm'), ' throughout.'],
          action: ['Replace it with 50 ohm cable and plugs made for that cable.'],
        },
      ];
    });
  },
};

export const connectorBand: Rule = {
  id: 'connector-band',
  summary: 'A connector is used above the frequency it is made for.',
  severity: 'C',
  authority: AUTHORITIES.connectorBand,
  check: (input) => {
    const seen = new Map<string, Remark>();
    for (const path of input.paths) {
      for (const runId of path.runIds) {
        const run = input.index.runs.get(runId);
        for (const id of [run?.connectorFromId, run?.connectorToId]) {
          const plug = input.index.parts.get(id ?? '');
          if (plug?.kind !== 'connector' || path.frequencyMhz <= plug.figures.maxFrequencyMhz.value) continue;
          seen.set(
            runId,
            connectorRemark(input, runId, plug.name, path.frequencyMhz, plug.figures.maxFrequencyMhz.value),
          );
        }
      }
    }
    return [...seen.values()];
  },
};

function connectorRemark(input: AuditInput, runId: string, plug: string, usedMhz: number, limitMhz: number): Remark {
  return {
    subjects: [runSubject(runId)],
    title: `Connector on ${runNumber(input, runId)} is out of its band`,
    measured: [`${plug} at `, q(usedMhz, 'MHz', 0), '.'],
    limit: ['Made for up to ', q(limitMhz, 'MHz', 0), '.'],
    action: ['Fit an N, TNC or other connector made for the frequency.'],
  };
}

export const transmitRating: Rule = {
  id: 'transmit-rating',
  summary: 'A transmitter works into a splitter or other device that is not rated for transmit.',
  severity: 'A',
  authority: AUTHORITIES.transmitRating,
  check: (input) => {
    const transmitters = new Set(
      itemsOf(input, 'radio')
        .filter(([, part]) => part.figures.txPowerW.value > 0)
        .map(([item]) => item.id),
    );
    const found = new Map<string, Remark>();
    for (const path of input.paths) {
      if (!transmitters.has(path.radioId) || path.service === 'gnss') continue;
      for (const deviceId of path.deviceIds) {
        const part = input.index.effective.get(deviceId);
        if (part?.kind !== 'inline' || part.traits.transmitRated) continue;
        if (part.deviceClass === 'joint' || part.deviceClass === 'adapter') continue;
        found.set(deviceId, transmitRemark(input, path, deviceId));
      }
    }
    return [...found.values()];
  },
};

function transmitRemark(input: AuditInput, path: PathBudget, deviceId: string): Remark {
  const tag = tagOf(input, deviceId);
  return {
    subjects: [itemSubject(deviceId), itemSubject(path.radioId)],
    title: `${tag} is not rated for transmit`,
    measured: [`${tagOf(input, path.radioId)} transmits into ${tag}.`],
    limit: ['Only a device its maker rates for the transmitter’s power, or none.'],
    action: [
      `Do not transmit through it. Take ${tag} out, or replace it with one rated for transmit; give the receiver its own antenna.`,
    ],
  };
}
