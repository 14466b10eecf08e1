export * from './pitchline-web-e66f28c8c063f116.js';
export { default } from './pitchline-web-e66f28c8c063f116.js';
