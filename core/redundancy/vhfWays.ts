import type { PathBudget } from '../links/types.ts';
import type { Item } from '../model/project.ts';
import type { ServiceId } from '../model/services.ts';
import type { Build } from './build.ts';
import { addWay, use } from './build.ts';
import { pathInputs, pathSubjects, setInputs } from './chain.ts';
import { emergencyAntennas, emergencyFit } from './emergency.ts';
import { positionGate } from './fix.ts';
import type { Graded } from './grades.ts';
import { feederGrade, handGrade, heightGrade, reduced, worse } from './grades.ts';

/** One way a fixed VHF set gets on the air, before it is known for what service. */
interface OnAir {
  readonly id: string;
  readonly label: string;
  readonly transmits: boolean;
  readonly voice: Graded;
  readonly reception: Graded;
  readonly inputs: readonly string[];
  readonly subjects: ReturnType<typeof pathSubjects>;
  readonly path?: PathBudget;
  readonly emergencyAntennaId?: string;
}

/** Voice, digital alert and safety information by a fixed VHF set, over every antenna it can reach. */
export function vhfFixedWays(build: Build, item: Item, hasDsc: boolean): void {
  const ways = [...pathWays(build, item), ...emergencyWays(build, item)];
  for (const way of ways) {
    if (way.transmits) add(build, item, 'voice-fixed', way, way.voice, []);
    add(build, item, 'safety-information', way, way.reception, []);
  }
  const onAir = ways.filter((way) => way.transmits);
  if (onAir.length === 0) noTransmitPath(build, item, hasDsc, ways.length > 0);
  else if (hasDsc) alertWays(build, item, onAir);
  else build.noWays.push({ serviceId: 'digital-alert', reason: `${item.tag} has no digital selective calling` });
}

function noTransmitPath(build: Build, item: Item, hasDsc: boolean, receives: boolean): void {
  const reason = receives
    ? `${item.tag} reaches an antenna only through a device that does not pass its transmitter`
    : `${item.tag} is connected to no antenna`;
  build.noWays.push({ serviceId: 'voice-fixed', reason });
  if (hasDsc) build.noWays.push({ serviceId: 'digital-alert', reason });
  if (!receives) build.noWays.push({ serviceId: 'safety-information', reason });
}

function alertWays(build: Build, item: Item, onAir: readonly OnAir[]): void {
  const position = positionGate(build, item);
  for (const way of onAir) {
    if (position.gate !== null) add(build, item, 'digital-alert', way, way.voice, [position.gate], 'with position');
    const why = position.gate === null ? position.reason : 'its position source is gone';
    const bare = worse(reduced(`the alert carries no position: ${why}`), way.voice);
    add(build, item, 'digital-alert', way, bare, [], 'without position');
  }
}

function add(
  build: Build,
  item: Item,
  serviceId: ServiceId,
  way: OnAir,
  graded: Graded,
  extra: readonly string[],
  variant = '',
): void {
  addWay(
    build,
    {
      id: `${serviceId}:${way.id}${variant === '' ? '' : `:${variant}`}`,
      serviceId,
      label: variant === '' ? way.label : `${way.label}, ${variant}`,
      ...graded,
      itemId: item.id,
      carried: false,
      subjects: way.subjects,
      ...(way.path ? { path: way.path } : {}),
      ...(way.emergencyAntennaId === undefined ? {} : { emergencyAntennaId: way.emergencyAntennaId }),
    },
    [...way.inputs, ...extra],
  );
}

function pathWays(build: Build, item: Item): readonly OnAir[] {
  const own = setInputs(build, item, 'ship');
  return (build.pathsOf.get(item.id) ?? [])
    .filter((path) => path.service === 'vhf-voice')
    .map((path) => pathWay(build, item, path, own));
}

function pathWay(build: Build, item: Item, path: PathBudget, own: readonly string[]): OnAir {
  const height = worse(handGrade(build.index, path), heightGrade(build.project, path));
  return {
    id: path.id,
    label: `${item.tag} on ${build.index.items.get(path.antennaId)?.tag ?? path.antennaId}`,
    transmits: path.canTransmit,
    voice: worse(feederGrade(build.project, path), height),
    // A coast station's power and height make up for a poor feeder in reception; a low antenna still shortens it.
    reception: height,
    inputs: [...own, ...pathInputs(build, path)],
    subjects: pathSubjects(path),
    path,
  };
}

function emergencyWays(build: Build, item: Item): readonly OnAir[] {
  const ways: OnAir[] = [];
  for (const antenna of emergencyAntennas(build.project)) {
    if (emergencyFit(build.project, antenna, item).verdict !== 'fits') continue;
    const graded = reduced('the emergency antenna is rigged by hand near deck level');
    ways.push({
      id: `${item.id}>${antenna.id}`,
      label: `${item.tag} on emergency antenna ${antenna.tag}`,
      transmits: true,
      voice: graded,
      reception: graded,
      inputs: [...setInputs(build, item, 'ship'), use(build, 'item', antenna.id)],
      subjects: [
        { kind: 'item', id: item.id },
        { kind: 'item', id: antenna.id },
      ],
      emergencyAntennaId: antenna.id,
    });
  }
  return ways;
}
