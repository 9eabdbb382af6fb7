import { antennaCandidates } from './candidates/antennas.ts';
import { batteryCandidates } from './candidates/batteries.ts';
import { breakerCandidates } from './candidates/breaker.ts';
import { emergencyCandidates } from './candidates/emergency.ts';
import { jumperCandidates } from './candidates/jumpers.ts';
import { positionCandidates } from './candidates/position.ts';
import { receiverCandidates } from './candidates/receiver.ts';
import { skyCandidates } from './candidates/sky.ts';
import { spareCandidates } from './candidates/spares.ts';
import { splitterCandidates } from './candidates/splitters.ts';
import { supplyCandidates } from './candidates/supply.ts';
import type { Survey } from './survey.ts';
import type { Candidate } from './types.ts';

/** Every change worth trying on a boat; what each does to it is for the engine to say. */
export function candidatesOf(survey: Survey): readonly Candidate[] {
  return [
    ...supplyCandidates(survey),
    ...breakerCandidates(survey),
    ...batteryCandidates(survey),
    ...antennaCandidates(survey),
    ...jumperCandidates(survey),
    ...splitterCandidates(survey),
    ...emergencyCandidates(survey),
    ...positionCandidates(survey),
    ...receiverCandidates(survey),
    ...skyCandidates(survey),
    ...spareCandidates(survey),
  ];
}
