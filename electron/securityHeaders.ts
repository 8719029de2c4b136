/**
 * What the screens may load, the same from app://bracework/ and from 127.0.0.1: their own files and nothing else.
 * blob: is there for one thing, a paper's bytes shown in the browser's own PDF viewer; that viewer counts as a plugin,
 * so object-src must allow it too (a blob: page keeps the policy of the page that made it).
 */
export const contentPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob:",
  "font-src 'self'",
  "connect-src 'self'",
  'frame-src blob:',
  'object-src blob:',
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

/** Sent with every answer of either host. no-store: a program is never shown from a stale copy after an update. */
export const securityHeaders: Readonly<Record<string, string>> = {
  'Content-Security-Policy': contentPolicy,
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=(), hid=(), payment=()',
  'Cache-Control': 'no-store',
}
