/** Round constants: the first 32 bits of the fractional parts of the cube roots of the first 64 primes (4.2.2). */
const K = rootBits(64, Math.cbrt);
/** What the state begins as: the same of the square roots of the first eight primes (5.3.3). */
const START = rootBits(8, Math.sqrt);

/**
 * SHA-256 of some bytes, as 64 hexadecimal digits. Core has no library for it, and files that carry a picture's name must
 * not be written over with another, so that a hash nobody can aim at is asked for.
 * Source: FIPS 180-4 (NIST, 2015), 6.2; its numbers are beside the steps.
 */
export function sha256Hex(bytes: Uint8Array): string {
  const state = Int32Array.from(START);
  const words = new Int32Array(64);
  const whole = bytes.length - (bytes.length % 64);
  for (let at = 0; at < whole; at += 64) takeIn(state, words, bytes, at);
  const rest = padded(bytes.subarray(whole), bytes.length);
  for (let at = 0; at < rest.length; at += 64) takeIn(state, words, rest, at);
  return [...state].map((word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
}

/** The last bytes with a one after them, zeros, and the length of all in bits (5.1.1). */
function padded(last: Uint8Array, length: number): Uint8Array {
  const blocks = new Uint8Array(last.length < 56 ? 64 : 128);
  blocks.set(last);
  blocks[last.length] = 0x80;
  const view = new DataView(blocks.buffer);
  view.setUint32(blocks.length - 8, Math.floor(length / 2 ** 29));
  view.setUint32(blocks.length - 4, (length * 8) % 2 ** 32);
  return blocks;
}

/** One block of 64 bytes (6.2.2). */
function takeIn(state: Int32Array, w: Int32Array, bytes: Uint8Array, from: number): void {
  for (let t = 0, at = from; t < 16; t += 1, at += 4) {
    w[t] = (of(bytes, at) << 24) | (of(bytes, at + 1) << 16) | (of(bytes, at + 2) << 8) | of(bytes, at + 3);
  }
  for (let t = 16; t < 64; t += 1) {
    const [before2, before15] = [of(w, t - 2), of(w, t - 15)];
    const s0 = turned(before15, 7) ^ turned(before15, 18) ^ (before15 >>> 3);
    const s1 = turned(before2, 17) ^ turned(before2, 19) ^ (before2 >>> 10);
    w[t] = s1 + of(w, t - 7) + s0 + of(w, t - 16);
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let t = 0; t < 64; t += 1) {
    const t1 = h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + ((e & f) ^ (~e & g)) + of(K, t) + of(w, t);
    const t2 = (turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
    h = g;
    g = f;
    f = e;
    e = (d + t1) | 0;
    d = c;
    c = b;
    b = a;
    a = (t1 + t2) | 0;
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => {
    state[i] = of(state, i) + word;
  });
}

const of = (words: Int32Array | Uint8Array, at: number): number => words[at] ?? 0;
const turned = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

function rootBits(count: number, root: (prime: number) => number): Int32Array {
  const primes: number[] = [];
  for (let n = 2; primes.length < count; n += 1) if (primes.every((prime) => n % prime !== 0)) primes.push(n);
  return Int32Array.from(primes, (prime) => (root(prime) % 1) * 2 ** 32);
}
