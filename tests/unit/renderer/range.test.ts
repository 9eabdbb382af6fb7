import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess.ts';
import { parseProject } from '../../../core/document/load.ts';
import { addStation } from '../../../core/edit/stations.ts';
import { DEFAULT_STATIONS } from '../../../core/model/defaults.ts';
import type { Subject } from '../../../core/model/project.ts';
import { horizonKm } from '../../../core/propagation/horizon.ts';
import { levelCurve } from '../../../core/reach/levelCurve.ts';
import { formatText } from '../../../core/units/format.ts';
import { METRIC_PREFERENCES } from '../../../core/units/preferences.ts';
import type { RichText } from '../../../core/units/quantity.ts';
import { followedId } from '../../../renderer/panels/range/followed.ts';
import {
  groupName,
  groupsTouched,
  HORIZON_RULES,
  mainGroup,
  newStation,
  rangeGroups,
  stationSummary,
} from '../../../renderer/panels/range/groups.ts';
import { inLanes, laneCount } from '../../../renderer/panels/range/lanes.ts';
import { unanswered } from '../../../renderer/panels/range/radios.ts';
import { distanceScale, farthestKm } from '../../../renderer/panels/range/scale.ts';
import { seaLine } from '../../../renderer/panels/range/sea.ts';
import { barSummary, curveSummary } from '../../../renderer/panels/range/summary.ts';
import { smallProject } from './canvasFixture.ts';

const said = (text: RichText): string => formatText(text, METRIC_PREFERENCES);
const project = smallProject();
const { ranges, paths } = assess(project);
const groups = rangeGroups(ranges, paths);
const [result] = ranges;
if (!result) throw new Error('the fixture has a range');

describe('radios to choose from', () => {
  it('puts all stations of one radio together under its name', () => {
    expect(groups.map((group) => said(groupName(project, group)))).toEqual(['VHF-1 by A1, voice 156.8 MHz']);
    const withVoice = project.stations.filter(({ voicePowerW }) => voicePowerW > 0);
    expect(groups[0]?.results).toHaveLength(withVoice.length);
  });

  it('begins with a fixed VHF that needs no switch set', () => {
    const [group] = groups;
    if (!group?.path) throw new Error('the group has a path');
    const handheld = { ...group, id: 'h', path: null };
    const switched = { ...group, id: 'x', path: { ...group.path, switchIds: ['sw'] } };
    expect(mainGroup([handheld, switched, group])?.id).toBe(group.id);
    expect(mainGroup([handheld, switched])?.id).toBe('x');
    expect(mainGroup([handheld])?.id).toBe('h');
    expect(mainGroup([])).toBeNull();
  });

  it('finds the radio of a selected antenna or run', () => {
    const touched = (subject: Subject): number => groupsTouched(groups, [subject]).length;
    expect(touched({ kind: 'item', id: 'whip' })).toBe(1);
    expect(touched({ kind: 'run', id: 'w' })).toBe(1);
    expect(touched({ kind: 'item', id: 'spare' })).toBe(0);
  });
});

describe('following the selection', () => {
  const old: readonly Subject[] = [];
  const fresh: readonly Subject[] = [{ kind: 'item', id: 'x' }];
  const ids = ['a', 'b', 'c'];

  it('starts with what is selected, else with the fallback', () => {
    expect(followedId(ids, ['b'], { id: null, selection: old }, fresh, 'c')).toBe('b');
    expect(followedId(ids, [], { id: null, selection: old }, old, 'c')).toBe('c');
  });

  it('goes along with a new selection, but not away from what that is also about', () => {
    expect(followedId(ids, ['b'], { id: 'a', selection: old }, fresh, null)).toBe('b');
    expect(followedId(ids, ['b', 'a'], { id: 'a', selection: old }, fresh, null)).toBe('a');
    expect(followedId(ids, [], { id: 'a', selection: old }, fresh, 'c')).toBe('a');
  });

  it('keeps what was chosen by hand until the selection changes, and never what is gone', () => {
    expect(followedId(ids, ['b'], { id: 'a', selection: fresh }, fresh, null)).toBe('a');
    expect(followedId(ids, [], { id: 'gone', selection: old }, old, 'c')).toBe('c');
  });
});

