import type { Item } from '../../model/project.ts';
import { q, type RichText } from '../../units/quantity.ts';
import { adding, cannotTell, doesNotApply, itemSubjects, met, notMet, tagsOf, verb } from '../answers.ts';
import { RULE_FIGURES } from '../figures.ts';
import { ids, vhfSets } from '../sets.ts';
import type { Answer, PackInput } from '../types.ts';
import { leastCapacityAh, radioBatteries } from './reserveRules.ts';
import { type Battery, chargersOf, sourcesOf } from './supply.ts';

/** Whether a drawn charger fills a radio battery in the time asked for. */
export function recharge(input: PackInput): Answer {
  const batteries = radioBatteries(input).filter(({ isStarter }) => !isStarter);
  if (batteries.length === 0) return doesNotApply('No fixed VHF set on a battery that is drawn.');
  const hours = RULE_FIGURES.solasRechargeH;
  const fits = batteries.flatMap((battery) => {
    const capacityAh = battery.part.figures.capacityAh?.value ?? 0;
    return chargersOf(input, battery.item.id).map(
      ({ item, part }): Fit => ({ battery, charger: item, capacityAh, ratingA: part.figures.ratingA?.value ?? 0 }),
    );
  });
  const subjects = itemSubjects(batteries.map(({ item }) => item.id));
  if (fits.length === 0) {
    return cannotTell(
      `No charger is drawn to ${tagsOf(
        input,
        batteries.map(({ item }) => item.id),
      )}; engine and sun are not on the drawing. Look at what charges it.`,
      subjects,
    );
  }
  const known = fits.filter(({ capacityAh, ratingA }) => capacityAh > 0 && ratingA > 0);
  const [best] = [...known].sort((a, b) => a.capacityAh / a.ratingA - b.capacityAh / b.ratingA);
  if (!best) return cannotTell('Charger or battery states no rating: read the labels.', subjects);
  const words: RichText = [
    `${best.charger.tag} at `,
    q(best.ratingA, 'A', 0),
    ` fills ${best.battery.item.tag}, `,
    q(best.capacityAh, 'Ah'),
    ', in ',
    q(best.capacityAh / best.ratingA, 'hour'),
    ' at the least; asked for: ',
    q(hours, 'hour', 0),
    '.',
  ];
  const answer = restored(input, best, words);
  return answer.verdict === 'cannot-tell' ? answer : adding(answer, 'That it works by itself is for the eye.');
}

/** A charger on a battery, with what their labels state. */
interface Fit {
  readonly battery: Battery;
  readonly charger: Item;
  readonly capacityAh: number;
  readonly ratingA: number;
}

/** Filled in time it is met; else it turns on the least capacity, which is the reserve of the sets and not the whole battery. */
function restored(input: PackInput, { battery, charger, capacityAh, ratingA }: Fit, words: RichText): Answer {
  const subjects = itemSubjects([charger.id, battery.item.id]);
  const { solasRechargeH, solasReserveH } = RULE_FIGURES;
  if (capacityAh / ratingA <= solasRechargeH) return met(words, subjects);
  const leastAh = leastCapacityAh(input, battery, solasReserveH);
  if (leastAh === null)
    return cannotTell([...words, ' The least capacity may be less than all of it; no load is reckoned.'], subjects);
  const least: RichText = [
    ' The least capacity, the load for ',
    q(solasReserveH, 'hour', 0),
    ', is ',
    q(leastAh, 'Ah', 1),
    ': ',
    q(leastAh / ratingA, 'hour'),
    '.',
  ];
  return (leastAh / ratingA <= solasRechargeH ? met : notMet)([...words, ...least], subjects);
}

export function capacityCheck(input: PackInput): Answer {
  const batteries = radioBatteries(input);
  if (batteries.length === 0) return doesNotApply('No fixed VHF set on a battery that is drawn.');
  const named = batteries.map(({ item }) => item.id);
  return cannotTell(
    `${tagsOf(input, named)}: no capacity test is kept here. Look for one within ${RULE_FIGURES.solasCapacityCheckMonths} months in the log.`,
    itemSubjects(named),
  );
}

/** A charger, or a second battery to change over to. */
export function chargingOrSecond(input: PackInput): Answer {
  const sets = vhfSets(input);
  if (sets.length === 0) return doesNotApply('No fixed VHF set on the drawing.');
  const batteries = radioBatteries(input);
  const named = batteries.map(({ item }) => item.id);
  const charged = named.filter((id) => chargersOf(input, id).length > 0);
  const chargers = [...new Set(charged.flatMap((id) => chargersOf(input, id).map(({ item }) => item.id)))];
  if (chargers.length > 0)
    return met(
      `${tagsOf(input, chargers)} ${verb(chargers, 'charges', 'charge')} ${tagsOf(input, charged)}.`,
      itemSubjects([...chargers, ...charged]),
    );
  const double = sets.find(({ item }) => sourcesOf(input, item.id).batteries.length > 1);
  if (double) {
    const two = sourcesOf(input, double.item.id).batteries.map(({ item }) => item.id);
    return met(
      `${double.item.tag} has ${tagsOf(input, two)}; that they last the voyage is for the log.`,
      itemSubjects([double.item.id, ...two]),
    );
  }
  const where = named.length === 0 ? tagsOf(input, ids(sets)) : tagsOf(input, named);
  return cannotTell(
    `No charger is drawn to ${where} and no second battery; what the engine or the sun charges is not on the drawing.`,
    itemSubjects([...ids(sets), ...named]),
  );
}
