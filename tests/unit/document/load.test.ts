import { describe, expect, it } from 'vitest';
import { type LoadResult, parseProject, problemSentence } from '../../../core/document/load.ts';
import { serialiseProject } from '../../../core/document/save.ts';
import type { Project } from '../../../core/model/project.ts';
import { AIS, BREAKER, feed, item, PARTS, run, SPLITTER, SWITCH, smallBoat, VHF, WHIP } from './boat.ts';

type Json = { [key: string]: Json } & Json[];

/** The sentences a document is refused with, after a change to its raw JSON; `[]` when it loads. */
function sentences(change: (raw: Json) => void, project: Project = smallBoat()): string[] {
  const raw = JSON.parse(serialiseProject(project)) as Json;
  change(raw);
  return sentencesOf(parseProject(JSON.stringify(raw)));
}

function sentencesOf(result: LoadResult): string[] {
  return result.ok ? [] : result.problems.map(problemSentence);
}

function set(path: string, value: unknown): (raw: Json) => void {
  return (raw) => {
    const keys = path.split('.');
    const last = keys.pop() ?? '';
    const target = keys.reduce<Json>((at, key) => at[key] as Json, raw);
    (target as Record<string, unknown>)[last] = value;
  };
}

describe('a good document', () => {
  it('loads without problems or notes', () => {
    const result = parseProject(serialiseProject(smallBoat()));
    expect(result).toEqual({ ok: true, project: smallBoat(), notes: [] });
  });

  it('may begin with a byte order mark', () => {
    expect(parseProject(`\uFEFF${serialiseProject(smallBoat())}`).ok).toBe(true);
  });

  it('gets what is left out from the defaults', () => {
    const raw = JSON.parse(serialiseProject(smallBoat()));
    delete raw.items[0].facts;
    delete raw.runs[0].slackM;
    const result = parseProject(JSON.stringify(raw));
    expect(result).toEqual({ ok: true, project: smallBoat(), notes: [] });
  });
});

