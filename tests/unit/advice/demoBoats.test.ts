import { describe, expect, it } from 'vitest';
import { advise } from '../../../core/advice/advise.ts';
import type { Advice } from '../../../core/advice/types.ts';
import { changeOf, demo, freed, idsOf } from './support.ts';

// The demo boats' scenarios were written by hand before the program, with the answer a surveyor would give: the sums here are
// counted by hand over their trees.

const bestIds = ({ best }: Advice): readonly string[] => best.map(({ candidate }) => candidate.id);
const pointOf = (advice: Advice, id: string) => advice.points.find(({ pointId }) => pointId === id);

describe('Brannoch Tern', () => {
  const project = demo('brannoch-tern');
  const advice = advise(project);

  it('is told what the scenario’s good answer has', () => {
    expect(bestIds(advice)).toEqual(
      expect.arrayContaining([
        'high-battery:vhf-1',
        'own-antenna:ais-1',
        'emergency-antenna:new',
        'open-sky:a4',
        'position-link:vhf-1:pl-1',
      ]),
    );
    const title = (id: string): string => changeOf(advice, id).candidate.title;
    expect(title('own-antenna:ais-1')).toBe('Give AIS-1 an antenna of its own at the mizzen truck, and take SP-1 out');
    expect(title('open-sky:a4')).toBe('Move A4 from under metal to the coachroof rail, starboard');
    expect(title('second-feed:vhf-1:b2')).toBe('Feed VHF-1 and SP-1 from B2 as well, past breaker B7');
  });

  it('gets its small battery at the dry shelf, z +0.6, and is freed of breaker, bank and flood', () => {
    const id = 'high-battery:vhf-1';
    const after = changeOf(advice, id).candidate.apply(project);
    expect(after.items.at(-1)).toMatchObject({ placeId: 'saloon-shelf', position: { zM: 0.6 } });
    // Voice and alert each lose B1, B7, F1, F2, F4 and the flood; seeing AIS loses F4, the splitter's own feed: 13 of 62.
    expect(changeOf(advice, id).effect).toMatchObject({
      before: { singles: 62 },
      after: { singles: 49 },
      cellsWorse: 0,
    });
    for (const point of ['item:b1', 'item:b7', 'feed:f1', 'feed:f2', 'cause:flood:saloon:b1']) {
      expect(freed(project, id, point)).toEqual(['voice-fixed', 'digital-alert']);
    }
  });

  it('keeps its voice through the loss of the mast by an emergency antenna', () => {
    const { effect } = changeOf(advice, 'emergency-antenna:new');
    // A1, J1, W01, W02, W03, SP-1, F4, the main mast and both masts, for voice and alert.
    expect(effect.before.singles - effect.after.singles).toBe(18);
    expect(freed(project, 'emergency-antenna:new', 'structure:mast-main')).toEqual(['voice-fixed', 'digital-alert']);
  });

  it('is told what the mizzen antenna brings, and of no remark that stood before in other words', () => {
    expect(changeOf(advice, 'own-antenna:ais-1').effect.worsens).toEqual([
      'AR then hangs on A5, W14, Mizzen mast as well.',
      'AR falls from reduced to lost: Mizzen mast lost.',
    ]);
    for (const id of ['emergency-antenna:new', 'high-battery:vhf-1', 'second-feed:vhf-1:b2']) {
      expect(changeOf(advice, id).effect.worsens, id).toEqual([]);
    }
  });

  it('is not told that voice is freed of a feed that another takes the place of', () => {
    // With AIS-1 and SP-1 on a battery of their own the splitter's old feed F4 is gone, and voice hangs on the new one instead.
    expect(freed(project, 'own-battery:ais-1', 'feed:f4')).toEqual(['ais-receive']);
  });

  it('has no way to free seeing AIS of the AIS set, and is told so', () => {
    expect(pointOf(advice, 'item:ais-1')).toMatchObject({ changes: [], serviceIds: ['ais-receive'] });
    expect(pointOf(advice, 'item:ais-1')?.why).toMatch(/only a second set would help/);
  });
});

