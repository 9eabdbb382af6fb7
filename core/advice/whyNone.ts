import type { RadioClass } from '../model/part.ts';
import type { ServiceId } from '../model/services.ts';
import { fittedOf, type Survey } from './survey.ts';

/** Why no change is offered against a point, in one sentence. */
export function whyNone(survey: Survey, pointId: string, serviceIds: readonly ServiceId[]): string {
  if (pointId.startsWith('lost:')) return lostWhy(survey, serviceIds);
  if (pointId.startsWith('cause:lightning')) {
    return 'A strike is taken to reach everything joined to an antenna or to the supply: only a set that stays unplugged in storms, or one with its own battery and antenna, would be left.';
  }
  if (pointId.startsWith('cause:fire')) {
    return 'What gives it stands where the fire is: only a set at another place would help, and moving one is left to you.';
  }
  if (pointId.startsWith('cause:flood')) {
    return 'The changes tried leave something it needs below the water: no dry place was found for a battery of its own.';
  }
  if (pointId.startsWith('cause:all-masts')) {
    return 'Everything that gives it stands on the masts: no free place off them was found for an antenna.';
  }
  if (pointId.startsWith('cause:'))
    return 'The event takes all that gives it, and none of the changes tried stands outside it.';
  return componentWhy(survey, pointId);
}

const AIS_SENDERS: readonly RadioClass[] = ['ais-class-a', 'ais-class-b-cs', 'ais-class-b-so'];
/** Fitted sets that are there for a service, whether they give it as drawn or not. */
const MADE_FOR: Partial<Readonly<Record<ServiceId, readonly RadioClass[]>>> = {
  'voice-fixed': ['vhf-fixed'],
  'ais-transmit': AIS_SENDERS,
  'ais-receive': [...AIS_SENDERS, 'ais-receiver'],
  'long-range': ['mf-hf', 'l-band-messenger', 'l-band-voice', 'broadband-terminal'],
};

function lostWhy(survey: Survey, serviceIds: readonly ServiceId[]): string {
  const wanted = serviceIds.flatMap((id) => MADE_FOR[id] ?? []);
  const aboard = fittedOf(survey, 'radio').filter(({ part }) => wanted.includes(part.radioClass));
  if (aboard.length > 0) {
    return serviceIds.includes('voice-fixed')
      ? 'What is aboard for it does not work as drawn, and none of the changes tried mends it: the matrix says why.'
      : 'What is aboard for it does not work as drawn, and no place was found that would mend it: the matrix says why.';
  }
  return serviceIds.includes('ais-transmit') || serviceIds.includes('ais-receive')
    ? 'Nothing aboard gives it, and which AIS set to buy is left to you.'
    : 'Nothing aboard gives it, and none of the changes tried here does: it takes a set that is not aboard.';
}

function componentWhy(survey: Survey, pointId: string): string {
  const component = survey.assessment.redundancy.components.find(({ id }) => id === pointId);
  const label = component?.label ?? pointId;
  switch (component?.kind) {
    case 'radio':
    case 'standalone':
    case 'position-source':
      return `It hangs on ${label} alone: only a second set would help, and none of the changes tried brings one.`;
    case 'structure':
      return `${label} carries all that gives it, and no free place off it was found for an antenna.`;
    case 'bank':
    case 'breaker':
    case 'feed':
    case 'power-device':
      return `All the supply goes through ${label}: no other battery of that voltage, no dry place for one and no lead past it was found.`;
    case 'antenna':
    case 'cable':
      if (isGnss(survey, pointId))
        return `The set takes its fix by ${label} alone, and has no socket for a second line.`;
      return noWayRound(label);

    case 'joint':
    case 'device':
      return noWayRound(label);
    default:
      return `None of the changes tried gets round ${label}.`;
  }
}

const noWayRound = (label: string): string =>
  `The signal has no way round ${label}: no free place for another antenna was found.`;

function isGnss({ assessment }: Survey, pointId: string): boolean {
  const paths = assessment.paths.filter(
    ({ antennaId, runIds }) => pointId === `item:${antennaId}` || runIds.some((id) => pointId === `run:${id}`),
  );
  return paths.length > 0 && paths.every(({ service }) => service === 'gnss');
}