describe('a text that is not a document', () => {
  it('over 50 MB is refused with the limit, before it is parsed', () => {
    const text = ' '.repeat(200_000_000);
    expect(sentencesOf(parseProject(text))).toEqual([
      'the whole file: It is 200 MB; the most that is read is 50 MB. Check that it is a Backstay document, or divide it into several boats.',
    ]);
  });

  it('that is empty is named so', () => {
    expect(sentencesOf(parseProject(' \n '))).toEqual([
      'the whole file: The file is empty. Open a backup, or start a new boat.',
    ]);
  });

  it.each([
    [
      '{\n  "format": "backstay",\n  "version" 1\n}',
      'line 3, column 13: A colon is missing after the name of an entry, near "version" 1. Put in the colon.',
    ],
    [
      '{"a": NaN}',
      'line 1, column 7: NaN is not a number that a document can hold, near {"a": NaN}. Put in the number itself; where none is known, see whether null is allowed.',
    ],
    [
      '{"a": -Infinity}',
      'line 1, column 7: -Infinity is not a number that a document can hold, near {"a": -Infinity}. Put in the number itself; where none is known, see whether null is allowed.',
    ],
    [
      '{"a": [1, 2,]}',
      'line 1, column 13: There is a comma before the closing ], near {"a": [1, 2,]}. Take that comma out.',
    ],
    ['{"a": 1,}', 'line 1, column 9: There is a comma before the closing }, near {"a": 1,}. Take that comma out.'],
    [
      '{"a": 1 "b": 2}',
      'line 1, column 9: A comma or a closing } is missing, near {"a": 1 "b": 2}. Put in what is missing between these entries.',
    ],
    [
      '{"a": [1 2]}',
      'line 1, column 10: A comma or a closing ] is missing, near {"a": [1 2]}. Put in what is missing between these entries.',
    ],
    [
      '{"a": "b',
      'line 1, column 9: The file ends in the middle of the document, near {"a": "b. It was cut off when it was saved or copied: open a backup or the copy it came from.',
    ],
    [
      '{"a": 1} x',
      'line 1, column 10: There is more text after the end of the document, near {"a": 1} x. Take out what follows the last bracket.',
    ],
    [
      "{'a': 1}",
      "line 1, column 2: The name of an entry is expected here, near {'a': 1}. Put the name in double quotation marks.",
    ],
    [
      '{"a": \'b\'}',
      'line 1, column 7: Texts need double quotation marks, not single ones, near {"a": \'b\'}. Put in " in place of \'.',
    ],
    [
      '{"a": 01}',
      'line 1, column 8: This number is not written as JSON writes numbers, near {"a": 01}. Write it plainly, e.g. 0.5 or 12.',
    ],
    [
      '{"a": .5}',
      'line 1, column 7: The sign . cannot stand here, near {"a": .5}. Put in a number, a text in double quotation marks, a list or a group.',
    ],
    [
      '// boat\n{}',
      'line 1, column 1: A document cannot have comments, near // boat. Take the comment out; notes go into "notes".',
    ],
    [
      '{"a": True}',
      'line 1, column 7: The word True cannot stand here, near {"a": True}. Put a text in double quotation marks, or write a number.',
    ],
    [
      '{"a": "\\q"}',
      'line 1, column 9: A backslash in a text is followed by a sign it cannot stand before, near {"a": "\\q"}. Write the backslash twice.',
    ],
    [
      '{"a": "b\nc"}',
      'line 1, column 7: A text has no closing quotation mark on its line, near {"a": "b. Close the quotation marks.',
    ],
  ])('with a fault in its JSON names line and column: %s', (text, sentence) => {
    expect(sentencesOf(parseProject(text))).toEqual([sentence]);
  });

  it('is refused when it is a list, a number or null', () => {
    for (const [text, kind] of [
      ['[]', 'a list'],
      ['12', 'a single value'],
      ['null', 'a single value'],
    ] as const) {
      expect(sentencesOf(parseProject(text))).toEqual([
        `the whole file: It holds ${kind}, not a Backstay document. Open a file that ends in .backstay.`,
      ]);
    }
  });

  it('is refused when it is another format', () => {
    expect(sentencesOf(parseProject('{"type": "x"}'))).toEqual([
      'format: The format is missing; a Backstay document says "format": "backstay". Open a file that ends in .backstay.',
    ]);
    expect(sentencesOf(parseProject('{"format": "geo"}'))).toEqual([
      'format: The format is "geo"; a Backstay document says "format": "backstay". Open a file that ends in .backstay.',
    ]);
  });

  it('is refused when nested without end, whether it is JSON or not', () => {
    const deep = `{"format":"backstay","version":1,"x":${'['.repeat(200_000)}`;
    expect(sentencesOf(parseProject(`${deep}${']'.repeat(200_000)}}`))).toEqual([
      'the whole file: It is nested more than 64 deep. This is not a Backstay document: open another file.',
    ]);
    expect(sentencesOf(parseProject(deep))[0]).toContain('It is nested more than 64 deep');
  });
});

describe('versions', () => {
  it('newer than known are refused with the way out', () => {
    expect(sentences(set('version', 7))).toEqual([
      'version: The file was made by a newer version of Backstay: it has file version 7, and this one reads up to 1. Update Backstay and open it again.',
    ]);
  });

  it('that are not whole numbers from 1 are refused', () => {
    for (const version of ['1', 0, -1, 1.5, null]) {
      expect(sentences(set('version', version))).toEqual([
        'version: The version of the file is not a whole number from 1 up. Put in "version": 1 if the file was made by this version, or open a backup.',
      ]);
    }
  });
});

