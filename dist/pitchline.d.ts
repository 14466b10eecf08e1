export * from './pitchline-web-ee7dd97dbd1cd1aa.js';
export { default } from './pitchline-web-ee7dd97dbd1cd1aa.js';
