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