describe('values the schema refuses', () => {
  it.each<[string, (raw: Json) => void, string]>([
    [
      'a length of -3',
      set('runs.0.measuredLengthM', -3),
      'runs[0] "W01" › measuredLengthM: Measured length is −3 m; the least allowed is 0 m. Put in a value from 0 to 2000 m.',
    ],
    [
      'a length over all beyond any boat',
      set('boat.loaM', 1240),
      'boat.loaM: Length over all is 1240 m; the most allowed is 120 m. Put in a value from 2 to 120 m.',
    ],
    [
      'a number in quotation marks',
      set('boat.beamM', '3.8'),
      'boat.beamM: Beam is "3.8"; it has to be a number, in m. Put in a number without quotation marks.',
    ],
    [
      'null for a number',
      set('items.0.position.zM', null),
      'items[0] "A1" › position.zM: Z (above the waterline) is null; it has to be a number, in m. Put in a number without quotation marks.',
    ],
    [
      'a missing number',
      (raw) => delete raw.boat?.draughtM,
      'boat.draughtM: Draught is missing. Put in the draught as a number in m.',
    ],
    [
      'a choice that does not exist',
      set('boat.masts.0.stepped', 'cabin'),
      'boat.masts[0] "Mast" › stepped: Stepped is "cabin", which is not one of the choices. Choose one of "deck", "keel".',
    ],
    [
      'a kind of part that does not exist',
      set('parts.0.kind', 'sonar'),
      'parts[0] "Test VHF set" › kind: Kind is "sonar", which is not one of the choices. Choose one of "radio", "antenna", "inline", "position-source", "power", "standalone", "equipment", "coax", "connector", "conductor".',
    ],
    [
      'an entry nobody knows',
      set('runs.0.colour', 'red'),
      'runs[0] "W01": The entry "colour" is not known here. Check the spelling, or take it out.',
    ],
    [
      'a list where a group belongs',
      set('settings', []),
      'settings: Settings is a list; it has to be a group of entries in { }. Put in a group of entries in { }.',
    ],
    [
      'a figure that is no number',
      set('parts.0.figures.txPowerW.value', '25'),
      'parts[0] "Test VHF set" › figures.txPowerW.value: Transmit power is "25"; it has to be a number, in W. Put in a number without quotation marks.',
    ],
    [
      'a limit of nought',
      set('settings.feederLossLimitDb', 0),
      'settings.feederLossLimitDb: Feeder loss limit is 0 dB; it must be above 0 dB. Put in a value above 0 and up to 20 dB.',
    ],
    [
      'an alternative is named before the run in it',
      (raw) => {
        const layout = { items: raw.items, runs: raw.runs, feeds: raw.feeds, dataLinks: raw.dataLinks };
        raw.alternatives = [{ id: 'layout-1', name: 'After', ...structuredClone(layout) }] as unknown as Json;
        set('alternatives.0.runs.0.slackM', -1)(raw);
      },
      'alternatives[0] "After" › runs[0] "W01" › slackM: Slack is −1 m; the least allowed is 0 m. Put in a value from 0 to 2000 m.',
    ],
  ])('%s', (_name, change, sentence) => {
    expect(sentences(change)).toEqual([sentence]);
  });

  it('tells 20 problems and how many more there are', () => {
    const many = sentences((raw) => {
      raw.items = Array.from({ length: 33 }, () => 1) as unknown as Json;
    });
    expect(many).toHaveLength(21);
    expect(many[20]).toBe(
      'the whole file: There are 13 more problems that are not listed here. Mend these first and open it again.',
    );
  });
});

