import { mkdirSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CONTENT_SECURITY_POLICY } from '../../../electron/contentSecurity.ts';
import { answerAppRequest } from '../../../electron/main/protocol.ts';
import { readOwnFile } from '../../../electron/node/ownFiles.ts';
import { freshToken, serveRenderer } from '../../../electron/node/serve.ts';
import { freshFolder } from './rig.ts';

const base = freshFolder();
const root = join(base, 'app');
mkdirSync(root);
mkdirSync(join(base, 'app-secret'));
writeFileSync(join(root, 'index.html'), '<p>own</p>');
writeFileSync(join(base, 'app-secret', 'key.txt'), 'secret');

describe('own files', () => {
  it('serves the index for /', async () => {
    expect((await readOwnFile(root, '/'))?.bytes.toString()).toBe('<p>own</p>');
  });

  it.each([
    '/../app-secret/key.txt',
    '/%2e%2e/app-secret/key.txt',
    '/..%2fapp-secret/key.txt',
    '//etc/passwd',
    '/%00',
    '/%E0%A4%A',
    '/.',
  ])('refuses %s', async (path) => {
    expect(await readOwnFile(root, path)).toBeNull();
  });
});

describe('app protocol', () => {
  const ask = (url: string, method = 'GET'): Promise<Response> => answerAppRequest(root, { url, method });

  it('answers its own host with the policy', async () => {
    const response = await ask('app://backstay/index.html');
    expect(response.status).toBe(200);
    expect(response.headers.get('content-security-policy')).toBe(CONTENT_SECURITY_POLICY);
  });

  it('refuses other hosts, other methods and paths outside', async () => {
    expect((await ask('app://elsewhere/index.html')).status).toBe(404);
    expect((await ask('app://backstay/index.html', 'POST')).status).toBe(405);
    expect((await ask('app://backstay/..%2fapp-secret/key.txt')).status).toBe(404);
  });
});

describe('browser host server', () => {
  let address = '';
  let close = (): void => {};
  beforeAll(async () => {
    const served = await serveRenderer(root, 0);
    address = served.address;
    close = () => served.server.close();
  });
  afterAll(() => close());

  const statusOf = (headers: Readonly<Record<string, string>>, url = address): Promise<number> =>
    new Promise((resolve, reject) => {
      request(url, { headers }, (response) => {
        response.resume();
        resolve(response.statusCode ?? 0);
      })
        .on('error', reject)
        .end();
    });

  it('is bound to the loopback address only and serves the app', async () => {
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/[\w-]{43}\/$/);
    const response = await fetch(address);
    expect(await response.text()).toBe('<p>own</p>');
    expect(response.headers.get('content-security-policy')).toContain("default-src 'none'");
  });

  it('makes a fresh token at each start', async () => {
    const other = await serveRenderer(root, 0);
    other.server.close();
    expect(new URL(other.address).pathname).not.toBe(new URL(address).pathname);
    expect(new Set(Array.from({ length: 100 }, freshToken)).size).toBe(100);
  });

  it.each(['', 'index.html', 'x/', 'x/index.html', '%2e%2e/'])('refuses /%s, without the token', async (path) => {
    expect(await statusOf({}, new URL(`/${path}`, address).href)).toBe(403);
  });

  it('refuses a token that is only begun or goes on', async () => {
    const { origin, pathname } = new URL(address);
    const token = pathname.slice(1, -1);
    for (const wrong of [token.slice(0, -1), `${token}x`, token.toUpperCase()]) {
      expect(await statusOf({}, `${origin}/${wrong}/`)).toBe(403);
    }
  });

  it.each(['attacker.example', '127.0.0.1', '127.0.0.1:1', '[::1]', 'localhost.attacker.example'])(
    'refuses a request that names the host %s',
    async (host) => {
      expect(await statusOf({ host })).toBe(403);
    },
  );

  it.each([
    { origin: 'https://attacker.example' },
    { origin: 'null' },
    { origin: 'http://127.0.0.1:1' },
    { 'sec-fetch-site': 'cross-site' },
    // Another port of the same machine is the same site to a browser, and somebody else to us.
    { 'sec-fetch-site': 'same-site' },
  ])('refuses a request of another page: %o', async (headers) => {
    expect(await statusOf(headers)).toBe(403);
  });

  it('answers its own page and the address bar', async () => {
    for (const site of ['none', 'same-origin']) expect(await statusOf({ 'sec-fetch-site': site })).toBe(200);
    expect(await statusOf({ origin: new URL(address).origin })).toBe(200);
  });

  it.each(['../app-secret/key.txt', '..%2fapp-secret/key.txt', '%2e%2e/app-secret/key.txt', '/etc/passwd', '%00', '.'])(
    'leads nowhere outside its folder: %s',
    async (path) => {
      const { origin, pathname } = new URL(address);
      // As it stands: an address parser would take the dots away before they are sent.
      const status = await new Promise((resolve, reject) => {
        const { hostname, port } = new URL(origin);
        request({ hostname, port, path: `${pathname}${path}` }, (response) => {
          response.resume();
          resolve(response.statusCode);
        })
          .on('error', reject)
          .end();
      });
      expect(status).toBe(404);
    },
  );

  it('refuses to be written to', async () => {
    expect((await fetch(address, { method: 'POST' })).status).toBe(405);
  });

  it('has no page for what is not its own', async () => {
    expect((await fetch(`${address}missing.js`)).status).toBe(404);
  });
});

describe('content security policy', () => {
  it('starts from nothing and allows no remote host, inline script or eval', () => {
    expect(CONTENT_SECURITY_POLICY).toMatch(/^default-src 'none'/);
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/https?:|\*|unsafe/);
  });
});
