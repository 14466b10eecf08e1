export * from './pitchline-web-3eff27f70847f892.js';
export { default } from './pitchline-web-3eff27f70847f892.js';
