export * from './pitchline-web-1011469c9e76e791.js';
export { default } from './pitchline-web-1011469c9e76e791.js';