describe('labels in lanes', () => {
  it('never overlap and stay inside', () => {
    const tag = fc.record({ atX: fc.integer({ min: 0, max: 400 }), width: fc.integer({ min: 10, max: 150 }) });
    fc.assert(
      fc.property(fc.array(tag, { maxLength: 8 }), (tags) => {
        const placed = inLanes(tags, 0, 400);
        const boxes = placed.map(({ left, lane }, i) => ({ lane, left, right: left + (tags[i]?.width ?? 0) }));
        for (const [i, a] of boxes.entries()) {
          expect(a.left).toBeGreaterThanOrEqual(0);
          expect(a.right).toBeLessThanOrEqual(400);
          for (const b of boxes.slice(i + 1)) {
            expect(a.lane === b.lane && a.left < b.right && b.left < a.right).toBe(false);
          }
        }
      }),
    );
  });

  it('use one lane where there is room', () => {
    const placed = inLanes(
      [
        { atX: 300, width: 60 },
        { atX: 50, width: 60 },
      ],
      0,
      400,
    );
    expect(laneCount(placed)).toBe(1);
    expect(placed.map(({ left }) => left)).toEqual([270, 20]);
    expect(laneCount([])).toBe(0);
  });
});

describe('scales', () => {
  it('reach beyond everything that is shown, in round steps of the reader’s unit', () => {
    const far = farthestKm(ranges);
    for (const range of ranges) expect(far).toBeGreaterThanOrEqual(Math.max(range.typical.highKm, range.horizonKm));
    const scale = distanceScale(100, 10, 410, METRIC_PREFERENCES);
    expect(scale.x(0)).toBe(10);
    expect(scale.endKm).toBeGreaterThanOrEqual(100);
    expect(scale.x(scale.endKm)).toBeCloseTo(410, 9);
    expect(scale.ticks.map(({ shown }) => shown)).toEqual([0, 10, 20, 30, 40, 50, 60]);
  });

  it('draw the sea so that both mastheads touch the line of sight at the horizon, by every rule', () => {
    for (const { id } of HORIZON_RULES) {
      const sea = seaLine(id, 16);
      expect(sea.surfaceM(0)).toBeCloseTo(-16, 9);
      expect(sea.surfaceM(sea.grazeKm)).toBeCloseTo(0, 9);
      expect(sea.surfaceM(horizonKm(id, 16, 100))).toBeCloseTo(-100, 9);
    }
  });
});

describe('words for what is drawn', () => {
  it('give the curve’s crossings at the ranges it is drawn with', () => {
    const curve = levelCurve(project, paths, result);
    const text = said(curveSummary(result, curve, 'A like yacht'));
    expect(text).toContain(`typical range, ${(result.typical.nominalKm / 1.852).toFixed(1)} NM`);
    expect(text).toContain(`dependable range, ${(result.dependable.nominalKm / 1.852).toFixed(1)} NM`);
    expect(text).toContain('−107 dBm');
    expect(said(barSummary(result, 'A like yacht'))).toMatch(/^A like yacht: dependable .* NM \(.*\), horizon .* NM$/);
  });
});

describe('stations', () => {
  it('are added with a free name and values the document takes', () => {
    const once = addStation(project, newStation(project.stations));
    const twice = addStation(once, newStation(once.stations));
    expect(new Set(twice.stations.map(({ name }) => name)).size).toBe(project.stations.length + 2);
    const last = twice.stations.at(-1);
    if (!last) throw new Error('a station was added');
    expect(said(stationSummary(last))).toBe(`${last.name}: antenna 25.0 m, 25 W`);
  });
});

describe('sets nobody answers', () => {
  it('names them with a far end to begin with, until a station has their service', () => {
    const file = new URL('../../../assets/demo/pelluna.backstay', import.meta.url);
    const loaded = parseProject(readFileSync(file, 'utf8'));
    if (!loaded.ok) throw new Error('The demo boat does not load.');
    const boat = loaded.project;
    const without = { ...boat, stations: boat.stations.filter(({ cellularPowerW }) => cellularPowerW === 0) };
    const found = (each: typeof boat) => unanswered(each, assess(each).paths, assess(each).ranges);
    expect(found(boat)).toEqual([]);
    expect(found(without).map(({ service, tags }) => [service, tags])).toEqual([['cellular', ['CEL-1']]]);
    const [missing] = found(without);
    if (!missing) throw new Error('Nothing is missing.');
    expect(found(addStation(without, missing.station))).toEqual([]);
  });

  it('sums a station up by the first power it has', () => {
    const wifi = DEFAULT_STATIONS.find(({ id }) => id === 'harbour-wifi');
    if (!wifi) throw new Error('No harbour.');
    expect(said(stationSummary(wifi))).toBe('Harbour Wi-Fi: antenna 6.0 m, 0.04 W');
  });
});