describe('references', () => {
  it.each<[string, (raw: Json) => void, string]>([
    [
      'an id used twice among items and runs',
      set('runs.0.id', 'vhf'),
      'runs[0] "W01" › id: The id "vhf" is already that of items[1] "VHF-1". Give one of them another id.',
    ],
    [
      'a run from an item that is not there',
      set('runs.0.from.itemId', 'a9'),
      'runs[0] "W01" › from.itemId: There is no item "a9". Name the id of an item; there are "whip", "vhf", "bank", "breaker".',
    ],
    [
      'a run to a port that does not exist',
      set('runs.0.to.portId', 'antenna2'),
      'runs[0] "W01" › to.portId: VHF-1 (Test VHF set) has no port "antenna2". Name one of its ports: "ant", "dc", "nmea".',
    ],
    [
      'a run to a supply terminal',
      set('runs.0.to.portId', 'dc'),
      'runs[0] "W01" › to.portId: A cable run ends at an antenna socket, but "Supply" of VHF-1 is a DC terminal. Name an antenna socket of VHF-1, or make this another kind of connection.',
    ],
    [
      'a feed that is turned round',
      (raw) => {
        const turned = raw.feeds?.[1] as unknown as { from: unknown; to: unknown };
        [turned.from, turned.to] = [turned.to, turned.from];
      },
      'feeds[1] "F02": The feed goes from "Supply", which takes current, to "Output", which gives it. A feed goes from the source to the load: turn it round.',
    ],
    [
      'a cable that is not a cable',
      set('runs.0.cableId', WHIP.id),
      'runs[0] "W01" › cableId: "t-whip" (Test VHF whip) is not a coaxial cable. Name the id of a coaxial cable.',
    ],
    [
      'a connector that is not one',
      set('runs.0.connectorToId', WHIP.id),
      'runs[0] "W01" › connectorToId: "t-whip" (Test VHF whip) is not a connector. Name the id of a connector.',
    ],
    [
      'a conductor that is not one',
      set('feeds.0.conductorId', 't-thin'),
      'feeds[0] "F01" › conductorId: "t-thin" (t-thin) is not a DC conductor. Name the id of a DC conductor.',
    ],
    [
      'an item at a place that is not there',
      set('items.0.placeId', 'crow-nest'),
      'items[0] "A1" › placeId: There is no place "crow-nest". Name one of "mast-1-head", "mast-1-spreaders-1", "mast-1-spreaders-2", "mast-1-foot", "pulpit-top", "pushpit-top", "helm", "nav-station" …, or put null.',
    ],
    [
      'a bend at a place that is not there',
      set('runs.0.via.0.placeId', 'hole'),
      'runs[0] "W01" › via[0].placeId: There is no place "hole". Name a place of the boat, or put null.',
    ],
    [
      'a place on a structure that is not there',
      set('places.0.structureId', 'mast-7'),
      'places[0] "Mast, masthead" › structureId: There is no mast or fitting "mast-7". Name one of "mast-1", "pulpit", "pushpit", or put null for the hull.',
    ],
    [
      'a place in a compartment that is not there',
      set('places.0.compartmentId', 'hold'),
      'places[0] "Mast, masthead" › compartmentId: There is no compartment "hold". Name one of "forepeak", "saloon", "engine-space", "lazarette", or put null for a place on deck or aloft.',
    ],
    [
      'a tag that is blank',
      set('items.0.tag', ' '),
      'items[0] " " › tag: The tag is empty. Give the item a tag, e.g. "VHF-1".',
    ],
    [
      'an override of a figure the part does not have',
      set('items.0.overrides.figures', { heightDb: { value: 1, basis: 'assumed', source: '' } }),
      'items[0] "A1" › overrides.figures.heightDb: "heightDb" is not one of the figures of Test VHF whip. Take it out, or use one it has: "gainDbi", "lengthM", "feedHeightM", "hpbwDeg", "vswr".',
    ],
    [
      'an override of a trait with a wrong type',
      set('items.1.overrides.traits', { dsc: 'yes' }),
      'items[1] "VHF-1" › overrides.traits.dsc: DSC is "yes"; it has to be true or false. Put in true or false.',
    ],
    [
      'an override outside any believable span',
      set('items.1.overrides.figures', { txPowerW: { value: -25, basis: 'assumed', source: '' } }),
      'items[1] "VHF-1" › overrides.figures.txPowerW.value: The transmit power is −25 W, which no such part has. Put in a value from 0 to 50000 W.',
    ],
    [
      'a part with a figure outside any believable span',
      set('parts.0.figures.supplyVoltageV.value', 1e9),
      'parts[0] "Test VHF set" › figures.supplyVoltageV.value: The supply voltage is 1000000000 V, which no such part has. Put in a value from 0 to 400 V.',
    ],
    [
      'a way through a port the device does not have',
      set(`parts.${PARTS.indexOf(SPLITTER)}.throughs.0.toPortId`, 'x'),
      'parts[4] "Test splitter" › throughs[0].toPortId: Test splitter has no antenna socket "x". Name one of its sockets: "antenna", "vhf", "ais".',
    ],
    [
      'a way with a loss that is nowhere',
      set(`parts.${PARTS.indexOf(SPLITTER)}.throughs.0.lossKey`, 'x'),
      'parts[4] "Test splitter" › throughs[0].lossKey: The loss "x" is neither among the figures nor the loss tables of Test splitter. Add that figure or table, or name one that is there.',
    ],
    [
      'a measurement of what is not there',
      set('measurements', [
        { id: 'm1', subject: { kind: 'run', id: 'W99' }, kind: 'vswr', value: 1.2, frequencyMhz: null, date: null },
      ]),
      'measurements[0] "m1" › subject: It is about the run "W99", which is not in this file. Correct the id, or take the measurement out.',
    ],
    [
      'a VSWR below 1',
      set('measurements', [
        { id: 'm1', subject: { kind: 'item', id: 'vhf' }, kind: 'vswr', value: 0.2, frequencyMhz: null, date: null },
      ]),
      'measurements[0] "m1" › value: The value is 0.2, which no meter shows for "vswr". Put in a value from 1 to 1000.',
    ],
    [
      'an override without a reason',
      set('findingOverrides', [{ findingKey: 'x:vhf', reason: ' ' }]),
      'findingOverrides[0] "x:vhf" › reason: The reason is blank. Write why the finding was overruled, or take the override out.',
    ],
    [
      'a finding overruled twice',
      set('findingOverrides', [
        { findingKey: 'x:vhf', reason: 'a' },
        { findingKey: 'x:vhf', reason: 'b' },
      ]),
      'findingOverrides[1] "x:vhf": This finding is overruled twice. Keep the one with the reason that holds.',
    ],
    [
      'a mast whose truck is below its foot',
      set('boat.masts.0.truckZM', 1),
      'boat.masts[0] "Mast" › truckZM: The truck of Mast, 1 m, is not above its foot, 1.64 m. Give both heights above the waterline, the truck the greater.',
    ],
    [
      'a waterline longer than the boat',
      set('boat.lwlM', 13),
      'boat.lwlM: The waterline length, 13 m, is more than the length over all, 12 m. Correct one of the two.',
    ],
  ])('%s', (_name, change, sentence) => {
    expect(sentences(change)).toEqual([sentence]);
  });

  it('an item made of cable', () => {
    expect(sentences(set('items.0.partId', 't-thin'))).toContain(
      'items[0] "A1" › partId: "t-thin" (t-thin) is not a part that is placed aboard. Name the part of a radio, antenna or other thing that is fitted.',
    );
  });

  it('a feed between two sources', () => {
    expect(sentences(set('feeds.1.to', { itemId: 'bank', portId: 'out' }))).toContain(
      'feeds[1] "F02" › to: The feed ends at "Output", which gives current. A feed goes from the source to the load: end it at a supply terminal.',
    );
  });

  it('a run from an item to itself', () => {
    expect(sentences(set('runs.0.from', { itemId: 'vhf', portId: 'ant' }))).toContain(
      'runs[0] "W01" › to: It goes from VHF-1 to itself. Name another item at one end, or take it out.',
    );
  });

  it('a port with two runs on it', () => {
    const project = smallBoat();
    const second: Project = {
      ...project,
      items: [...project.items, item('whip2', WHIP.id, 'A2', 9, 3)],
      runs: [...project.runs, run('W02', ['whip2', 'feed'], ['vhf', 'ant'])],
    };
    expect(sentencesOf(parseProject(serialiseProject(second)))).toEqual([
      'runs[1] "W02" › to: The port "ant" of VHF-1 already has the run "W01". Take one of the two to another port, or put a splitter between them.',
    ]);
  });

  it('the same in an alternative, named there', () => {
    const project = smallBoat();
    const { items, feeds, dataLinks } = project;
    const runs = [run('W01', ['whip', 'feed'], ['vhf', 'aerial'])];
    const text = serialiseProject({
      ...project,
      alternatives: [{ id: 'layout-1', name: 'After', note: '', items, runs, feeds, dataLinks }],
    });
    expect(sentencesOf(parseProject(text))).toEqual([
      'alternatives[0] "After" › runs[0] "W01" › to.portId: VHF-1 (Test VHF set) has no port "aerial". Name one of its ports: "ant", "dc", "nmea".',
    ]);
  });

  it('a measurement may be about what only an alternative has', () => {
    const project = smallBoat();
    const { feeds, dataLinks } = project;
    const layout = { items: [item('other', WHIP.id, 'A9', 5, 9)], runs: [], feeds: [], dataLinks };
    const text = serialiseProject({
      ...project,
      feeds,
      alternatives: [{ id: 'layout-1', name: 'After', note: '', ...layout }],
      measurements: [
        {
          id: 'm1',
          subject: { kind: 'item', id: 'other' },
          kind: 'vswr',
          value: 1.2,
          frequencyMhz: null,
          date: null,
          instrument: '',
          note: '',
        },
      ],
    });
    expect(sentencesOf(parseProject(text))).toEqual([]);
  });
});

