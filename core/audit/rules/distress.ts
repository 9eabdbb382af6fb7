import type { Item } from '../../model/project.ts';
import { emergencyAntennas, emergencyFit } from '../../redundancy/emergency.ts';
import { q } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { AuditInput, Remark, Rule } from '../rule.ts';
import { itemSubject, itemsOf, tagOf } from '../rule.ts';

export const beaconRegistration: Rule = {
  id: 'beacon-registration',
  summary: 'A 406 MHz beacon is not registered to this boat.',
  severity: 'A',
  authority: AUTHORITIES.beacon,
  check: (input) =>
    itemsOf(input, 'standalone').flatMap(([item]) => {
      const { registration } = item.facts;
      if (registration !== 'another-owner' && registration !== 'none') return [];
      return [
        {
          subjects: [itemSubject(item.id)],
          title: `${item.tag} is not registered to this boat`,
          measured: [registration === 'none' ? 'No registration found.' : 'The registration shows another owner.'],
          limit: ['Registered to the boat that carries it, with contacts who know where she is.'],
          action: [
            'Register it with the authority of its country code, read the identity back by self-test only, and check the battery and release dates. Keep it aboard and armed meanwhile.',
          ],
        },
      ];
    }),
};

export const beaconMissing: Rule = {
  id: 'beacon-missing',
  summary: 'No 406 MHz beacon is recorded aboard.',
  severity: 'C',
  authority: AUTHORITIES.carriage,
  check: (input) => {
    const carried = itemsOf(input, 'standalone').some(
      ([, part]) => part.standaloneClass === 'beacon-406' || part.standaloneClass === 'personal-beacon',
    );
    if (carried || input.project.items.length === 0) return [];
    return [
      {
        subjects: [{ kind: 'boat', id: 'boat' }],
        title: 'No 406 MHz beacon recorded',
        measured: ['No beacon among the items.'],
        limit: ['A registered 406 MHz beacon for anyone who goes out of VHF reach.'],
        action: ['Carry one and register it; if one is aboard, add it here.'],
      },
    ];
  },
};

export const emergencyAntennaMissing: Rule = {
  id: 'emergency-antenna-missing',
  summary: 'One mast carries every fixed VHF antenna, and there is no emergency antenna.',
  severity: 'A',
  authority: AUTHORITIES.emergencyAntenna,
  check: (input) => {
    if (emergencyAntennas(input.project).length > 0) return [];
    const point = input.redundancy.singlePoints.find(
      ({ componentId, serviceIds }) => isMast(input, componentId) && serviceIds.includes('voice-fixed'),
    );
    if (!point) return [];
    const antennas = [
      ...new Set(input.paths.filter((path) => path.service === 'vhf-voice').map((path) => path.antennaId)),
    ];
    const mastId = point.componentId.slice('structure:'.length);
    return [
      {
        subjects: [...antennas.map(itemSubject), { kind: 'structure', id: mastId }],
        title: 'No emergency antenna',
        measured: [`Fixed VHF voice ends with the mast: ${antennas.map((id) => tagOf(input, id)).join(', ')}.`],
        limit: ['An emergency antenna where the main one depends on the mast.'],
        action: [
          'Carry one whose lead reaches the set and whose plug fits it, or fit a second antenna off the mast; try it once under way.',
        ],
      },
    ];
  },
};

function isMast(input: AuditInput, componentId: string): boolean {
  return input.project.boat.masts.some((mast) => componentId === `structure:${mast.id}`);
}

export const emergencyAntennaUnusable: Rule = {
  id: 'emergency-antenna-unusable',
  summary: 'An emergency antenna’s lead does not reach any fixed VHF set, or its plug does not fit.',
  severity: 'A',
  authority: AUTHORITIES.emergencyAntenna,
  check: (input) => {
    const sets = itemsOf(input, 'radio')
      .filter(([, part]) => part.radioClass === 'vhf-fixed')
      .map(([item]) => item);
    return emergencyAntennas(input.project).flatMap((antenna) => unusable(input, antenna, sets));
  },
};

function unusable(input: AuditInput, antenna: Item, sets: readonly Item[]): readonly Remark[] {
  const fits = sets.map((set) => ({ set, fit: emergencyFit(input.project, antenna, set) }));
  if (fits.length === 0 || fits.some(({ fit }) => fit.verdict === 'fits' || fit.verdict === 'unknown')) return [];
  const { set, fit } = fits.reduce((near, each) => (each.fit.distanceM < near.fit.distanceM ? each : near));
  const plug = fit.leadConnector === null ? [] : [`, with a ${fit.leadConnector.toUpperCase()} plug`];
  const socket = fit.socket === 'uhf' ? 'SO-239 (UHF)' : fit.socket.toUpperCase();
  return [
    {
      subjects: [itemSubject(antenna.id), itemSubject(set.id)],
      title: `${antenna.tag} cannot be connected`,
      measured: [
        'Lead of ',
        q(fit.leadLengthM ?? 0, 'm'),
        ...plug,
        '; the nearest set, ',
        `${set.tag}, is `,
        q(fit.distanceM, 'm'),
        ` away with a ${socket} socket.`,
      ],
      limit: ['A lead that reaches a fixed set, and a plug that fits it.'],
      action: ['Make up a longer lead with the right plug, stow it with the antenna, and try it once under way.'],
    },
  ];
}
