import { cannotTell, doesNotApply, itemSubjects, met, notMet, tagsOf } from '../answers.ts';
import { aisTransponder, handheld, positionFix, weatherReceiver } from '../checks/beside.ts';
import { registeredBeacon } from '../checks/carriage.ts';
import { emergencyAerial, mastheadAntenna } from '../checks/emergencyAerial.ts';
import { aisAntenna, feederLoss, feederTable, ratedPower } from '../checks/feeder.ts';
import { longRangeSpare, telephoneOrHf } from '../checks/longRange.ts';
import { hfOnAir, ids, satelliteSets, vhfOnAir, vhfSets } from '../sets.ts';
import type { Answer, PackInput, PackRule } from '../types.ts';
import { type Common, rulesOf } from './define.ts';

const vhf = 'The VHF set and its antenna';
const beside = 'Beside it';

const OSR_2012: Common = {
  edition: 'Offshore Special Regulations 2012-13',
  source: 'Offshore Special Regulations 2012-13, category 2, quoted word for word in a sailing forum',
  strength: 'race',
  basis: 'read',
  appliesTo: 'entrants of a category 2 race',
};

function anyRadio(input: PackInput): Answer {
  const sets = ids([...vhfOnAir(input), ...hfOnAir(input)]);
  if (sets.length > 0) return met(`${tagsOf(input, [...new Set(sets)])}.`, itemSubjects(sets));
  const satellite = ids(satelliteSets(input));
  if (satellite.length === 0) return notMet('No marine transceiver is ready to send.');
  return cannotTell(`Only ${tagsOf(input, satellite)}: enough if the notice of race says so.`, itemSubjects(satellite));
}

function channel72(input: PackInput): Answer {
  const sets = ids(vhfSets(input));
  if (sets.length === 0) return doesNotApply('No fixed VHF set on the drawing.');
  return cannotTell(`Channels of ${tagsOf(input, sets)} are not recorded: turn it to 72.`, itemSubjects(sets));
}

export const OSR_CATEGORY_2: readonly PackRule[] = rulesOf(OSR_2012, [
  {
    id: 'osr-radio',
    theme: vhf,
    title: 'A marine transceiver, or a satellite terminal if the notice of race says so',
    clause: '3.29.1(a)',
    unseen: 'the notice of race',
    check: anyRadio,
  },
  {
    id: 'osr-emergency-antenna',
    theme: vhf,
    title: 'An emergency antenna where the usual one depends on the mast',
    clause: '3.29.1(a)(i)',
    unseen: 'that it was tried',
    check: (input) => emergencyAerial(input, { sails: false, rigged: false }),
  },
  {
    id: 'osr-25-w',
    theme: vhf,
    title: 'VHF rated at 25 W',
    clause: '3.29.1(b)(i)',
    unseen: 'what it puts out today',
    check: ratedPower,
  },
  {
    id: 'osr-masthead',
    theme: vhf,
    title: 'VHF antenna at the masthead',
    clause: '3.29.1(b)(ii)',
    unseen: 'nothing more',
    check: mastheadAntenna,
  },
  {
    id: 'osr-feeder-loss',
    theme: vhf,
    title: 'No more than 40 % of the power lost in the feeder',
    clause: '3.29.1(b)(ii)',
    unseen: 'wet joints and old cable, unless they were measured; whether devices count as feeder',
    check: feederLoss,
  },
  {
    id: 'osr-feeder-table',
    theme: vhf,
    title: 'The other way to show it: RG-8X to 15 m, RG-8/U to 28 m, semi-air RG-8 to 43 m, 600 class to 70 m',
    clause: '3.29.1(b)(iii)',
    unseen: 'the makers’ types that the text names for the last two, read here by their kind',
    check: feederTable,
  },
  {
    id: 'osr-channel-72',
    theme: vhf,
    title: 'Channel 72 should be on it',
    clause: '3.29.1(b)(iv)',
    unseen: 'the set’s channels',
    check: channel72,
  },
  {
    id: 'osr-handheld',
    theme: beside,
    title: 'A watertight handheld VHF in the grab bag',
    clause: '3.29.1(e)',
    unseen: 'whether it is watertight',
    check: (input) => handheld(input, ['handheld-vhf', 'handheld-vhf-dsc']),
  },
  {
    id: 'osr-weather',
    theme: beside,
    title: 'A weather receiver independent of the main set',
    clause: '3.29.1(f)',
    unseen: 'what it receives where she sails',
    check: weatherReceiver,
  },
  {
    id: 'osr-position',
    theme: beside,
    title: 'A means of fixing the position',
    clause: '3.29.1(i)',
    unseen: 'nothing more',
    check: positionFix,
  },
  {
    id: 'osr-ais',
    theme: beside,
    title: 'An AIS transponder',
    clause: '3.29.1(n)',
    unseen: 'that it is on',
    check: aisTransponder,
  },
]);

