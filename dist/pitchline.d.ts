export * from './pitchline-web-3f5f69fcf4ba0e74.js';
export { default } from './pitchline-web-3f5f69fcf4ba0e74.js';