describe('loops', () => {
  const splitters = (): Project => {
    const project = smallBoat();
    return {
      ...project,
      items: [...project.items, item('s1', SPLITTER.id, 'SP-1', 6, 1), item('s2', SPLITTER.id, 'SP-2', 7, 1)],
    };
  };

  it('of coax through devices are refused and named', () => {
    const project = splitters();
    const runs = [...project.runs, run('W02', ['s1', 'vhf'], ['s2', 'vhf']), run('W03', ['s2', 'ais'], ['s1', 'ais'])];
    expect(sentencesOf(parseProject(serialiseProject({ ...project, runs })))).toEqual([
      'runs: Coax closes a loop: SP-2 – W03 – SP-1 – W02 – SP-2. Take one of these runs out.',
    ]);
  });

  it('are not seen where a signal does not go on: two runs between two items', () => {
    const project = splitters();
    const twin = { ...AIS, id: 't-twin', ports: AIS.ports.map((port) => ({ ...port })) };
    const both: Project = {
      ...project,
      parts: [...project.parts, twin],
      items: [...project.items, item('ais', twin.id, 'AIS-1', 6, 1)],
      runs: [run('W02', ['s1', 'vhf'], ['ais', 'ant']), run('W03', ['s1', 'ais'], ['vhf', 'ant'])],
    };
    expect(sentencesOf(parseProject(serialiseProject(both)))).toEqual([]);
  });

  it('are not seen through ways a switch has not selected', () => {
    const project = smallBoat();
    const items = [...project.items, item('k1', SWITCH.id, 'SW-1', 6, 1), item('k2', SWITCH.id, 'SW-2', 7, 1)];
    const runs = [run('W02', ['k1', 'p1'], ['k2', 'p1']), run('W03', ['k1', 'p2'], ['k2', 'p2'])];
    expect(sentencesOf(parseProject(serialiseProject({ ...project, items, runs })))).toEqual([]);
  });

  it('of DC feeds are refused and named', () => {
    const project = smallBoat();
    const items = [...project.items, item('b2', BREAKER.id, 'B2', 6, 1)];
    const feeds = [...project.feeds, feed('F03', 'breaker', 'b2', 'in'), feed('F04', 'b2', 'breaker', 'in')];
    expect(sentencesOf(parseProject(serialiseProject({ ...project, items, feeds })))).toEqual([
      'feeds: DC feeds close a loop: B2 → F04 → B1 → F03 → B2. Take one of these feeds out.',
    ]);
  });

  it('are not made by two feeds into one load', () => {
    const project = smallBoat();
    const feeds = [...project.feeds, feed('F03', 'bank', 'vhf', 'dc')];
    expect(sentencesOf(parseProject(serialiseProject({ ...project, feeds })))).toEqual([]);
  });
});

