/** The one style sheet react-aria puts into the page (touch-action of what can be pressed), named by its content. */
const PRESSABLE_STYLE = "'sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o='";

/**
 * The page may load its own files and nothing else: no remote host, no inline script, no eval, and no inline style but
 * the one above; React sets styles through the object model, which the policy does not concern. Shared by both hosts.
 */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  `style-src 'self' ${PRESSABLE_STYLE}`,
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "object-src 'none'",
  "frame-src 'none'",
].join('; ');

const MIME_TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  ttf: 'font/ttf',
  svg: 'image/svg+xml',
  png: 'image/png',
  json: 'application/json; charset=utf-8',
  backstay: 'application/json; charset=utf-8',
};

/** Headers for one of the app's own files. `nosniff` makes the type binding. */
export function headersFor(fileName: string): Record<string, string> {
  const extension = fileName.slice(fileName.lastIndexOf('.') + 1);
  return {
    'Content-Type': MIME_TYPES[extension] ?? 'application/octet-stream',
    'Content-Security-Policy': CONTENT_SECURITY_POLICY,
    'X-Content-Type-Options': 'nosniff',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Referrer-Policy': 'no-referrer',
  };
}
