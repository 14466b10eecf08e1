export * from './pitchline-web-3dbbdc3e7ab10ed3.js';
export { default } from './pitchline-web-3dbbdc3e7ab10ed3.js';
