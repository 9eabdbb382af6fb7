import { describe, expect, it } from 'vitest';
import { advise } from '../../../core/advice/advise.ts';
import { surveyOf } from '../../../core/advice/survey.ts';
import { whyNone } from '../../../core/advice/whyNone.ts';
import type { Project } from '../../../core/model/project.ts';
import type { ServiceId } from '../../../core/model/services.ts';
import { item, smallBoat } from '../redundancy/smallBoat.ts';
import { onlyMast, plain, without } from './boats.ts';

// What is said of a service that is lost as drawn and that no change gives back, for boats where it is plain why.

const MEND = /^What is aboard for it does not work as drawn/;
const BUY_AIS = /which AIS set to buy is left to you/;
const NOT_ABOARD = /a set that is not aboard/;

const whyLost = (project: Project, serviceId: ServiceId): string =>
  whyNone(surveyOf(project), `lost:${serviceId}`, [serviceId]);

/** The boat whose only place in the open is the masthead, and whose hut is under metal. */
const underMetal = smallBoat({
  ...onlyMast,
  places: onlyMast.places.map((place) => (place.id === 'hut' ? { ...place, overhead: 'metal' } : place)),
});
const bare = smallBoat({ items: [], runs: [], feeds: [], dataLinks: [] });

describe('seen on AIS', () => {
  it('is not told to buy the AIS that is aboard under metal', () => {
    const point = advise(underMetal).points.find(({ pointId }) => pointId === 'lost:ais-transmit');
    expect(point).toMatchObject({ changes: [] });
    expect(point?.why).toMatch(MEND);
  });

  it('is told to buy one where there is none, or one that only listens', () => {
    expect(whyLost(bare, 'ais-transmit')).toMatch(BUY_AIS);
    const parts = plain.parts.map((part) =>
      part.id === 'ais' && part.kind === 'radio' ? { ...part, radioClass: 'ais-receiver' as const } : part,
    );
    expect(whyLost(smallBoat({ ...underMetal, parts }), 'ais-transmit')).toMatch(BUY_AIS);
  });
});

describe('long range and voice', () => {
  it('are not told to get a set that is aboard', () => {
    const under = item('SAT', 'terminal', 'locker', { facts: { overhead: 'metal' } });
    expect(whyLost(smallBoat({ items: [...plain.items, under] }), 'long-range')).toMatch(MEND);
    const noAntenna = smallBoat({ items: without('A1', 'SP', 'AIS'), runs: [], feeds: [] });
    expect(whyLost(noAntenna, 'voice-fixed')).toMatch(MEND);
  });

  it('are told that it takes a set where none is aboard, or only one that goes', () => {
    expect(whyLost(bare, 'long-range')).toMatch(NOT_ABOARD);
    expect(whyLost(bare, 'voice-fixed')).toMatch(NOT_ABOARD);
    const going = plain.items.map((each) => (each.id === 'VHF' ? { ...each, status: 'remove' as const } : each));
    expect(whyLost(smallBoat({ items: going }), 'voice-fixed')).toMatch(NOT_ABOARD);
  });
});
