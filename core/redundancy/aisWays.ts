import type { PathBudget } from '../links/types.ts';
import type { PartOf } from '../model/part.ts';
import type { Item } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import type { Build } from './build.ts';
import { addWay } from './build.ts';
import { pathInputs, pathSubjects, setInputs } from './chain.ts';
import type { Found } from './fix.ts';
import { ownFix, positionGate } from './fix.ts';
import { feederGrade, handGrade, worse } from './grades.ts';

/** Seeing others and being seen on AIS, over every antenna the set can reach. Only a transponder is seen. */
export function aisWays(build: Build, item: Item, part: PartOf<'radio'>): void {
  const paths = (build.pathsOf.get(item.id) ?? []).filter((path) => path.service === 'ais');
  for (const path of paths) addAis(build, item, 'ais-receive', path, []);
  if (paths.length === 0)
    build.noWays.push({ serviceId: 'ais-receive', reason: `${item.tag} is connected to no antenna` });
  if (part.radioClass !== 'ais-receiver') transmitWays(build, item, part, paths);
}

function transmitWays(build: Build, item: Item, part: PartOf<'radio'>, paths: readonly PathBudget[]): void {
  const onAir = paths.filter((path) => path.canTransmit);
  const fix = part.traits.needsFixToTransmit ? fixForAis(build, item, part) : undefined;
  if (onAir.length === 0) {
    build.noWays.push({
      serviceId: 'ais-transmit',
      reason: `${item.tag} has no path to an antenna that passes its transmitter`,
    });
  } else if (fix?.gate === null) {
    build.noWays.push({ serviceId: 'ais-transmit', reason: `${fix.reason}; without a fix it does not transmit` });
  } else {
    for (const path of onAir) addAis(build, item, 'ais-transmit', path, fix ? [fix.gate] : []);
  }
}

/** A class B set transmits only on its own receiver's fix; a class A set takes one from outside as well. */
function fixForAis(build: Build, item: Item, part: PartOf<'radio'>): Found {
  const ownOnly = part.radioClass !== 'ais-class-a' && part.traits.internalGnss;
  return ownOnly ? ownFix(build, item) : positionGate(build, item);
}

function addAis(build: Build, item: Item, serviceId: ServiceId, path: PathBudget, extra: readonly string[]): void {
  addWay(
    build,
    {
      id: `${serviceId}:${path.id}`,
      serviceId,
      label: `${item.tag} on ${build.index.items.get(path.antennaId)?.tag ?? path.antennaId}`,
      ...worse(handGrade(build.index, path), feederGrade(build.project, path)),
      itemId: item.id,
      carried: false,
      subjects: pathSubjects(path),
      path,
    },
    [...setInputs(build, item, 'ship'), ...pathInputs(build, path), ...extra],
  );
}