describe('what is kept and noted', () => {
  it('an item of an unknown part, with its runs', () => {
    const raw = JSON.parse(serialiseProject(smallBoat()));
    raw.items[1].partId = 'vhf-of-2031';
    raw.items[1].overrides.figures = { newDb: { value: 1, tolerance: 0, basis: 'assumed', source: '' } };
    const result = parseProject(JSON.stringify(raw));
    expect(result).toMatchObject({
      ok: true,
      notes: [
        'items[1] "VHF-1": the part "vhf-of-2031" is not known to this version; it is kept as it is, and nothing is computed for it.',
      ],
    });
    if (result.ok) expect(result.project.items[1]?.overrides.figures).toHaveProperty('newDb');
  });

  it('an unknown cable', () => {
    const raw = JSON.parse(serialiseProject(smallBoat()));
    raw.runs[0].cableId = 'coax-of-2031';
    expect(parseProject(JSON.stringify(raw))).toMatchObject({
      ok: true,
      notes: [
        'runs[0] "W01" › cableId: the part "coax-of-2031" is not known to this version; it is kept as it is, and nothing is computed with it.',
      ],
    });
  });

  it('a tag and a number used twice', () => {
    const project = smallBoat();
    const text = serialiseProject({
      ...project,
      items: [...project.items, item('vhf2', VHF.id, 'VHF-1', 6, 1), item('whip2', WHIP.id, 'A2', 9, 3)],
      runs: [...project.runs, { ...run('W01', ['whip2', 'feed'], ['vhf2', 'ant']), id: 'run-9' }],
    });
    expect(parseProject(text)).toMatchObject({
      ok: true,
      notes: [
        'items[4] "VHF-1": the tag is also that of entry 1; two labels that read alike lead to mistakes.',
        'runs[1] "W01": the number is also that of entry 0; two labels that read alike lead to mistakes.',
      ],
    });
  });
});
