import { randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { headersFor } from '../contentSecurity.ts';
import { readOwnFile } from './ownFiles.ts';

/** A token nobody can guess: 256 bits, in characters an address takes as they are. */
export const freshToken = (): string => randomBytes(32).toString('base64url');

/**
 * Serves the built renderer, and nothing else, on 127.0.0.1, and only below an address that begins with the token. The
 * token is in the path and not in a cookie, because a browser sends cookies to every port of a host: other local servers
 * would learn it. Requests that name another host, or come from another page, are refused besides.
 * @param root folder of the built renderer
 * @param port 0 for any free one
 * @param token what every path has to begin with
 */
export async function serveRenderer(
  root: string,
  port: number,
  token = freshToken(),
): Promise<{ server: Server; address: string }> {
  const server = createServer((request, response) => {
    answer(root, token, request, response).catch(() => refuse(response, 500));
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  return { server, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/${token}/` };
}

async function answer(root: string, token: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  if (!isFromOwnPage(request)) return refuse(response, 403);
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405);
  const [, given = '', ...rest] = (request.url ?? '/').replace(/[?#].*$/s, '').split('/');
  if (!isSame(given, token)) return refuse(response, 403);
  // Without the slash after it the page's own relative addresses would lose the token.
  const file = rest.length === 0 ? null : await readOwnFile(root, `/${rest.join('/')}`);
  if (!file) return refuse(response, 404);
  response.writeHead(200, {
    ...headersFor(file.name),
    'Content-Length': file.bytes.length,
    'Cache-Control': 'no-cache',
  });
  response.end(request.method === 'HEAD' ? undefined : file.bytes);
}

/** What a browser says of where a request comes from: typed in or followed from outside it, or one of our own pages. */
const OWN_SITES: readonly unknown[] = [undefined, 'none', 'same-origin'];

/** Whether a request names this server and comes from its own page or from the user's address bar. */
function isFromOwnPage({ headers, socket }: IncomingMessage): boolean {
  const { host, origin } = headers;
  if (host !== `127.0.0.1:${socket.localPort}` && host !== `localhost:${socket.localPort}`) return false;
  return OWN_SITES.includes(headers['sec-fetch-site']) && (origin === undefined || origin === `http://${host}`);
}

/** Compared in a time that does not tell how much of it was right. */
function isSame(given: string, token: string): boolean {
  const [a, b] = [Buffer.from(given), Buffer.from(token)];
  return a.length === b.length && timingSafeEqual(a, b);
}

function refuse(response: ServerResponse, status: number): void {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8', 'X-Content-Type-Options': 'nosniff' });
  response.end(`${status}\n`);
}
