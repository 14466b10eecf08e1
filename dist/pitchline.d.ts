export * from './pitchline-web-d1b3349e6c98f873.js';
export { default } from './pitchline-web-d1b3349e6c98f873.js';
