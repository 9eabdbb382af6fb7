import type { PathService } from '../links/types.ts';
import type { Item } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import type { Build } from './build.ts';
import { addWay } from './build.ts';
import { pathInputs, pathSubjects, setInputs } from './chain.ts';
import { ownFix } from './fix.ts';
import type { Graded } from './grades.ts';

/**
 * A service by a set that needs nothing but itself, its supply and a path: NAVTEX, broadcast, cellular, Wi-Fi. `service`
 * null takes any path: a set with one socket has but one use for it.
 */
export function plainWays(
  build: Build,
  item: Item,
  service: PathService | null,
  serviceId: ServiceId,
  graded: Graded,
): void {
  const paths = (build.pathsOf.get(item.id) ?? []).filter((path) => service === null || path.service === service);
  if (paths.length === 0) build.noWays.push({ serviceId, reason: `${item.tag} is connected to no antenna` });
  for (const path of paths) {
    const label = `${item.tag} on ${build.index.items.get(path.antennaId)?.tag ?? path.antennaId}`;
    addWay(
      build,
      {
        id: `${serviceId}:${path.id}`,
        serviceId,
        label,
        ...graded,
        itemId: item.id,
        carried: false,
        subjects: pathSubjects(path),
        path,
      },
      [...setInputs(build, item, 'ship'), ...pathInputs(build, path)],
    );
  }
}

/** The boat's position by a set with a GNSS receiver of its own. */
export function positionWay(build: Build, item: Item, graded: Graded): void {
  const fix = ownFix(build, item);
  if (fix.gate === null) {
    build.noWays.push({ serviceId: 'position', reason: fix.reason });
    return;
  }
  addWay(
    build,
    {
      id: `position:${item.id}`,
      serviceId: 'position',
      label: item.tag,
      ...graded,
      itemId: item.id,
      carried: false,
      subjects: [{ kind: 'item', id: item.id }],
    },
    [...setInputs(build, item, 'ship'), fix.gate],
  );
}
