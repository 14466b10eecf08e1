export * from './pitchline-web-96bd91ecc9a92cb5.js';
export { default } from './pitchline-web-96bd91ecc9a92cb5.js';
