export * from './pitchline-web-37aeea4644a01c34.js';
export { default } from './pitchline-web-37aeea4644a01c34.js';
