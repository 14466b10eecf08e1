export * from './pitchline-web-e8027c8f01e6a5e1.js';
export { default } from './pitchline-web-e8027c8f01e6a5e1.js';
