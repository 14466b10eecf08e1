export * from './pitchline-web-bb198d53040aeeb6.js';
export { default } from './pitchline-web-bb198d53040aeeb6.js';
