import type { Item } from '../../model/project.ts';
import { stands } from '../../redundancy/build.ts';
import { q } from '../../units/quantity.ts';
import { AUTHORITIES } from '../authorities.ts';
import type { Rule } from '../rule.ts';
import { itemSubject, itemsOf, runSubject } from '../rule.ts';

const BY_INSTALLER =
  ' HF voltages burn: transmit only when nobody can touch wire, lead-in or tuner; have an installer of such sets do it.';
const INSULATOR_M = 2.1;

export const hfInsulatorLow: Rule = {
  id: 'hf-insulator-low',
  summary: 'The live part of an HF wire can be touched from the deck.',
  severity: 'B',
  authority: AUTHORITIES.hfInsulator,
  check: (input) =>
    itemsOf(input, 'antenna').flatMap(([item]) => {
      const heightM = item.facts.lowerInsulatorAboveDeckM;
      if (heightM === undefined || heightM >= INSULATOR_M || item.facts.insulatorSleeved === true) return [];
      return [
        {
          subjects: [itemSubject(item.id)],
          title: `${item.tag} is live within reach`,
          measured: ['Lower insulator ', q(heightM, 'm', 2), ' above the deck, no sleeve.'],
          limit: ['At least ', q(INSULATOR_M, 'm'), ', or the wire sleeved to that height.'],
          action: [
            `Sleeve the wire to that height now; move the insulator up when the rig is next worked on, by a rigger.${BY_INSTALLER}`,
          ],
        },
      ];
    }),
};

export const hfLeadInInside: Rule = {
  id: 'hf-lead-in-inside',
  summary: 'Part of an HF lead-in, which radiates, runs inside a metal hull.',
  severity: 'B',
  authority: AUTHORITIES.hfLeadIn,
  check: (input) => {
    const runs = input.project.runs
      .filter((run) => stands(run) && (run.facts.insideMetalM ?? 0) > 0)
      .map((run) => ({ subject: runSubject(run.id), name: run.number, insideM: run.facts.insideMetalM ?? 0 }));
    const items = input.project.items
      .filter((item) => stands(item) && (item.facts.leadInInsideMetalM ?? 0) > 0)
      .map((item) => ({ subject: itemSubject(item.id), name: item.tag, insideM: item.facts.leadInInsideMetalM ?? 0 }));
    return [...runs, ...items].map(({ subject, name, insideM }) => ({
      subjects: [subject],
      title: `Lead-in ${name} radiates inside the hull`,
      measured: [q(insideM, 'm'), ' of it inside metal.'],
      limit: ['The tuner sits where the lead-in leaves the hull; none of the radiating wire is inside.'],
      action: [`Move the tuner to the deck exit and lead the wire straight up.${BY_INSTALLER}`],
    }));
  },
};

export const hfEarth: Rule = {
  id: 'hf-earth',
  summary: 'The earth of an HF tuner goes to a through-hull fitting or nowhere.',
  severity: 'B',
  authority: AUTHORITIES.hfEarth,
  check: (input) =>
    input.project.items
      .filter((item) => stands(item) && badEarth(item))
      .map((item) => ({
        subjects: [itemSubject(item.id)],
        title: `Earth of ${item.tag} is unsound`,
        measured: [item.facts.earthTo === 'seacock' ? 'Strap bolted to a seacock.' : 'No earth connected.'],
        limit: [
          input.project.boat.hullMaterial === 'steel' || input.project.boat.hullMaterial === 'aluminium'
            ? 'Bolted to a stud on the metal hull itself.'
            : 'A plate or a counterpoise of its own.',
        ],
        action: [
          `Bolt it to ${input.project.boat.hullMaterial === 'steel' ? 'a hull stud' : 'a proper earth'}; no current belongs in a fitting that keeps the sea out.${BY_INSTALLER}`,
        ],
      })),
};

function badEarth(item: Item): boolean {
  return item.facts.earthTo === 'seacock' || item.facts.earthTo === 'none';
}
