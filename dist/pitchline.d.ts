export * from './pitchline-web-42326c1eecea239b.js';
export { default } from './pitchline-web-42326c1eecea239b.js';
