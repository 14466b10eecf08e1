export * from './pitchline-web-17b23b2d77752b8f.js';
export { default } from './pitchline-web-17b23b2d77752b8f.js';
