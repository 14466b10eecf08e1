export * from './pitchline-web-5732b8014e0c2e25.js';
export { default } from './pitchline-web-5732b8014e0c2e25.js';
