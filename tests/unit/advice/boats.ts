import type { Place } from '../../../core/model/boat.ts';
import type { Item, Project } from '../../../core/model/project.ts';
import { feed, item, P, run, smallBoat } from '../redundancy/smallBoat.ts';

// Small boats that the changes are worked out on by hand.

/** The small sloop as it is. */
export const plain = smallBoat();

/** The small boat with some places changed. */
export function withPlaces(change: (place: Place) => Place | null, more: Partial<Project> = {}): Project {
  return smallBoat({
    ...more,
    places: plain.places.flatMap((place) => {
      const after = change(place);
      return after ? [after] : [];
    }),
  });
}

export const without = (...ids: readonly string[]): Item[] => plain.items.filter(({ id }) => !ids.includes(id));

/** The boat with no place in the open but its masthead. */
export const onlyMast = withPlaces((place) => (place.id === 'arch' ? null : place), {
  items: plain.items.map((each) => ({ ...each, placeId: each.placeId === 'arch' ? null : each.placeId })),
});

/** Two voice sets on antennas of their own, one breaker and one bank. */
export const twoSets = smallBoat({
  items: [
    ...without('SP', 'AIS'),
    item('VHF2', 'vhf', 'locker'),
    item('A2', 'whip', null, { position: P(11, 4.1), placeId: 'arch' }),
  ],
  runs: [run('W1', 'VHF.ant', 'A1.rf'), run('W2', 'VHF2.ant', 'A2.rf')],
  feeds: [feed('F0', 'BAT', 'BRK'), feed('F1', 'BRK', 'VHF'), feed('F2', 'BRK', 'VHF2')],
});

/** One voice set straight on the masthead antenna. */
export const oneSet = smallBoat({
  items: without('SP', 'AIS'),
  runs: [run('W1', 'VHF.ant', 'A1.rf')],
  feeds: [feed('F0', 'BAT', 'BRK'), feed('F1', 'BRK', 'VHF')],
});
