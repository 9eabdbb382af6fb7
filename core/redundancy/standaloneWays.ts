import type { PartOf, StandaloneClass } from '../model/part.ts';
import type { Item } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import type { Build } from './build.ts';
import { addWay, use } from './build.ts';
import type { Graded } from './grades.ts';
import { FULL, reduced, worse } from './grades.ts';

/** What each kind of stand-alone set is good for, and how good. */
const USES: Readonly<Record<StandaloneClass, readonly (readonly [ServiceId, Graded])[]>> = {
  'beacon-406': [['beacon', FULL]],
  'personal-beacon': [['person-overboard', FULL]],
  'radar-sart': [['locating', FULL]],
  'ais-sart': [['locating', FULL]],
  'ais-mob': [['person-overboard', FULL]],
  'handheld-vhf': [
    ['voice-handheld', FULL],
    ['safety-information', reduced('by handheld, with a short reach')],
  ],
  'handheld-vhf-dsc': [
    ['voice-handheld', FULL],
    ['safety-information', reduced('by handheld, with a short reach')],
  ],
  'handheld-satellite': [
    ['long-range', reduced('by handheld: needs open sky and its own battery')],
    ['safety-information', reduced('by handheld: needs open sky and its own battery')],
  ],
};

/** The services of a set with its own antenna and battery. It hangs on nothing but itself. */
export function standaloneWays(build: Build, item: Item, part: PartOf<'standalone'>): void {
  for (const [serviceId, graded] of USES[part.standaloneClass])
    addStandalone(build, item, serviceId, found(item, graded));
  const { dsc, internalGnss } = part.traits;
  if (dsc) {
    const reach = reduced('by handheld, with a short reach');
    const graded = internalGnss ? reach : worse(reduced('the alert carries no position'), reach);
    addStandalone(build, item, 'digital-alert', found(item, graded));
  }
  if (internalGnss && part.standaloneClass === 'handheld-vhf-dsc') {
    addStandalone(build, item, 'position', found(item, reduced('read off a handheld')));
  }
}

/** What was found on board takes off what the set could do. */
function found(item: Item, graded: Graded): Graded {
  const { charged, registration } = item.facts;
  let result = graded;
  if (charged === false) result = worse(reduced('its battery was not found charged'), result);
  if (registration === 'another-owner') result = worse(reduced('it is registered to another owner'), result);
  if (registration === 'none') result = worse(reduced('it is not registered'), result);
  return result;
}

function addStandalone(build: Build, item: Item, serviceId: ServiceId, graded: Graded): void {
  const way = { id: `${serviceId}:${item.id}`, serviceId, label: item.tag, ...graded };
  addWay(build, { ...way, itemId: item.id, carried: false, subjects: [{ kind: 'item', id: item.id }] }, [
    use(build, 'item', item.id),
  ]);
}
