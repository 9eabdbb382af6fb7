import { describe, expect, it } from 'vitest';
import { candidatesOf } from '../../../core/advice/candidates.ts';
import { surveyOf } from '../../../core/advice/survey.ts';
import type { Project } from '../../../core/model/project.ts';
import { feed, item, run, smallBoat } from '../redundancy/smallBoat.ts';
import { plain, without } from './boats.ts';

// What is said beside a change is what its work asks for. Common practice, no source.

/** The cautions of a change, in one text. @throws Error when it is not tried */
function cautionsOf(project: Project, id: string): string {
  const found = candidatesOf(surveyOf(project)).find((candidate) => candidate.id === id);
  if (!found) throw new Error(`${id} is not tried`);
  return found.cautions.join(' ');
}

describe('an antenna taken from an AIS set', () => {
  const AIS_OFF = /Switch the AIS off before its antenna is lent/;
  const receiverOnly = plain.parts.map((part) =>
    part.id === 'ais' && part.kind === 'radio' ? { ...part, radioClass: 'ais-receiver' as const } : part,
  );
  const ownWhips = smallBoat({
    items: [...without('SP'), item('A2', 'whip', 'arch')],
    runs: [run('W1', 'VHF.ant', 'A1.rf'), run('W2', 'AIS.ant', 'A2.rf')],
    feeds: [feed('F0', 'BAT', 'BRK'), feed('F1', 'BRK', 'VHF'), feed('F2', 'BRK', 'AIS')],
  });

  it('that sends by itself: it is to be switched off first', () => {
    expect(cautionsOf(ownWhips, 'jumper:VHF:AIS')).toMatch(AIS_OFF);
    expect(cautionsOf(plain, 'jumper:VHF:SP')).toMatch(AIS_OFF);
  });

  it('that only listens, or behind no splitter: nothing is said of it', () => {
    expect(cautionsOf({ ...ownWhips, parts: receiverOnly }, 'jumper:VHF:AIS')).not.toMatch(AIS_OFF);
    expect(cautionsOf({ ...plain, parts: receiverOnly }, 'jumper:VHF:SP')).not.toMatch(AIS_OFF);
    const voiceOnly = smallBoat({ runs: plain.runs.filter(({ id }) => id !== 'W2') });
    expect(cautionsOf(voiceOnly, 'jumper:VHF:SP')).not.toMatch(AIS_OFF);
  });
});

describe('a set for the grab bag', () => {
  // Only 406 MHz beacons are registered to a boat, and only a set with selective calling is programmed with an identity.
  const carried = smallBoat({ items: [...plain.items, item('SART', 'sart-ais', null), item('MOB', 'mob-ais', null)] });
  const said = (partId: string): string => cautionsOf(carried, `spare:${partId}`);

  it('is to be registered where it is a beacon, and not else', () => {
    expect(said('beacon-406-manual')).toMatch(/Register it to this boat/);
    for (const id of ['sart-ais', 'mob-ais']) {
      expect(said(id)).not.toMatch(/[Rr]egister/);
      expect(said(id)).toMatch(/battery in date, and test it only by its own test/);
    }
  });

  it('needs its identity where it calls selectively, and its subscription where it goes by satellite', () => {
    expect(said('handheld-vhf-dsc-5w')).toMatch(/identity programmed/);
    expect(said('handheld-satellite')).toMatch(/subscription running/);
    expect(said('handheld-satellite')).not.toMatch(/identity/);
  });
});
