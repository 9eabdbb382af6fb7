import type { Subject } from '../../core/model/project.ts';
import { positionWords } from '../commands/words.ts';
import { feedSentence, itemSentence, linkSentence, runSentence, type Told } from './sentences.ts';

export interface Entry {
  readonly key: string;
  readonly subject: Subject;
  readonly text: string;
}

export interface Section {
  readonly key: string;
  readonly name: string;
  readonly entries: readonly Entry[];
  /** What to do while there is nothing in it. */
  readonly empty: string;
}

/** The drawing as a tree of sentences: items (numbered as on the drawing), runs, feeds, data links, places. */
export function outlineSections(told: Told): readonly Section[] {
  const { project } = told;
  return [
    {
      key: 'items',
      name: 'Items',
      entries: project.items.map((item, i) => entry('item', item.id, `${i + 1} ${itemSentence(told, item)}`)),
      empty: 'No items yet. Choose one in the Parts list and press Enter.',
    },
    {
      key: 'runs',
      name: 'Cable runs',
      entries: project.runs.map((run) => entry('run', run.id, runSentence(told, run))),
      empty: 'No cable runs yet. Select an item and press C to connect it.',
    },
    {
      key: 'feeds',
      name: 'DC feeds',
      entries: project.feeds.map((feed) => entry('feed', feed.id, feedSentence(told, feed))),
      empty: 'No DC feeds yet. Connect a breaker to a set.',
    },
    {
      key: 'links',
      name: 'Data links',
      entries: project.dataLinks.map((link) => entry('link', link.id, linkSentence(told, link))),
      empty: 'No data links yet. Connect a position source to a set.',
    },
    {
      key: 'places',
      name: 'Places',
      entries: project.places.map((place) =>
        entry('place', place.id, `${place.name}, ${positionWords(place.position, told.preferences)}`),
      ),
      empty: 'No places: make some in Particulars.',
    },
  ];
}

function entry(kind: Subject['kind'], id: string, text: string): Entry {
  return { key: subjectKey({ kind, id }), subject: { kind, id }, text };
}

/** One string per subject, for collections that want keys. */
export const subjectKey = (subject: Subject): string => `${subject.kind}:${subject.id}`;