/** What was seen of later editions, in parts. */
export const OSR_LATER: readonly PackRule[] = rulesOf({ ...OSR_2012, basis: 'second-hand' }, [
  {
    id: 'osr-later-emergency-antenna',
    theme: 'Antennas',
    title: 'An emergency VHF antenna where the usual one depends on the mast',
    clause: '3.29',
    edition: 'Offshore Special Regulations, about 2017',
    source: 'a sailing magazine’s test of emergency antennas, August 2017',
    appliesTo: 'entrants of category 0 to 3 races',
    unseen: 'that it was tried',
    check: (input) => emergencyAerial(input, { sails: false, rigged: false }),
  },
  {
    id: 'osr-later-ais-antenna',
    theme: 'Antennas',
    title:
      'AIS on the masthead antenna by a low-loss splitter, or on its own: 0.38 m or longer, its foot 3 m or more up',
    clause: '3.29.6(b)',
    edition: 'Offshore Special Regulations, about 2022',
    source: 'quoted in a sailing forum, 2022',
    appliesTo: 'entrants whose boat has AIS',
    unseen: 'what loss counts as low',
    check: aisAntenna,
  },
  {
    id: 'osr-later-beacon',
    theme: 'Beacon',
    title: 'A registered 406 MHz beacon',
    clause: '4.19',
    edition: 'Offshore Special Regulations, edition not known',
    source: 'from memory; the clause was not seen',
    basis: 'memory',
    appliesTo: 'entrants of category 0 to 2 races',
    unseen: 'the register itself; battery date',
    check: registeredBeacon,
  },
]);

const AUSTRALIA: Common = {
  edition: 'Australian Special Regulations 2021',
  source: 'the national authority’s correction notice, 8 July 2021',
  strength: 'race',
  basis: 'read',
  appliesTo: 'entrants of category 1 and 2 races in Australia',
};

export const AUSTRALIAN_RACING: readonly PackRule[] = [
  ...rulesOf(AUSTRALIA, [
    {
      id: 'aus-telephone-or-hf',
      theme: 'Long range',
      title: 'A satellite telephone or HF',
      clause: '3.25',
      unseen: 'accounts and subscriptions',
      check: telephoneOrHf,
    },
    {
      id: 'aus-second-antenna',
      theme: 'Long range',
      title: 'A second antenna for it, or other means of keeping that communication',
      clause: '3.25.5',
      unseen: 'what the organiser takes as other means',
      check: longRangeSpare,
    },
  ]),
  ...rulesOf(
    {
      ...AUSTRALIA,
      edition: 'an Australian category 2 notice of race, year not noted',
      source: 'a published notice of race',
      appliesTo: 'entrants of that race',
    },
    [
      {
        id: 'aus-rigged-emergency-antenna',
        theme: 'One notice of race',
        title: 'Emergency aerial with bracket and cable fitted for good',
        clause: 'appendix C',
        unseen: 'the bracket',
        check: (input) => emergencyAerial(input, { sails: false, rigged: true }),
      },
      {
        id: 'aus-inspection',
        theme: 'One notice of race',
        title: 'A radio inspection certificate',
        clause: 'appendix C',
        unseen: 'certificates',
        check: inspection,
      },
    ],
  ),
];

function inspection(input: PackInput): Answer {
  const sets = ids([...vhfOnAir(input), ...hfOnAir(input)]);
  if (sets.length === 0) return notMet('No marine transceiver is ready to send, so there is nothing to inspect.');
  return cannotTell(
    `Certificates are not kept here: look for that of ${tagsOf(input, [...new Set(sets)])}.`,
    itemSubjects(sets),
  );
}
