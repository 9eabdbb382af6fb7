import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { headersFor } from '../contentSecurity.ts';
import { readOwnFile } from './ownFiles.ts';

/**
 * Serves the built renderer, and nothing else, on 127.0.0.1. Requests that name another host are refused, so that no
 * page elsewhere can reach it through a name of its own.
 * @param root folder of the built renderer
 * @param port 0 for any free one
 */
export async function serveRenderer(root: string, port: number): Promise<{ server: Server; address: string }> {
  const server = createServer((request, response) => {
    answer(root, server, request, response).catch(() => refuse(response, 500));
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  return { server, address: `http://127.0.0.1:${portOf(server)}/` };
}

const portOf = (server: Server): number => (server.address() as AddressInfo).port;

async function answer(root: string, server: Server, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const port = portOf(server);
  if (request.headers.host !== `127.0.0.1:${port}` && request.headers.host !== `localhost:${port}`) {
    return refuse(response, 403);
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405);
  const { pathname } = new URL(request.url ?? '/', `http://127.0.0.1:${port}`);
  const file = await readOwnFile(root, pathname);
  if (!file) return refuse(response, 404);
  response.writeHead(200, {
    ...headersFor(file.name),
    'Content-Length': file.bytes.length,
    'Cache-Control': 'no-cache',
  });
  response.end(request.method === 'HEAD' ? undefined : file.bytes);
}

function refuse(response: ServerResponse, status: number): void {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' });
  response.end(`${status}\n`);
}
