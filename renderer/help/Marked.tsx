import { markedParts } from './guide.ts';

/** A text with the words searched for marked in it. */
export function Marked({ text, query }: { text: string; query: string }) {
  let at = 0;
  return markedParts(text, query).map((part) => {
    const key = at;
    at += part.text.length;
    return part.isHit ? <mark key={key}>{part.text}</mark> : <span key={key}>{part.text}</span>;
  });
}
