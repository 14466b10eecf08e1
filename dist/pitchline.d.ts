export * from './pitchline-web-8fccdcfd772275bf.js';
export { default } from './pitchline-web-8fccdcfd772275bf.js';
