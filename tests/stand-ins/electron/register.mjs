// Makes `electron` mean the stand-in beside this file, for whatever this process loads: `node --import <this file> main.js`.
import { register } from 'node:module';

register('./hooks.mjs', import.meta.url);