describe('Vessarine', () => {
  const project = demo('vessarine');
  const advice = advise(project);

  it('gets a battery for VHF-1 in the port hull above the flood line', () => {
    const id = 'high-battery:vhf-1';
    expect(bestIds(advice)).toContain(id);
    const after = changeOf(advice, id).candidate.apply(project);
    expect(after.items.at(-1)).toMatchObject({ placeId: 'port-shelf', position: { yM: 2.6, zM: 0.8 } });
    for (const point of ['item:b1', 'item:n1', 'feed:f1', 'cause:flood:starboard-hull:b1']) {
      expect(freed(project, id, point)).toEqual(['voice-fixed']);
    }
    // Nothing else takes both sets but lightning.
    expect(changeOf(advice, id).effect.after.singles).toBe(33 - 4);
  });

  it('gets position to VHF-2, a lead and plug for EM-1, and a GNSS antenna for AIS-1', () => {
    expect(bestIds(advice)).toEqual(
      expect.arrayContaining(['position-link:vhf-2:bus-1', 'emergency-antenna:em-1', 'open-sky:ais-1']),
    );
    const lead = changeOf(advice, 'emergency-antenna:em-1');
    expect(lead.candidate.title).toBe('Give EM-1 a lead of 9 m with a PL-259 plug, that reaches VHF-2 and VHF-1');
    expect(lead.effect.clears).toContainEqual({ severity: 'A', title: 'EM-1 cannot be connected' });
    expect(freed(project, 'open-sky:ais-1', 'lost:ais-transmit')).toEqual(['ais-transmit']);
  });

  it('has its satellite antenna taken out from under the carbon, with a cable that is good enough', () => {
    const change = changeOf(advice, 'open-sky:a4');
    const after = change.candidate.apply(project);
    expect(after.items.find(({ id }) => id === 'a4')?.placeId).not.toBe('under-hardtop');
    expect(change.effect.clears.map(({ title }) => title)).toContain('A4 sees no sky');
    expect(change.effect.worsens).toEqual([]);
  });

  it('counts a remark about two sets for one about three as neither gone nor come', () => {
    const { worsens, clears } = changeOf(advice, 'high-battery:ais-1').effect;
    expect(worsens).toEqual([]);
    expect(clears.map(({ title }) => title)).not.toContain('AIS-1, VHF-1 and VHF-2 fall together');
  });

  it('is not told to feed SAT-2 otherwise: it would then stay on its mount when it is wanted on deck', () => {
    expect(idsOf(advice).filter((id) => id.endsWith(':sat-2') && !id.startsWith('position'))).toEqual([]);
  });
});

describe('Pelluna', () => {
  const project = demo('pelluna');
  const advice = advise(project);

  it('can feed either voice set from its second bank', () => {
    // B1 alone takes voice, alert and safety information; once either set has B2 as well it takes none of them.
    for (const id of ['second-feed:vhf-a:b2', 'second-feed:vhf-b:b2']) {
      expect(freed(project, id, 'item:b1')).toEqual(['voice-fixed', 'digital-alert', 'safety-information']);
      expect(changeOf(advice, id).effect).toMatchObject({ before: { singles: 24 }, after: { singles: 21 } });
    }
  });

  it('is told what it has no means of at all', () => {
    expect(bestIds(advice)).toEqual(
      expect.arrayContaining(['spare:handheld-vhf-dsc-5w', 'spare:handheld-satellite', 'spare:beacon-406-manual']),
    );
    expect(freed(project, 'spare:beacon-406-manual', 'lost:beacon')).toEqual(['beacon']);
  });

  it('gets position to VHF-B from the AIS, and no antenna where the roof is full', () => {
    expect(bestIds(advice)).toContain('position-link:vhf-b:ais-1');
    expect(pointOf(advice, 'item:a3')?.why).toMatch(/no free place for another antenna/);
  });
});
