import { headersFor } from '../contentSecurity.ts';
import { readOwnFile } from '../node/ownFiles.ts';
import { APP_ORIGIN } from './window.ts';

/** Answers app://backstay/… from the built renderer: GET only, this one host, nothing outside the folder. */
export async function answerAppRequest(root: string, request: { method: string; url: string }): Promise<Response> {
  const refuse = (status: number): Response => new Response(`${status}\n`, { status });
  if (!URL.canParse(request.url)) return refuse(404);
  const url = new URL(request.url);
  if (`${url.protocol}//${url.host}` !== APP_ORIGIN) return refuse(404);
  if (request.method !== 'GET') return refuse(405);
  const file = await readOwnFile(root, url.pathname === '' ? '/' : url.pathname);
  return file ? new Response(new Uint8Array(file.bytes), { status: 200, headers: headersFor(file.name) }) : refuse(404);
}
